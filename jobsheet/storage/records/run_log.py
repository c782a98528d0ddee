"""What happened at the machine with a job: a file beside it that only grows. One reader
and one writer for all who need it.

It lies beside the job by its name (`HM-103.yaml`, `HM-103.ran.txt`), so that the two move together;
the job itself never says what happened. Nothing is written that was not said, and what was written
can be taken back by a later entry.
"""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

from msgspec.structs import replace

from jobsheet.errors import CannotWrite, CommandError, DocumentError, NoSuchEntry, Problem
from jobsheet.model.what_ran import Entry, Runs
from jobsheet.storage.disk import write_file
from jobsheet.storage.records.closed_records import END, add, blocks, bytes_of, id_of, is_closed, torn_words
from jobsheet.storage.records.proof_lock import alone
from jobsheet.storage.records.run_record import entry_from, entry_text, lines_of
from jobsheet.storage.versions import OF_LISTS, what_is_wrong

_FORMAT = re.compile(r"^format:\s*(\S+)$")
_WHAT = "a record of what happened"
_HEAD = """\
format: 1

# What happened at the machine with {job}, one entry a record. Only add to it, never change an entry: the closing line would no
# longer fit. A wrong one is taken back by a later entry (jobsheet ran --take-back).
"""
SUFFIX = ".ran.txt"


def path_beside(job: Path | str) -> Path:
    """Where the record of a job's file lies, whether it is there or not."""
    path = Path(job)
    return path.with_name(f"{path.stem}{SUFFIX}")


def read_runs(job: Path | str) -> tuple[Runs, tuple[Problem, ...]]:
    """All that is recorded beside that job, and what of it does not count, each with its line.

    Raises
    ------
    DocumentError
        If the file is there and cannot be read at all.
    """
    path = path_beside(job)
    try:
        there = path.stat()
    except OSError:
        return Runs(), ()
    return _read(path, there.st_mtime_ns, there.st_size)


@lru_cache(maxsize=256)
def _read(path: Path, _time: int, _size: int) -> tuple[Runs, tuple[Problem, ...]]:
    """By time and size: a file that did not grow is not read again."""
    return runs_from(bytes_of(path, _WHAT))


def runs_from(raw: bytes) -> tuple[Runs, tuple[Problem, ...]]:
    """The entries of a record's bytes that count, and all that is wrong with the others."""
    found: dict[str, Entry] = {}
    problems: list[Problem] = []
    for first, lines in blocks(raw):
        heading = _FORMAT.match(lines[0])
        if heading is not None and len(lines) == 1:
            if sentence := what_is_wrong(heading[1], OF_LISTS):
                # Of another format nothing is guessed: what stands below may mean something else.
                return Runs(), (*problems, Problem(first, "format", sentence))
            continue
        if not is_closed(lines[-1]):
            problems.append(Problem(first, "", torn_words(first, lines, "enter it again")))
            continue
        entry, wrong = entry_from(lines, first)
        problems += wrong
        if entry is not None:
            found.setdefault(entry.id, entry)
    ordered = tuple(sorted(found.values(), key=lambda entry: (entry.date, entry.time)))
    return (
        Runs(
            entries=tuple(entry for entry in ordered if not entry.takes_back),
            back=tuple(entry for entry in ordered if entry.takes_back),
        ),
        tuple(problems),
    )


