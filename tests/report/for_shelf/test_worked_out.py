"""What is worked in idle time says what the reckoner says, draws the part, and
tells a broken file by its line.
"""

from __future__ import annotations

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.for_shelf.worked_out import worked_out
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
