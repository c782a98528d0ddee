"""`python -m tests.benchmarks [--jobs FOLDER] [PART ...]`: a table of speeds, each beside its
floor; misses are said, nothing fails.

Times are of the processor, so that a machine with other work says nearly the same; jobs of 40, 160 and 640
steps are taken from that folder (`job-40.yaml` and so on), or are the slide plate's steps again and again.
"""

from __future__ import annotations

import argparse
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from pathlib import Path

from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job
from jobsheet.paths import sample_jobs
from tests.benchmarks.test_edit import mixed_job
from tests.benchmarks.walked import walked

PLATE = str(sample_jobs() / "hm-100-drilled-plate-b1.yaml")
#: What is measured, what came, in which unit, and at most how much was asked for.
Line = tuple[str, float, str, float]


def job_of(folder: Path | None, steps: int) -> Job:
    """A job of so many steps."""
    from jobsheet.storage.job_file import read_job

    return read_job(folder / f"job-{steps}.yaml") if folder is not None else mixed_job(steps)


def edits(folder: Path | None) -> Iterator[Line]:
    """Every field of every kind, typed into: to the figures of the step that is edited, and of
    forty rows in sight; the slowest field.
    """
    for steps, most in ((40, 2.0), (640, 4.0)):
        found = walked(job_of(folder, steps))
        slowest = max(found, key=lambda one: one.edited)
        yield (
            f"an edit, {steps} steps: slowest of {len(found)} fields ({slowest.name})",
            slowest.edited,
            "ms",
            most,
        )
        in_sight = max(found, key=lambda one: one.in_sight)
        yield f"the same with forty rows in sight ({in_sight.name})", in_sight.in_sight, "ms", 16.0


def stages(folder: Path | None) -> Iterator[Line]:
    """Solids and pictures from nothing, and an edit of the last step to its picture."""
    from jobsheet.edit.commands import SetField
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.stages.course import course_of
    from jobsheet.stages.pictures import picture
    from jobsheet.stages.solids import Modeller

    for steps, most in ((40, 0.7), (160, 2.5)):
        job, reckoner, modeller = job_of(folder, steps), Reckoner(), Modeller()
        settings = reckoner.reckon(job).settings
        began = time.process_time()
        made = modeller.stages(course_of(job, settings))
        for stage in made if steps == 40 else ():
            picture(stage, "iso", 200, 90)
        yield (
            f"{steps} stages{' with pictures' if steps == 40 else ', solids alone'}",
            time.process_time() - began,
            "s",
            most,
        )
        if steps == 40:
            key = [one.key for _, one in job.operations() if hasattr(one.fields, "depth")][-1]
            took = []
            for count in range(5):
                began = time.process_time()
                edited = SetField(key, "depth", f"3.{count + 1} mm").apply(job)
                picture(
                    modeller.stages(course_of(edited, reckoner.reckon(edited).settings))[-1], "iso", 200, 90
                )
                took.append((time.process_time() - began) * 1e3)
            yield "an edit of the last step to its picture", statistics.median(took), "ms", 40.0


def _processor(arguments: list[str], around: dict[str, str] | None = None) -> float:
    """Seconds of the processor that one whole process takes; `around` is set in its environment."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    inherited = {**os.environ, **(around or {})}
    inherited.pop("PYTHONDONTWRITEBYTECODE", None)  # a person's Python keeps its compiled modules
    subprocess.run([sys.executable, *arguments], capture_output=True, check=False, env=inherited)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def shell(_folder: Path | None) -> Iterator[Line]:
    """Whole commands against an interpreter that imports the parser and the structures alone, in turn."""
    with tempfile.TemporaryDirectory() as made:
        asked = {
            "figures": ([PLATE], 2.1), "check": ([PLATE], 3.0), "dials": ([PLATE], 2.0), "why": (["spot", "before", "drilling"], 2.0),
            "work": (["spindle-speed", "cutting_speed=30 m/min", "diameter=12 mm"], 2.0), "capability": (["bench-mill-b-1"], 3.0),
        }  # fmt: skip
        again = {"capability": " again"}  # its first answer is kept
        floor = ["-c", "import yaml, msgspec"]
        for verb, (words, most) in asked.items():
            ours, bare = [], []
            for _ in range(8):
                ours.append(_processor(["-m", "jobsheet", verb, *words]))
                bare.append(_processor(floor))
            yield (
                f"jobsheet {verb}{again.get(verb, '')}, {min(ours[1:]) * 1e3:.0f} ms",
                min(ours[1:]) / min(bare[1:]),
                "×",
                most,
            )
        first = []
        for turn in range(4):  # in a new home nothing is kept
            home = {"JOBSHEET_HOME": f"{made}/home-{turn}"}
            first.append(
                _processor(["-m", "jobsheet", "capability", "bench-mill-b-1"], home) / _processor(floor)
            )
        yield "jobsheet capability, the first time", min(first), "×", 3.0
        sheet = min(_processor(["-m", "jobsheet", "sheet", PLATE, "-o", f"{made}/x.pdf"]) for _ in range(5))
        yield "jobsheet sheet (the marks alone are drawn by `bare.py` of the bench)", sheet, "s", 0.5


MEMORY = """
import sys, time
from jobsheet.gui.start.unread_sources import leave_unread
leave_unread()
from PySide6.QtWidgets import QApplication
from jobsheet.edit.commands import SetField
from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.ink import look
from jobsheet.gui.start import start
application = QApplication([])
application.setStyle("Fusion")
look.load_fonts()
look.apply("light", bench=False)
window = start.make_window(open_at_start(sys.argv[1]))
window.resize(1440, 900)
window.show()
def rest(seconds):
    end = time.monotonic() + seconds
    while time.monotonic() < end or window.later.waiting or window.parts.solids.waiting:
        application.processEvents()
        time.sleep(0.001)
