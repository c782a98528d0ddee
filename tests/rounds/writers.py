"""Everything that writes a file, each as one step that is asked again and again, and what
must hold whenever it is cut short.

A writer is given a folder of its own, writes its n-th value, and says what it wrote; `wrong` looks at the
folder afterwards, with all that was said to be written.
"""

from __future__ import annotations

import os
import sqlite3
import subprocess
import sys
import tempfile
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import msgspec

from jobsheet.edit.commands import SetField
from jobsheet.errors import CannotWrite
from jobsheet.model.job import Job
from jobsheet.model.what_ran import Entry as Ran
from jobsheet.paths import resources, sample_jobs
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import save_job, write_job

SAMPLE = "hm-100-drilled-plate-b1.yaml"


class Writer(msgspec.Struct, frozen=True):
    """`write` keeps the n-th value in a folder and returns what a reader shall find;
    `wrong` says what is not as it should be.
    """

    write: Callable[[Path, int], str]
    wrong: Callable[[Path, list[str]], str]


@cache
def _job() -> Job:
    return read_job(sample_jobs() / SAMPLE)


def _noted(count: int) -> Job:
    return SetField("clamp", "note", f"{count} " + "x" * (count % 1000)).apply(_job())


def _last_or_next(found: str, said: list[str]) -> str:
    """A file is written whole: it holds the last value that was said, or the one that was being written."""
    if not said:
        return ""
    last = int(said[-1])
    return "" if found in (str(last), str(last + 1)) else f"{found} stands there, {last} was said"


# --- the job, its plans, its record ---


def _write_job(folder: Path, count: int) -> str:
    save_job(_noted(count), folder / "plate.yaml")
    return str(count)


def _job_wrong(folder: Path, said: list[str]) -> str:
    path = folder / "plate.yaml"
    if not path.exists():
        return "it is gone" if said else ""
    _, step = read_job(path).find("clamp")
    return _last_or_next(step.fields.note.split()[0], said)


def _write_plan(folder: Path, count: int) -> str:
    from jobsheet.storage.kept.closed_plans import close_plan

    data = write_job(_noted(count)).encode()
    return close_plan(folder / "plate.yaml", data, count % 9999, "printed", "2026-11-30").code


def _plans_wrong(folder: Path, said: list[str]) -> str:
    from jobsheet.storage.kept.closed_plans import closed_plans, is_whole

    found = closed_plans(folder / "plate.yaml")
    torn = [one.path.name for one in found if not is_whole(one)]
    lost = set(said) - {one.code for one in found}
    return f"torn {torn}, lost {sorted(lost)}" if torn or lost else ""


def _write_ran(folder: Path, count: int) -> str:
    from jobsheet.storage.records.run_log import record

    entry = Ran(
        job="HM-100", plan="D495-6QV9-7Y6", revision=2, machine="knee-mill-k-2", date="2026-12-02", about="step", key=f"k{count}",
        number=count % 9999 + 1, step="Step", outcome="noisy", layer=2, depth=4e-3, speed=5.0, note=f"rang\n{count}",
    )  # fmt: skip
    (one,) = record(folder / "plate.yaml", (entry,))
    return one.id


def _ran_wrong(folder: Path, said: list[str]) -> str:
    from jobsheet.storage.records.run_log import read_runs

    found, problems = read_runs(folder / "plate.yaml")
    lost = set(said) - {one.id for one in found.entries}
    other = [str(one) for one in problems if "never finished" not in str(one)]
    return f"lost {len(lost)}, {other}" if lost or other else ""


# --- what is a person's own ---


def _write_trial(_folder: Path, count: int) -> str:
    from jobsheet.storage.records.proof_log import append
    from tests.storage.trials_kept import MACHINE, trial

    return append(MACHINE, trial(note=f"trial {count}")).id


def _trials_wrong(_folder: Path, said: list[str]) -> str:
    from jobsheet.storage.records.proof_log import read_log
    from tests.storage.trials_kept import MACHINE

    log = read_log(MACHINE)
    lost = set(said) - {one.id for one in log.records}
    other = [str(one) for one in log.problems if "never finished" not in str(one)]
    return f"lost {len(lost)}, {other}" if lost or other else ""


def _paper(kind: str, name: str, old: str) -> Writer:
    """A card or a cabinet: a line of it has the count in it."""

    def text(count: int) -> str:
        shipped = (resources() / kind / f"{name}.yaml").read_text("utf-8")
        return f"# count {count}\n{shipped}"

    def write(folder: Path, count: int) -> str:
        from jobsheet.storage.own_paper import Lying, save_own
        from jobsheet.storage.paper_file import paper_from_text

        lying = Lying(folder / f"{name}.yaml", "")
        save_own(paper_from_text(text(count), f"{name}.yaml"), lying, _readers()[old], over=True)
        return str(count)

    def wrong(folder: Path, said: list[str]) -> str:
        path = folder / f"{name}.yaml"
        if not path.exists():
            return "it is gone" if said else ""
        found = path.read_text("utf-8")
        _readers()[old](found, path.name)
        return _last_or_next(found.partition("# count ")[2].split("\n")[0], said)

    return Writer(write, wrong)


