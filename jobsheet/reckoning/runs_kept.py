"""What was said of a run is kept: beside the job first, then in the machine's proof log what has
a force; and all of it taken back.

Window and command line both come here, so that the same rules hold in either.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from datetime import datetime, timedelta
from pathlib import Path

from msgspec import Struct
from msgspec.structs import replace

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
    now = datetime.now().astimezone()
    return now.date().isoformat(), now.strftime("%H:%M:%S")


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
    return tuple(one for one in set_up.operations if reckoned.operations[one.key].governing is not None)


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
    taken = {one.takes_back for one in run_log.read_runs(path)[0].back} | {one.id for one in back}
    fresh = tuple(_told_apart(_planned(one, reckoned), taken) for one in entries)
    undone = tuple(_undoing(one, day, role, "", clock) for one in back)
    written = run_log.record(path, (*undone, *fresh))[len(undone) :]
    unclosed = _closed(path, written)
    steps = [one for one in written if one.about == "step" and one.key not in leave_out]
    trials: list[tuple[Entry, Trial]] = []
    struck: tuple[Trial, ...] = ()
    refused = ""
    try:
        struck = tuple(trial for one in back for trial in _strike(one, day, role, clock))
        figures = reckoned() if steps else None
        for one in steps:
            trial = trial_of_entry(one, figures) if figures is not None else None
            if trial is not None:
                trials.append((one, proof_log.append(trial.machine, trial)))
    except JobsheetError as error:
        refused = str(error)
    return Kept(
        written=written, back=back, trials=tuple(trials), struck=struck, refused=refused, unclosed=unclosed
    )


def _planned(one: Entry, reckoned: Callable[[], Reckoned]) -> Entry:
    """Minutes with what was planned then: what the plan says later is another thing."""
    if one.about != "minutes" or one.planned_set_up is not None:
        return one
    from jobsheet.reckoning.minutes import by_kind

    figures = reckoned()
    parts = [by_kind(each, figures) for each in figures.job.set_ups if one.set_up in (0, each.number)]
    return replace(
        one, planned_set_up=sum(part.set_up for part in parts), planned_milling=sum(part.milling for part in parts),
        planned_holes=sum(part.holes for part in parts), planned_by_hand=sum(part.hand for part in parts),
    )  # fmt: skip


def _closed(path: Path, entries: tuple[Entry, ...]) -> str:
    """The plan that was made is kept as it was; a sentence where it cannot be. One that is no
    more in its file is on paper alone.
    """
    cut = next((one for one in entries if one.about == "step"), None)
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
    one = run_log.take_back(path, start, day, role=role, note=note, clock=clock)
    try:
        return Kept(back=(one,), struck=_strike(one, day, role, clock))
    except JobsheetError as error:
        return Kept(back=(one,), refused=str(error))


def _told_apart(one: Entry, taken: set[str]) -> Entry:
    """The same words on the same day are the same entry; said once more after it was
    taken back, its time tells them apart.
    """
    now = datetime.now().astimezone()
    while run_log.as_written(one).id in taken:
        one = replace(one, time=now.strftime("%H:%M:%S"))
        now += timedelta(seconds=1)
    return one


def _undoing(one: Entry, day: str, role: str, note: str, clock: str) -> Entry:
    return Entry(
        job=one.job, plan=one.plan, revision=one.revision, machine=one.machine, date=day, about=one.about, time=clock, role=role,
        note=note, takes_back=one.id,
    )  # fmt: skip


def _strike(one: Entry, day: str, role: str, clock: str) -> tuple[Trial, ...]:
    """What an entry taught, out of the proof log."""
    if one.about != "step":
        return ()
    found = tuple(trial for trial in proof_log.read_log(one.machine).standing if trial.entry == one.id)
    for trial in found:
        proof_log.strike(one.machine, trial.id, day, role, _TAKEN_BACK, clock)
    return found
