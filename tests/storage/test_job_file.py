"""Same job, same bytes; nothing that was written is lost; a save never leaves half a file."""

from __future__ import annotations

import os
import re
import sys
from pathlib import Path

import pytest

from jobsheet.errors import CannotWrite, ChangedOutside
from jobsheet.storage.disk import write_file
from jobsheet.storage.job_file import job_digest, job_from_text, read_job
from jobsheet.storage.job_writing import save_job

from .job_saved import JOB


@pytest.mark.parametrize(
    "path", sorted((Path(__file__).parent / "files").glob("job-format-*.yaml")), ids=lambda path: path.stem
)
def test_a_file_of_every_format_there_was_can_be_read(path):
    assert read_job(path).operations()


def test_saving_says_when_the_file_was_changed_outside(tmp_path):
    path = tmp_path / "plate.yaml"
    digest = save_job(JOB, path)
    assert digest == job_digest(path)
    path.write_text("somebody else", encoding="utf-8")
    with pytest.raises(ChangedOutside, match="changed by something else"):
        save_job(JOB, path, digest)
    assert path.read_text(encoding="utf-8") == "somebody else"


def test_a_disk_that_refuses_leaves_the_old_file(tmp_path, monkeypatch):
    path = tmp_path / "plate.yaml"
    save_job(JOB, path)
    before = path.read_bytes()

    def full(_descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(CannotWrite, match="No space left"):
        write_file(path, "x" * 1000)
    assert path.read_bytes() == before
    assert [one.name for one in tmp_path.iterdir()] == ["plate.yaml"]


def test_a_folder_that_is_not_there(tmp_path):
    with pytest.raises(CannotWrite, match="cannot be written"):
        save_job(JOB, tmp_path / "none" / "plate.yaml")
    with pytest.raises(CannotWrite, match="is a folder"):
        save_job(JOB, tmp_path)


@pytest.mark.skipif(sys.platform == "win32", reason="links need rights there")
def test_a_link_stays_a_link(tmp_path):
    real = tmp_path / "real.yaml"
    real.write_text("x", encoding="utf-8")
    link = tmp_path / "link.yaml"
    link.symlink_to(real)
    save_job(JOB, link)
    assert link.is_symlink()
    assert read_job(real) == JOB


@pytest.mark.long
def test_a_kill_at_any_moment_leaves_a_whole_file(tmp_path):
    """Killed a hundred times while it saves: the old or the new file stands there, never half of one."""
    import random
    import signal
    import subprocess
    import time

    path = tmp_path / "plate.yaml"
    save_job(JOB, path)
    code = (
        "import sys; from jobsheet.storage.job_file import *; from jobsheet.edit.commands import SetField\n"
        f"job = read_job({str(path)!r})\nn = 0\nprint('ready', flush=True)\n"
        f"while True:\n    n += 1\n    save_job(SetField('clamp', 'note', 'x' * (n % 1000)).apply(job), {str(path)!r})\n"
    )
    for _ in range(100):
        process = subprocess.Popen([sys.executable, "-c", code], stdout=subprocess.PIPE)
        process.stdout.readline()
        time.sleep(random.random() * 0.05)
        process.send_signal(signal.SIGKILL)
        process.wait()
        process.stdout.close()
        assert read_job(path).part == JOB.part


@pytest.mark.parametrize("deep", [2, 6])
def test_what_has_no_key_or_number_is_called_by_its_place(samples, deep):
    """Set-ups are set-up-1, set-up-2 and count from one; steps of the only set-up count by tens."""
    path = samples / ("hm-101-setting-block.yaml" if deep == 2 else "hm-100-drilled-plate-b1.yaml")
    bare = re.sub(
        rf"^ {{{deep}}}- key: .*\n +number: \d+\n +",
        " " * deep + "- ",
        path.read_text("utf-8"),
        flags=re.MULTILINE,
    )
    job, whole = job_from_text(bare, "bare.yaml"), read_job(path)
    if deep == 2:
        names = [(f"set-up-{place}", place) for place in range(1, len(whole.set_ups) + 1)]
        assert [(one.key, one.number) for one in job.set_ups] == names
    else:
        steps = [one for _, one in job.operations()]
        assert [one.number for one in steps] == [10 * place for place in range(1, len(steps) + 1)]
        lines = [at for at, line in enumerate(bare.split("\n"), 1) if re.match(r" {6}- kind: ", line)]
        assert [one.key for one in steps] == [
            f"{one.kind}-{at}" for one, at in zip(steps, lines, strict=True)
        ]


def test_steps_without_numbers_count_on_from_set_up_to_set_up(samples):
    """Numbers are unique in a job: a plan written by hand with several set-ups and no number at all can be read."""
    whole = (samples / "hm-101-setting-block.yaml").read_text("utf-8")
    bare = re.sub(r"^ +number: \d+\n", "", whole, flags=re.MULTILINE)
    numbers = [one.number for _, one in job_from_text(bare, "bare.yaml").operations()]
    assert numbers == [10 * place for place in range(1, len(numbers) + 1)]


def test_a_step_without_a_number_takes_the_next_ten_behind_those_before(samples):
    whole = (samples / "hm-100-drilled-plate-b1.yaml").read_text("utf-8")
    given = [int(number) for number in re.findall(r"^ {8}number: (\d+)", whole, flags=re.MULTILINE)]
    first = whole.replace(f"number: {given[0]}\n", "number: 15\n", 1)
    bare = re.sub(rf"^ +number: {given[1]}\n", "", first, flags=re.MULTILINE)
    numbers = [one.number for _, one in job_from_text(bare, "bare.yaml").operations()]
    assert numbers[:3] == [15, 20, given[2]]
