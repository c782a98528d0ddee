"""The proof log of a machine: what its test cuts did. Text that only grows, one trial a record.

A record is written in one go and flushed to the disk before anything else is said; it counts once its closing
line is there. What a crash left half is kept and reported, and the next record begins behind it. Nothing is
ever changed: a wrong record is struck out by a later one.

The shipped, invented logs count like the shipped, invented cards: until a person has a card of that name.
"""

from __future__ import annotations

import re
from functools import lru_cache
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CannotWrite, CommandError, DocumentError, NoSuchEntry, Problem
from jobsheet.model.trials import Trial, in_time, struck_out
from jobsheet.paths import own_folder, resources
from jobsheet.storage.records.closed_records import END, add, blocks, bytes_of, id_of, is_closed, torn_words
from jobsheet.storage.records.proof_lock import alone
from jobsheet.storage.records.proof_record import lines_of, record_text, trial_from
from jobsheet.storage.versions import OF_LISTS, what_is_wrong

FOLDER = "proof"
_NAME = re.compile(r"^[a-z0-9][a-z0-9-]{0,99}$")  # as long as the name of a file may be
_FORMAT = re.compile(r"^format:\s*(\S+)$")
_WHAT = "a proof log"


class Log(Struct, frozen=True, kw_only=True):
    """What a log holds, in the order of dates: `trials` with those that were
    struck out, `strikes` that do so.

    `marks` say when the machine changed, and which odd trial was so all the same.
    A strike that was struck itself strikes nothing: what it struck was given back.
    `problems` are records that do not count, each with its line; `own` and
    `shipped` say where they came from.
    """

    machine: str
    trials: tuple[Trial, ...] = ()
    strikes: tuple[Trial, ...] = ()
    marks: tuple[Trial, ...] = ()
    problems: tuple[Problem, ...] = ()
    #: Ids of trials that came with the program and are invented.
    shipped: frozenset[str] = frozenset()
    #: Ids of all records in the order in which they were written.
    written: tuple[str, ...] = ()

    @property
    def struck(self) -> dict[str, Trial]:
        """The record that strikes it out, by the id of the trial."""
        return struck_out(self.strikes)

    @property
    def standing(self) -> tuple[Trial, ...]:
        """The trials that count."""
        out = self.struck
        return tuple(trial for trial in self.trials if trial.id not in out)

    @property
    def teaching(self) -> tuple[Trial, ...]:
        """The trials that count and the marks that stand beside them, in order: what is learned from."""
        out = self.struck
        return _ordered((*self.standing, *(mark for mark in self.marks if mark.id not in out)))

    @property
    def records(self) -> tuple[Trial, ...]:
        """Trials, strikes and marks together, in order."""
        return _ordered((*self.trials, *self.strikes, *self.marks))

    def find(self, start: str) -> Trial:
        """The one trial whose id begins so. Raises NoSuchEntry."""
        trials = (
            [trial for trial in (*self.trials, *self.marks) if trial.id.startswith(start.strip().lower())]
            if start.strip()
            else []
        )
        if len(trials) == 1:
            return trials[0]
        if trials:
            raise NoSuchEntry(f"“{start}” begins {len(trials)} ids of this log: write more of it")
        raise NoSuchEntry(f"there is no trial “{start}” in the log of {self.machine}")


class Merged(Struct, frozen=True, kw_only=True):
    """What a merge did: records taken over, how many were there already, and
    what in the other log does not count.
    """

    added: tuple[Trial, ...]
    known: int
    problems: tuple[Problem, ...]


def _ordered(records: tuple[Trial, ...]) -> tuple[Trial, ...]:
    return tuple(in_time(sorted(records, key=lambda trial: trial.id)))


def own_path(machine: str) -> Path:
    """Where the person's own log of that machine lies, whether it is there or not. Raises NoSuchEntry."""
    if not _NAME.match(machine):
        raise NoSuchEntry(f"“{machine}” is not the name of a machine card; write it as bench-mill-b-1")
    return own_folder() / FOLDER / f"{machine}.txt"


def _shipped_path(machine: str) -> Path | None:
    """The invented log that came with the invented card, as long as that card counts."""
    path = resources() / FOLDER / f"{machine}.txt"
    own_card = own_folder() / "machines" / f"{machine}.yaml"
    return path if path.is_file() and not own_card.is_file() else None