@cache
def _readers() -> dict[str, Callable[[str, str], object]]:
    from jobsheet.storage.cabinet_file import cabinet_from_text
    from jobsheet.storage.machine_file import machine_from_text

    return {
        "card": lambda text, name: machine_from_text(text, name, "card"),
        "cabinet": cabinet_from_text,
    }


# --- what the program keeps for itself ---


def _write_journal(_folder: Path, count: int) -> str:
    from jobsheet.gui.desk import journal

    if not _JOURNAL:
        _JOURNAL.append(journal.Journal())
    if not _JOURNAL[0].write(journal.Entry(job=write_job(_noted(count)), name=str(count))):
        raise CannotWrite("the journal cannot be written")
    return str(count)


_JOURNAL: list[Any] = []


def _journal_wrong(_folder: Path, said: list[str]) -> str:
    from jobsheet.gui.desk.left_behind import left_behind

    found = left_behind()
    if found is None:
        return "no journal is found" if said else ""
    return _last_or_next(found.entry.name, said)


def _write_pdf(folder: Path, count: int) -> str:
    from jobsheet.storage.exporting_files import export_file

    export_file(folder / "plate.pdf", _pdf() + b"%" + str(count).encode() + b"\n")
    return str(count)


@cache
def _pdf() -> bytes:
    """The sheets of the sample, made once by the command line."""
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / "plate.pdf"
        subprocess.run(
            [sys.executable, "-m", "jobsheet", "sheet", str(sample_jobs() / SAMPLE), "-o", str(made)],
            capture_output=True,
            check=False,
        )
        return made.read_bytes()


def _pdf_wrong(folder: Path, said: list[str]) -> str:
    path = folder / "plate.pdf"
    if not path.exists():
        return "it is gone" if said else ""
    raw = path.read_bytes()
    if not raw.startswith(b"%PDF"):
        return "it does not begin as a PDF"
    return _last_or_next(raw.rsplit(b"%", 1)[1].decode().strip(), said)


def _write_recent(folder: Path, count: int) -> str:
    from jobsheet.storage.kept.recent import used

    used(folder / f"{count}.yaml", "HM-100")
    if _recent_wrong(folder, [str(count)]):
        raise CannotWrite("it was not kept: no reason to stop, so that nothing is said of it")
    return str(count)


def _recent_wrong(_folder: Path, said: list[str]) -> str:
    from jobsheet.storage.kept.recent import recent

    found = recent()
    return _last_or_next(Path(found[0].path).stem, said) if found else ("it is empty" if said else "")


def _write_index(folder: Path, count: int) -> str:
    from jobsheet.shelf.shelf_index import Index

    shelf = folder / "shelf"
    try:
        shelf.mkdir(parents=True, exist_ok=True)
    except OSError:
        raise CannotWrite("there is no shelf") from None
    save_job(_noted(count), shelf / f"{count % 7}.yaml")
    index = Index(shelf, folder / "index.sqlite")
    index.refresh()
    index.close()
    return str(count)


def _index_wrong(folder: Path, _said: list[str]) -> str:
    """An index can be made anew at any time: after a refresh it says what lies
    there, and the jobs are all there.
    """
    from jobsheet.shelf.shelf_index import Index

    shelf = folder / "shelf"
    if not shelf.exists():
        return ""
    index = Index(shelf, folder / "index.sqlite")
    try:
        index.refresh()
        found = len(index.in_order())
    except sqlite3.Error as error:
        return str(error)
    finally:
        index.close()
    there = len(list(shelf.glob("*.yaml")))
    return "" if found == there else f"{found} of {there} are found"


def made_ready() -> None:
    """What takes long is made once, and all is imported, before processes are divided:
    who may read nothing cannot import.
    """
    import json  # noqa: F401

    _pdf()
    with tempfile.TemporaryDirectory() as name:
        before = os.environ.get("JOBSHEET_HOME")
        os.environ["JOBSHEET_HOME"] = name
        for writer in WRITERS.values():
            writer.write(Path(name), 1)
            writer.wrong(Path(name), [])
        _JOURNAL.clear()
        os.environ.pop("JOBSHEET_HOME")
        if before is not None:
            os.environ["JOBSHEET_HOME"] = before


WRITERS: dict[str, Writer] = {
    "job": Writer(_write_job, _job_wrong),
    "closed plan": Writer(_write_plan, _plans_wrong),
    "record of a job": Writer(_write_ran, _ran_wrong),
    "proof log": Writer(_write_trial, _trials_wrong),
    "card": _paper("machines", "bench-mill-b-1", "card"),
    "cabinet": _paper("cabinets", "harrowmoss", "cabinet"),
    "journal": Writer(_write_journal, _journal_wrong),
    "PDF": Writer(_write_pdf, _pdf_wrong),
    "last jobs": Writer(_write_recent, _recent_wrong),
    "shelf index": Writer(_write_index, _index_wrong),
}
