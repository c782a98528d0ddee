"""What works in idle time does what is in sight first, and ends with its input."""

from __future__ import annotations

import subprocess
import sys

import pytest

from jobsheet.report.for_shelf import worked_apart
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.worked_kept import worked_of


@pytest.mark.parametrize("told", [True, False])
def test_the_process_works_what_is_in_sight_first_and_ends_with_its_input(samples, tmp_path, own_home, told):
    for path in samples.glob("*.yaml"):
        (tmp_path / path.name).write_bytes(path.read_bytes())
    index = Index(tmp_path)
    index.refresh()
    (last,) = index.database.execute(
        "select content from jobs order by planned_on, number desc limit 1"
    ).fetchone()
    process = subprocess.Popen(
        [sys.executable, "-m", worked_apart.__name__, str(tmp_path)], stdin=subprocess.PIPE, stdout=subprocess.PIPE
    )  # fmt: skip
    if told:
        process.stdin.write(f"{last}\n".encode())
        process.stdin.flush()
        out = [process.stdout.readline().decode().strip() for _ in range(7)]
        assert last in out[:2]  # it may have begun with another before it was told
        assert worked_of(index, last) is not None
    process.stdin.close()
    assert process.wait(30) == 0
    process.stdout.close()
    index.close()