def read_log(machine: str) -> Log:
    """Everything that is known of that machine; an empty log where there is nothing yet.

    Raises
    ------
    NoSuchEntry
        If that cannot be the name of a machine.
    DocumentError
        If the file cannot be read at all. Single records that are wrong are in `problems`.
    """
    own = own_path(machine)
    paths = [path for path in (_shipped_path(machine), own) if path is not None]
    return _read(machine, tuple(_seen(path) for path in paths))


def _seen(path: Path) -> tuple[Path, int, int]:
    """A path with what changes when it is written to."""
    try:
        there = path.stat()
    except OSError:
        return path, 0, -1
    return path, there.st_mtime_ns, there.st_size


@lru_cache(maxsize=64)
def _read(machine: str, seen: tuple[tuple[Path, int, int], ...]) -> Log:
    """By the time and size of its files: a log that did not grow is not read again."""
    found: dict[str, Trial] = {}
    problems: list[Problem] = []
    invented: frozenset[str] = frozenset()
    for path, _, size in seen:
        if size < 0:
            continue
        records, wrong = records_from(bytes_of(path, _WHAT), machine)
        if path.is_relative_to(resources()):
            invented = frozenset(trial.id for trial in records)
        for trial in records:
            found.setdefault(trial.id, trial)
        problems += wrong
    everything = _ordered(tuple(found.values()))
    return Log(
        machine=machine, trials=tuple(trial for trial in everything if trial.is_cut),
        strikes=tuple(trial for trial in everything if trial.strikes),
        marks=tuple(trial for trial in everything if trial.changed or trial.keeps), problems=tuple(problems), shipped=invented,
        written=tuple(found),
    )  # fmt: skip


def records_from(raw: bytes, machine: str = "") -> tuple[tuple[Trial, ...], tuple[Problem, ...]]:
    """The records of a log's bytes that count, and all that is wrong with the others."""
    records: list[Trial] = []
    problems: list[Problem] = []
    for first, lines in blocks(raw):
        heading = _FORMAT.match(lines[0])
        if heading is not None and len(lines) == 1:
            if sentence := what_is_wrong(heading[1], OF_LISTS):
                # Of another format nothing is guessed: what stands below may mean something else.
                return (), (*problems, Problem(first, "format", sentence))
            continue
        if not is_closed(lines[-1]):
            problems.append(Problem(first, "", torn_words(first, lines, "enter that trial again")))
            continue
        trial, wrong = trial_from(lines, first)
        problems += wrong
        if trial is not None and machine and trial.machine != machine:
            problems.append(
                Problem(first, "machine", f"this is a trial of {trial.machine}, not of {machine}")
            )
        elif trial is not None:
            records.append(trial)
    return tuple(records), tuple(problems)


_HEAD = """\
format: 1

# Test cuts of {machine}, one a record. Only add to it, never change a record: the closing line would no longer fit.
# A wrong one is struck out by a later record (jobsheet prove strike).
"""


def as_text(machine: str) -> str:
    """All records of that machine as one log, to be carried elsewhere; empty where
    there are none. Raises as `read_log`.
    """
    records = read_log(machine).records
    if not records:
        return ""
    return _HEAD.format(machine=machine) + "".join("\n" + record_text(trial) for trial in records)


def _add(path: Path, machine: str, records: tuple[Trial, ...]) -> None:
    add(
        path, _WHAT, _HEAD.format(machine=machine), (record_text(trial) for trial in records),
        lambda raw: _proved(path, machine, raw, records),
    )  # fmt: skip


def _proved(path: Path, machine: str, raw: bytes, records: tuple[Trial, ...]) -> None:
    """That the log will say these records when it is read again; asked before
    a byte of them is on the disk.
    """
    trials, problems = records_from(raw, machine)
    missing = {trial.id for trial in records} - {trial.id for trial in trials}
    if missing:
        why = " ".join(str(problems[-1]).split()) if problems else "nothing is read of it"
        raise CannotWrite(f"{path.name} was not written to, because the trial could not be read again: {why}")