def record(job: Path | str, entries: tuple[Entry, ...]) -> tuple[Entry, ...]:
    """Write entries behind the others, all or none; returns them as the file has them, with their ids.

    One that takes another back may stand among them: a wrong digit and the right one are written as one.

    Raises
    ------
    DocumentError
        If one of them makes no sense.
    CommandError
        If one is there already, or a step was entered for that day: one step on one day
        is one entry, however many passes.
    CannotWrite
        If the disk refuses, or another program is writing; what was there is still there.
    """
    path = path_beside(job)
    written = tuple(as_written(entry) for entry in entries)
    with alone(path):
        there = read_runs(job)[0]
        known = {entry.id for entry in (*there.entries, *there.back)}
        taken = {
            (entry.key, entry.date, entry.machine): entry for entry in there.standing if entry.about == "step"
        }
        undone = {entry.takes_back for entry in written}
        taken = {of: entry for of, entry in taken.items() if entry.id not in undone}
        for entry in written:
            before = taken.get((entry.key, entry.date, entry.machine))
            if entry.about == "step" and not entry.takes_back and before is not None:
                raise CommandError(
                    f"Step {entry.number} was entered for {entry.date} already ({before.outcome}, {before.id[:6]}): take that back first, "
                    "or give the day on which it was cut again."
                )
            if entry.id in known:
                raise CommandError(f"This very entry is recorded already ({entry.id[:6]}).")
            if entry.about == "step" and not entry.takes_back:
                taken[entry.key, entry.date, entry.machine] = entry
            known.add(entry.id)
        head = _HEAD.format(job=written[0].job if written else "")
        add(
            path,
            _WHAT,
            head,
            (entry_text(entry) for entry in written),
            lambda raw: _proved(path, raw, written),
        )
    return written


def runs_along(part: str, old: Path, new: Path) -> str:
    """What happened comes to lie beside the file that a job is saved as now; a sentence where it does not.

    Only of the same part: what happened with another one is not its history. A record that
    lies there already is left as it is.
    """
    source, target = path_beside(old), path_beside(new)
    if source == target or not source.exists():
        return ""
    stays = f"What happened stays beside {old.name}"
    try:
        told = read_runs(old)[0]
        if any(entry.job != (part or old.stem) for entry in told.entries):
            return f"{stays}: it is of another part."
        kept = bytes_of(source, _WHAT)
        if not target.exists():
            write_file(target, kept)
        elif bytes_of(target, _WHAT) != kept:
            return f"{stays}: {target.name} is there already, and says otherwise."
    except (DocumentError, CannotWrite) as error:
        return f"{stays}: {' '.join(str(error).split()).rstrip('.')}."
    return ""


def as_written(entry: Entry) -> Entry:
    """As the file will have it, with its id. Raises DocumentError where it makes no sense."""
    lines = lines_of(replace(entry, id=""))
    found, problems = entry_from([*lines, f"{END}: {id_of(lines)}"], 1)
    if found is None:
        raise DocumentError("this entry", tuple(problem._replace(line=None) for problem in problems))
    return found


def _proved(path: Path, raw: bytes, entries: tuple[Entry, ...]) -> None:
    """That the file will say these entries when it is read again; asked
    before a byte of them is on the disk.
    """
    runs, problems = runs_from(raw)
    missing = {entry.id for entry in entries} - {entry.id for entry in (*runs.entries, *runs.back)}
    if missing:
        why = " ".join(str(problems[-1]).split()) if problems else "nothing is read of it"
        raise CannotWrite(f"{path.name} was not written to, because the entry could not be read again: {why}")


def take_back(
    job: Path | str, start: str, date: str, *, role: str = "", note: str = "", clock: str = ""
) -> Entry:
    """Take back the one entry whose id begins so; returns it. Both stay in the file.

    Raises
    ------
    NoSuchEntry
        If there is no such entry, or more than one.
    """
    standing = read_runs(job)[0].standing
    entries = [entry for entry in standing if start.strip() and entry.id.startswith(start.strip().lower())]
    if len(entries) != 1:
        many = (
            f"“{start}” begins {len(entries)} entries: write more of it"
            if entries
            else f"there is no entry “{start}”"
        )
        raise NoSuchEntry(f"{many}; what is recorded: {path_beside(job).name}")
    entry = entries[0]
    record(
        job,
        (
            Entry(job=entry.job, plan=entry.plan, revision=entry.revision, machine=entry.machine, date=date, about=entry.about, time=clock,
                  role=role, note=note, takes_back=entry.id),
        ),
    )  # fmt: skip
    return entry
