"""Two programs save one part again and again, as two people do, and are killed in
the middle of it: is anything lost?

    python -m tests.storage.two_hands FOLDER ROUNDS SEED

Every save adds a step with a mark of its own, or writes a mark into one field that both write into. What a
program was told to be saved it notes in a file of its own, flushed to the disk; before it writes over a mark
that it has read it notes that too. After each round every noted mark has to be found in the job's file, in
`.before` or in what was kept aside, but where it was written over by somebody who had it before them. One
line a round says what was lost and what was half.
"""

from __future__ import annotations

import os
import random
import shutil
import signal
import sys
import time
from pathlib import Path

from jobsheet.edit.commands import SetField
from jobsheet.edit.step_commands import AddOperation
from jobsheet.edit.three_ways import MINE, THEIRS, compared
from jobsheet.errors import CannotWrite, ChangedOutside, JobsheetError
from jobsheet.operations.registry import kind
from jobsheet.paths import sample_jobs
from jobsheet.storage.disk import digest
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import save_job
from jobsheet.storage.kept.closed_plans import folder_of
from jobsheet.storage.kept.kept_aside import keep_aside
from jobsheet.storage.kept.kept_before import keep_before, read_before

#: The step that both write into.
BOTH = "face-rough"
SAVES = 6


def noted(path, words):
    """A line that is on the disk when this comes back."""
    handle = os.open(path, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o666)
    os.write(handle, f"{words}\n".encode())
    os.fsync(handle)
    os.close(handle)


def marks_in(job):
    """The marks that stand in a job."""
    return {step.fields.note for _, step in job.operations() if step.fields.note.startswith("mark ")}


class Hand:
    """One person at a program of their own, who saves as the window does."""

    def __init__(self, job, name, seed):
        self.path, self.name, self.chance = job, name, random.Random(seed)
        self.notes = job.with_name(f"{name}.notes")

    def read(self):
        raw = self.path.read_bytes()
        return job_from_text(raw.decode(), self.path.name), digest(raw)

    def work(self):
        base, expected = self.read()
        for count in range(SAVES):
            if self.chance.random() < 0.3:  # sometimes the file is opened anew
                base, expected = self.read()
            time.sleep(self.chance.random() * 0.004)
            mark = f"mark {self.name} {count}"
            if self.chance.random() < 0.4:
                was = base.find(BOTH)[1].fields.note
                noted(self.notes, f"over {was} by {mark}")
                job = SetField(BOTH, "note", mark).apply(base)
            else:
                job = AddOperation(self.chance.choice(base.set_ups).key, "bench-step").apply(base)
                (key,) = {one.key for _, one in job.operations()} - {one.key for _, one in base.operations()}
                job = SetField(key, "note", mark).apply(job)
            base, expected = self.save(base, job, expected, mark)

    def save(self, base, job, expected, mark):
        """Save it; what somebody else saved meanwhile is kept aside and put together with it."""
        while True:
            stood = read_before(self.path)
            try:
                now = save_job(job, self.path, expected)
            except ChangedOutside:
                there = self.path.read_bytes()
                keep_aside(self.path, there, "2026-11-30")
                theirs = job_from_text(there.decode(), self.path.name)
                both = compared(base, job, theirs)
                chosen = {one.item: self.chance.choice((MINE, THEIRS)) for one in both.choices}
                job, base, expected = both.taken(chosen), theirs, digest(there)
                continue
            keep_before(self.path, stood, now)
            # What was given up for the other's when it was chosen was never said to be saved.
            if mark in marks_in(job):
                noted(self.notes, f"saved {mark}")
            return job, now


def wrong(job):
    """What is wrong with the folder after a round: marks that are lost, files that are half."""
    found, half = set(), []
    beside = [
        job,
        job.with_name(f"{job.name}.before"),
        *(folder_of(job).glob("*.yaml") if folder_of(job).exists() else ()),
    ]
    for path in beside:
        if path.exists():
            try:
                found |= marks_in(read_job(path))
            except JobsheetError as error:
                half.append(f"{path.name}: {error}")
    lines = [line for notes in job.parent.glob("*.notes") for line in notes.read_text().splitlines()]
    saved = {line.removeprefix("saved ") for line in lines if line.startswith("saved ")}
    over = {}
    for line in lines:
        if line.startswith("over mark"):
            was, _, by = line.removeprefix("over ").partition(" by ")
            over.setdefault(was, set()).add(by)

    def there(mark, seen=()):
        return mark in found or any(there(by, (*seen, mark)) for by in over.get(mark, ()) if by not in seen)

    return [mark for mark in sorted(saved) if not there(mark)], half, len(saved)


def one_round(folder, seed):
    """Two hands and a kill; what was lost, what is half, how many were noted."""
    chance = random.Random(seed)
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    job = folder / "part.yaml"
    shutil.copy(sample_jobs() / "hm-100-drilled-plate-b1.yaml", job)
    hands = []
    for name in "AB":
        child = os.fork()
        if child == 0:
            try:
                Hand(job, name, f"{seed}{name}").work()
            except CannotWrite as error:
                noted(folder / "refused", str(error))
            except BaseException as error:  # noqa: BLE001 - the child of a fork may not go on as its parent
                noted(folder / "failed", repr(error))
            os._exit(0)
        hands.append(child)
    for child in hands:
        if chance.random() < 0.8:
            time.sleep(chance.random() * 0.3)
            os.kill(child, signal.SIGKILL)
    for child in hands:
        os.waitpid(child, 0)
    lost, half, count = wrong(job)
    for name in ("failed", "refused"):
        if (folder / name).exists():
            half.append(f"{name}: {(folder / name).read_text().strip()}")
    # A dead lock blocks nobody: what comes next is saved at once.
    began = time.monotonic()
    save_job(SetField(BOTH, "note", "after all").apply(read_job(job)), job)
    return lost, half, count, time.monotonic() - began


def main():
    folder, rounds, seed = Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3])
    kind("bench-step")
    slowest = total = 0
    for number in range(seed, seed + rounds):
        lost, half, count, seconds = one_round(folder / "round", number)
        total, slowest = total + count, max(slowest, seconds)
        if lost or half:
            shutil.copytree(folder / "round", folder / f"wrong-{number}", dirs_exist_ok=True)
            print(f"round {number}: lost {lost}, half {half}", flush=True)
    print(f"{rounds} rounds, {total} saved, {slowest:.3f} s at most for the save after it", flush=True)


if __name__ == "__main__":
    main()