def append(machine: str, trial: Trial) -> Trial:
    """Write one trial behind the others; returns it as the file has it, with its id.

    Raises
    ------
    CommandError
        If the very same trial is in the log already, or is of another machine.
    CannotWrite
        If the disk refuses, or another program is writing; what was there is still there.
    """
    path = own_path(machine)
    if trial.machine != machine:
        raise CommandError(f"This is a trial of {trial.machine}; it does not go into the log of {machine}.")
    lines = lines_of(replace(trial, id=""))
    written, problems = trial_from([*lines, f"{END}: {id_of(lines)}"], 1)
    if written is None:
        raise DocumentError("this trial", tuple(problem._replace(line=None) for problem in problems))
    with alone(path):
        if any(record.id == written.id for record in read_log(machine).records):
            raise CommandError(
                f"This very trial is in the log already ({written.id}); if it was cut twice, say so in its note."
            )
        _add(path, machine, (written,))
    return written


def strike(machine: str, trial: str, date: str, role: str = "", note: str = "", clock: str = "") -> Trial:
    """Strike out a trial by its id, or by as much of it as is unlike the others; the record that does so.

    Raises
    ------
    NoSuchEntry
        If there is no such trial.
    CommandError
        If it is struck out already.
    """
    log = read_log(machine)
    found = log.find(trial)
    if found.id in log.struck:
        raise CommandError(f"{found.id} was struck out on {log.struck[found.id].date} already.")
    return append(machine, _strike_of(log, found.id, date, role, note, clock))


def _strike_of(log: Log, struck: str, date: str, role: str, note: str, clock: str) -> Trial:
    """A record that strikes another; where the very same was taken back within a second, it says *again*."""
    made = Trial(
        machine=log.machine, date=date, time=clock, role=role, note=note, strikes=struck, process="", cutter="",
        cutter_kind="", material="", outcome="", asked=(),
    )  # fmt: skip
    while id_of(lines_of(made)) in log.written:
        made = replace(made, note=f"{made.note}, again".lstrip(", "))
    return made


def give_back(
    machine: str, trial: str, date: str, role: str = "", note: str = "", clock: str = ""
) -> tuple[Trial, ...]:
    """Take back that a trial was struck out: the strikes are struck themselves, so
    that it counts again; those records.

    Raises
    ------
    NoSuchEntry
        If there is no such trial.
    CommandError
        If it is not struck out.
    """
    log = read_log(machine)
    found = log.find(trial)
    if found.id not in log.struck:
        raise CommandError(f"{found.id} is not struck out.")
    given = []
    while (by := log.struck.get(found.id)) is not None:  # two logs that were merged may both have struck it
        given.append(append(machine, _strike_of(log, by.id, date, role, note, clock)))
        log = read_log(machine)
    return tuple(given)


def mark(
    machine: str,
    date: str,
    *,
    changed: str = "",
    keeps: str = "",
    role: str = "",
    note: str = "",
    clock: str = "",
) -> Trial:
    """Say that the machine changed (one of `CHANGES`), or that an odd trial was so; the record that does so.

    Raises
    ------
    NoSuchEntry
        If there is no such trial.
    DocumentError
        If nothing of that name changes.
    """
    found = read_log(machine).find(keeps).id if keeps else ""
    return append(
        machine,
        Trial(
            machine=machine, date=date, time=clock, role=role, note=note, changed=changed, keeps=found, process="",
            cutter="", cutter_kind="", material="", outcome="", asked=(),
        ),
    )  # fmt: skip


def merge(machine: str, other: Path | str) -> Merged:
    """Take over from another log of this machine every record that is not there yet.

    Raises
    ------
    DocumentError
        If the other file cannot be read, or holds no record of this machine at all.
    CannotWrite
        If the disk refuses.
    """
    theirs = Path(other)
    records, problems = records_from(bytes_of(theirs, _WHAT), machine)
    if not records:
        none = Problem(None, "", "there is no record of a proof log in it")
        raise DocumentError(theirs.name, problems if len(problems) == 1 else (none,))
    path = own_path(machine)
    with alone(path):
        known = {trial.id for trial in read_log(machine).records}
        added = _ordered(tuple({trial.id: trial for trial in records if trial.id not in known}.values()))
        if added:
            _add(path, machine, added)
    return Merged(added=added, known=len({trial.id for trial in records}) - len(added), problems=problems)