def megabytes():
    return int(open("/proc/self/statm").read().split()[1]) * 4096 / 1e6
rest(2)
opened = megabytes()
step = next(one for _, one in window.desk.job.operations() if one.kind == "face")
window.open_key(step.key)
def edit(first, count):
    for index in range(first, first + count):
        window.desk.history.do(SetField(step.key, "depth", f"{0.5 + index / 2000:.4f} mm"))
        application.processEvents()
        if index % 25 == 0:
            rest(0.2)
    rest(1)
edit(0, 50)
before = megabytes()
edit(50, int(sys.argv[2]))
print(opened, before, megabytes())
"""


def memory(folder: Path | None) -> Iterator[Line]:
    """A window with a long job, and what hundreds of edits of the first face
    leave in it, solids made in between.
    """
    from jobsheet.storage.job_writing import save_job

    for steps, count in ((160, 500), (640, 20)):
        with tempfile.TemporaryDirectory() as home:
            path = Path(home) / "long.yaml"
            save_job(job_of(folder, steps), path)
            environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": f"{home}/home"}
            done = subprocess.run(
                [sys.executable, "-c", MEMORY, str(path), str(count)],
                capture_output=True,
                text=True,
                check=True,
                env=environment,
            )
        opened, before, after = (float(one) for one in done.stdout.split()[-3:])
        if steps == 160:
            yield f"{count} edits, {steps} steps: from {before:.0f} MB", after - before, "MB more", 15.0
        else:
            yield f"a window with {steps} steps, after {count} edits {after:.0f} MB", opened, "MB", 250.0


def first_frame(folder: Path | None) -> Iterator[Line]:
    """Start to painted, against an empty window, in turn."""
    from jobsheet.storage.job_writing import save_job
    from tests.benchmarks.test_start import EMPTY, OURS, painted

    for steps, most in ((14, 1.3), (640, 1.6)):
        with tempfile.TemporaryDirectory() as home:
            environment = {**os.environ, "QT_QPA_PLATFORM": "offscreen", "JOBSHEET_HOME": home}
            environment.pop("PYTHONDONTWRITEBYTECODE", None)
            path = Path(home) / "job.yaml"
            save_job(job_of(folder, steps) if steps > 14 else mixed_job(14), path)
            code = OURS.replace("app.main(None)", f"app.main({str(path)!r})")
            pairs = [(painted(code, environment), painted(EMPTY, environment)) for _ in range(9)][2:]
        yield (
            f"first frame, {steps} steps",
            statistics.median(a / b for a, b in pairs),
            "× an empty window",
            most,
        )


PARTS: dict[str, Callable[[Path | None], Iterator[Line]]] = {
    "edits": edits, "stages": stages, "shell": shell, "frame": first_frame, "memory": memory,
}  # fmt: skip


def main() -> None:
    """Print the table."""
    asked = argparse.ArgumentParser()
    asked.add_argument("parts", nargs="*", choices=[*PARTS, []])
    asked.add_argument("--jobs", type=Path)
    given = asked.parse_args()
    for name in given.parts or PARTS:
        try:
            for what, came, unit, most in PARTS[name](given.jobs):
                said = "" if came <= most else "  missed"
                print(f"{what:<88} {came:8.2f} {unit}, at most {most:g}{said}", flush=True)
        except (JobsheetError, OSError, subprocess.CalledProcessError, ValueError) as error:
            print(f"{name}: could not be measured: {error}", flush=True)


if __name__ == "__main__":
    main()
