"""Two revisions of a job that a version-control system lays together line by line: a job that can
be read, or a problem with its line.
"""

from __future__ import annotations

import random
import subprocess

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.edit.revision_commands import AddRevision
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.edit.step_commands import AddOperation
from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job

ROUNDS = 60


def edited(job, draw, who):
    """A few edits as two people make them."""
    for _ in range(draw.randint(1, 4)):
        steps = [one for _, one in job.operations()]
        step = draw.choice(steps)
        command = draw.choice(
            (
                SetField(step.key, "note", f"{who} {draw.randint(1, 9)}"),
                SetField("job:part", "name", f"Plate {who}"),
                AddOperation(draw.choice(job.set_ups).key, "bench-step"),
                DeleteSteps((step.key,)),
                AddRevision(f"by {who}", who, "2026-11-30"),
            )
        )
        try:
            job = command.apply(job)
        except JobsheetError:
            continue
    return job


def merged(text):
    """The job, or what is wrong with the file."""
    try:
        return (), job_from_text(text, "merged.yaml")
    except DocumentError as error:
        return error.problems, None


@pytest.mark.parametrize("seed", range(3))
def test_a_merge_gives_a_job_or_a_line(samples, tmp_path, seed):
    draw, read, refused = random.Random(seed), 0, 0
    base = read_job(samples / "hm-103-pivot-block.yaml")
    names = [tmp_path / name for name in ("mine", "base", "theirs")]
    for _ in range(ROUNDS):
        for path, job in zip(names, (edited(base, draw, "A"), base, edited(base, draw, "B")), strict=True):
            path.write_text(write_job(job), encoding="utf-8")
        done = subprocess.run(["git", "merge-file", "-p", *map(str, names)], capture_output=True, check=False)
        said, job = merged(done.stdout.decode())
        assert all(problem.line and problem.sentence for problem in said)
        refused += bool(said)
        if job is not None:
            read += 1
            assert done.returncode == 0  # what could not be laid together is never taken for a job
            keys = [one.key for _, one in job.operations()]
            assert len(keys) == len(set(keys))
    assert read > ROUNDS / 10
    assert refused > ROUNDS / 10
