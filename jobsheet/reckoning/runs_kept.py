"""What was said of a run is kept: beside the job first, then in the machine's proof log what has
a force; and all of it taken back.

Window and command line both come here, so that the same rules hold in either.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from datetime import timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.clock import now
from jobsheet.errors import CannotWrite, JobsheetError
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.trials import Trial
from jobsheet.model.what_ran import Entry
from jobsheet.operations.registry import kind
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.reckoning.run_trials import trial_of_entry
from jobsheet.storage.check_code import check_code
from jobsheet.storage.kept.closed_plans import MADE, close_plan
from jobsheet.storage.records import proof_log, run_log

#: Why a trial is struck out of a proof log, as the log says it.
_TAKEN_BACK = "the entry of the job was taken back"


class Kept(Struct, frozen=True, kw_only=True):
    """What came of it: entries as the file beside the job has them, trials that
    count now, and those that no longer do.

    `refused` says why a proof log was not written to; what is beside the job is kept all the same.
    """

    written: tuple[Entry, ...] = ()
    back: tuple[Entry, ...] = ()
    trials: tuple[tuple[Entry, Trial], ...] = ()
    struck: tuple[Trial, ...] = ()
    refused: str = ""
    #: Why the plan that was made could not be kept as it was; what was said is kept all the same.
    unclosed: str = ""


def this_moment() -> tuple[str, str]:
    """Today and the time of day, as a record has them."""
    at = now()
    return at.date().isoformat(), at.strftime("%H:%M:%S")


def entry_of(path: Path, plan: Job, day: str, role: str) -> Entry:
    """What every entry of a run says: of which plan, which machine and which day; an empty day is today."""
    today, clock = this_moment()
    day = day or today
    return Entry(
        job=plan.part.number or path.stem, plan=check_code(path.read_bytes()),
        revision=plan.plan_number, machine=plan.machine, date=day,
        time=clock if day == today else "", about="", role=role,
    )  # fmt: skip


def step_words(operation: Operation) -> str:
    """A step as its entry names it."""
    return str(kind(operation.kind).words(operation.fields))


def steps_that_cut(set_up: SetUp, reckoned: Reckoned) -> tuple[Operation, ...]:
    """The steps of a set-up that cut: work by hand has no outcome of a cut."""
    return tuple(
        operation
        for operation in set_up.operations
        if reckoned.operations[operation.key].governing is not None
    )


def keep(
    path: Path,
    entries: tuple[Entry, ...],
    reckoned: Callable[[], Reckoned],
    *,
    back: tuple[Entry, ...] = (),
    leave_out: Collection[str] = (),
    role: str = "",
) -> Kept:
    """Write entries down and take others back, as one: all beside the job or nothing;
    then what the proof log gets of it.

    Parameters
    ----------
    reckoned : callable
        The figures of the very plan that the entries name; asked only where a step may
        teach something, or minutes are said
    back : tuple of Entry
        Standing entries that are taken back
    leave_out : collection of str
        Keys of steps that are kept with the job only

    Raises
    ------
    JobsheetError
        As `run_log.record`; nothing is written then.
    """
    day, clock = this_moment()
    taken = {entry.takes_back for entry in run_log.read_runs(path)[0].back} | {entry.id for entry in back}
    fresh = tuple(_told_apart(_planned(entry, reckoned), taken) for entry in entries)
    undone = tuple(_undoing(entry, day, role, "", clock) for entry in back)
    written = run_log.record(path, (*undone, *fresh))[len(undone) :]
    unclosed = _closed(path, written)
    steps = [entry for entry in written if entry.about == "step" and entry.key not in leave_out]
    trials: list[tuple[Entry, Trial]] = []
    struck: tuple[Trial, ...] = ()
    refused = ""
    try:
        struck = tuple(trial for entry in back for trial in _strike(entry, day, role, clock))
        figures = reckoned() if steps else None
        for entry in steps:
            trial = trial_of_entry(entry, figures) if figures is not None else None
            if trial is not None:
                trials.append((entry, proof_log.append(trial.machine, trial)))
    except JobsheetError as error:
        refused = str(error)
    return Kept(
        written=written, back=back, trials=tuple(trials), struck=struck, refused=refused, unclosed=unclosed
    )


def _planned(entry: Entry, reckoned: Callable[[], Reckoned]) -> Entry:
    """Minutes with what was planned then: what the plan says later is another thing."""
    if entry.about != "minutes" or entry.planned_set_up is not None:
        return entry
    from jobsheet.reckoning.minutes import by_kind

    figures = reckoned()
    parts = [by_kind(each, figures) for each in figures.job.set_ups if entry.set_up in (0, each.number)]
    return replace(
        entry, planned_set_up=sum(part.set_up for part in parts), planned_milling=sum(part.milling for part in parts),
        planned_holes=sum(part.holes for part in parts), planned_by_hand=sum(part.hand for part in parts),
    )  # fmt: skip


def _closed(path: Path, entries: tuple[Entry, ...]) -> str:
    """The plan that was made is kept as it was; a sentence where it cannot be. One that is no
    more in its file is on paper alone.
    """
    cut = next((entry for entry in entries if entry.about == "step"), None)
    if cut is None:
        return ""
    try:
        data = path.read_bytes()
        if check_code(data) == cut.plan:
            close_plan(path, data, cut.revision, MADE, cut.date)
    except (OSError, CannotWrite) as error:
        return f"The plan that was made could not be kept beside the job: {error}"
    return ""


def take_back(path: Path, start: str, *, role: str = "", note: str = "") -> Kept:
    """Take back the one entry whose id begins so, and what it taught. Raises NoSuchEntry."""
    day, clock = this_moment()
    entry = run_log.take_back(path, start, day, role=role, note=note, clock=clock)
    try:
        return Kept(back=(entry,), struck=_strike(entry, day, role, clock))
    except JobsheetError as error:
        return Kept(back=(entry,), refused=str(error))


def _told_apart(entry: Entry, taken: set[str]) -> Entry:
    """The same words on the same day are the same entry; said once more after it was
    taken back, its time tells them apart.
    """
    at = now()
    while run_log.as_written(entry).id in taken:
        entry = replace(entry, time=at.strftime("%H:%M:%S"))
        at += timedelta(seconds=1)
    return entry


def _undoing(entry: Entry, day: str, role: str, note: str, clock: str) -> Entry:
    return Entry(
        job=entry.job, plan=entry.plan, revision=entry.revision, machine=entry.machine, date=day, about=entry.about, time=clock, role=role,
        note=note, takes_back=entry.id,
    )  # fmt: skip


def _strike(entry: Entry, day: str, role: str, clock: str) -> tuple[Trial, ...]:
    """What an entry taught, out of the proof log."""
    if entry.about != "step":
        return ()
    trials = tuple(trial for trial in proof_log.read_log(entry.machine).standing if trial.entry == entry.id)
    for trial in trials:
        proof_log.strike(entry.machine, trial.id, day, role, _TAKEN_BACK, clock)
    return trials
