"""What kept readings ask beside one step: what ran, rungs of a person's own, times, cabinet."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import QuantityError
from jobsheet.model.shop import Shop
from jobsheet.model.what_ran import Entry, Runs
from jobsheet.reckoning.cabinet.cabinet_look import look_up, nearest
from jobsheet.reckoning.cabinet.cabinet_needs import cutter_need, words_ask
from jobsheet.reckoning.cabinet.cabinet_picks import picks
from jobsheet.reckoning.known_capacity import snapshot_of
from jobsheet.reckoning.ladder.ladders import plan, rung_at, trial_of
from jobsheet.reckoning.ladder.usual_cut import in_sizes
from jobsheet.reckoning.odd_trials import odd_trials
from jobsheet.reckoning.paces import Timed, paces
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.reckoning.run_trials import trial_of_entry
from jobsheet.reckoning.run_words import days_told, last_time
from jobsheet.reckoning.worked_anew import anew
from jobsheet.storage.records.proof_log import Log
from tests.reckoning.cabinet_asked import CABINET
from tests.told import told

#: The day that is today in every reading.
TODAY = "2026-12-01"
Lines = Iterator[str]
_NUMBERS = ("speed", "depth", "length", "seconds", "found", "setting_up", "cutting", "tachometer", "chance")
_COUNTS = ("layer", "number", "set_up")


def numbers(asked: dict) -> dict:
    """The same with numbers where numbers belong."""
    return {
        name: float(one) if name in _NUMBERS else int(one) if name in _COUNTS else one
        for name, one in asked.items()
    }


def of_ran(asked: dict, found: Reckoned) -> Lines:
    """How a step went, as a trial of the machine."""
    operation = found.job.find(asked["of"])[1]
    entry = Entry(
        job="HM-1", plan="D495-6QV9-7Y6", revision=2, machine=found.job.machine, date=TODAY, about="step",
        key=operation.key, number=operation.number, **numbers(asked["ran"]),
    )  # fmt: skip
    trial = trial_of_entry(entry, found)
    yield f"trial: {told(trial)}"
    if trial is not None:
        yield f"anew: {told(anew((trial,))[0].asked)}"


def of_days(asked: dict, found: Reckoned) -> Lines:
    """What is told of several days."""
    entries = tuple(
        Entry(**{"job": "HM-1", "plan": "", "revision": 1, "machine": "", "date": TODAY, **numbers(one)})
        for one in asked["days"]
    )
    runs = Runs(entries=entries)
    for line in days_told(runs, found.job.units):
        yield f"day: {told(line)}"
    for set_up in found.job.set_ups:
        yield f"last time: {told(last_time(found.job, set_up, runs))}"


def of_paces(asked: dict) -> Lines:
    """By what the clock differs from the plan."""
    names = ("set_up", "milling", "holes", "hand", "setting_up", "cutting")
    runs = [
        Timed(date=TODAY, **{name: float(one) * 60 for name, one in zip(names, row, strict=True) if one})
        for row in asked["minutes"]
    ]
    for one in paces(runs):
        yield f"pace: {told(one)}; {one.words()}"


def of_rung(asked: dict, trials: tuple) -> Lines:
    """A rung of a person's own, and what became of it."""
    how = numbers({name: one for name, one in asked.items() if name not in _NOT_PLANNED})
    ladder = plan(asked["machine"], date=TODAY, trials=trials, **how)
    rung = rung_at(ladder, asked.get("typed", {}), asked.get("size", ""))
    yield f"rung: {told({name: getattr(rung, name) for name in rung.__struct_fields__ if name != 'figures'})}"
    trial = trial_of(ladder, rung, date=TODAY, **numbers(asked.get("went", {"outcome": "1"})))
    yield f"trial: {told(trial)}"
    yield f"anew: {told(anew((trial,))[0].asked)}"


_NOT_PLANNED = ("ask", "says", "log", "ends", "machine", "typed", "size", "went")


def of_log(asked: dict, trials: tuple) -> Lines:
    """What a log teaches, in sizes, and what of it is odd."""
    known = snapshot_of(asked["machine"], trials, TODAY, Shop())
    for one in known.capacities if known is not None else ():
        yield f"{one.limit} {one.process} {one.cutter_kind}: {told((one.low, one.median, one.high, one.planned))}"
        sizes = in_sizes(one, trials)
        yield f"in sizes: {told(sizes)} {sizes.words() if sizes else ''}"
    yield f"odd: {told(odd_trials(known, Log(machine=asked['machine'], trials=trials)))}"
    yield f"anew: {told([one.asked for one in anew(trials)])}"


def of_look(asked: dict) -> Lines:
    """What a cabinet has for a line."""
    needs = list(words_ask(asked["line"], asked["units"]))
    try:
        needs.append(cutter_need(read_cutter(asked["line"], asked["units"])))
    except QuantityError as error:
        yield f"no cutter: {error}"
    for need in needs:
        if need is not None:
            look = look_up(need, CABINET)
            yield f"{need.section}: {told(look)}"
            yield f"nearest: {told([one.what for one in nearest(need, CABINET.of(need.section))])}"


def of_picks(asked: dict, found: Reckoned, cabinet) -> Lines:
    """What a field can be filled with from the cabinet."""
    for one in picks(found.job, found.job.find(asked["of"])[1], asked["field"], cabinet):
        yield f"pick: {told(one)}"
