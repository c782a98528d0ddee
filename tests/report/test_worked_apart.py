"""What is worked in idle time says what the reckoner says, draws the part, and tells a broken file by its line."""

from __future__ import annotations

import subprocess
import sys

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.worked_apart import worked_out
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.worked_kept import worked_of
from jobsheet.storage.disk import digest
from jobsheet.storage.job_file import read_job


def test_every_sample_is_worked_and_drawn(samples):
    for path in sorted(samples.glob("*.yaml")):
        worked = worked_out(path, digest(path.read_bytes()))
        assert worked.verdict == Reckoner().reckon(read_job(path)).worst
        assert len(worked.small.items) >= 9  # a box alone has nine edges in sight
        letters = {getattr(item, "words", "") for item in worked.large.items}
        assert {letter for letter, _ in read_job(path).datums} <= letters


def test_what_says_something_else_by_now_is_left(samples, tmp_path):
    path = tmp_path / "x.yaml"
    path.write_bytes(b"format: 2\n")
    assert worked_out(path, digest(b"something else")) is None
    assert worked_out(tmp_path / "gone.yaml", "") is None


def test_a_broken_file_says_its_line(tmp_path, samples):
    path = tmp_path / "torn.yaml"
    path.write_text((samples / "hm-104-cover-plate.yaml").read_text("utf-8") + "foo: bar\n", encoding="utf-8")
    worked = worked_out(path, digest(path.read_bytes()))
    assert worked.verdict == "broken"
    assert worked.at.startswith("line ")
    assert worked.small is None


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
        [sys.executable, "-m", "jobsheet.report.worked_apart", str(tmp_path)], stdin=subprocess.PIPE, stdout=subprocess.PIPE
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
