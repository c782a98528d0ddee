"""From the trials of a machine to what it will carry: a snapshot that goes into the `Setting` as a value.

Imports numpy: import it late, where trials were read or written, never at start or while someone types.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from datetime import date

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.capacity import Capacity, Good, Snapshot
from jobsheet.model.shop import Shop
from jobsheet.model.trials import LEARNED, Trial
from jobsheet.proving.assumed import PRIOR_SPREAD, ends_badly, says
from jobsheet.proving.chance import largest_share
from jobsheet.proving.grid import Array, Said, compressed, posterior, quantiles
from jobsheet.remembered import remembered

#: Nine in ten lie between the first and the last; the median is in the middle.
_NINE_IN_TEN = (0.05, 0.5, 0.95)
#: Cells of a capacity: so few that a chance takes microseconds, so many that it is right to a thousandth.
_CELLS = 160

Process = tuple[str, str]


def snapshot(trials: Sequence[Trial], machine: str, today: str, shop: Shop) -> Snapshot:
    """What these trials teach of that machine; the same trials on the same day are not reckoned twice.

    Parameters
    ----------
    trials : sequence of Trial
        Of this machine, in the order of its log; struck ones may still be among them
    today : str
        Date to which the age of the trials counts, such as `2026-11-25`
    shop : Shop
        Its `proof_ageing` widens old proof, its `proof_chance` is that of the planned share
    """
    return _snapshot(tuple(trials), machine, today, shop.proof_ageing, shop.proof_chance)


@remembered(64)
def _snapshot(trials: tuple[Trial, ...], machine: str, today: str, ageing: float, chance: float) -> Snapshot:
    struck = {one.strikes for one in trials if one.strikes}
    records = [one for one in trials if not one.strikes]
    standing = sorted(
        (one for one in records if not one.id or one.id not in struck), key=lambda one: (one.date, one.time)
    )
    capacities: list[Capacity] = []
    for limit in LEARNED:
        capacities += _of_limit(limit, standing, today, ageing, chance)
    return Snapshot(
        machine=machine, made=today, capacities=tuple(capacities), trials=len(standing),
        struck=len(records) - len(standing),
    )  # fmt: skip


class _Evidence(Struct, frozen=True, kw_only=True):
    """The trials of one process and kind of cutter that asked a limit: what they showed, beside the posterior."""

    good: tuple[Good, ...] = ()
    bad: tuple[float, ...] = ()
    ends: tuple[Good, ...] = ()
    newest: str = ""
    age: int = 0
    spoke: int = 0


def _of_limit(
    limit: str, trials: Sequence[Trial], today: str, ageing: float, chance: float
) -> list[Capacity]:
    """A capacity for each process that asked it, and last one for any that was not yet tried."""
    asking: dict[Process, list[Trial]] = {}
    for one in trials:
        if _share(one, limit) is not None:
            asking.setdefault((one.process, one.cutter_kind), []).append(one)
    if not asking:
        return []
    said = {process: _said(limit, found, today) for process, found in sorted(asking.items())}
    known = posterior(said, PRIOR_SPREAD[limit], ageing)
    made = [
        _capacity(limit, process, known.places, weights, _shown(limit, asking[process], today), chance)
        for process, weights in known.processes.items()
    ]
    speaking = [one for found in asking.values() for one in found if says(one.outcome, limit)]
    if speaking:
        newest = _newest(speaking)
        ends = tuple(_good(one, limit) for one in speaking if _ended(one, limit))
        alone = _Evidence(newest=newest, age=_age(newest, today), spoke=len(speaking), ends=ends)
        untried = _capacity(limit, ("", ""), known.places, known.untried, alone, chance)
        made.append(replace(untried, machine=_band(known.places, known.machine)))
    return made


def _capacity(
    limit: str, process: Process, places: Array, weights: Array, shown: _Evidence, chance: float
) -> Capacity:
    low, median, high = _band(places, weights)
    made = Capacity(
        limit=limit, process=process[0], cutter_kind=process[1], low=low, median=median, high=high,
        cells=compressed(places, weights, _CELLS), good=shown.good, bad=shown.bad, newest=shown.newest, age=shown.age,
        spoke=shown.spoke, ends=shown.ends,
    )  # fmt: skip
    return replace(made, planned=largest_share(made, chance))


def _band(places: Array, weights: Array) -> tuple[float, ...]:
    return tuple(math.exp(one) for one in quantiles(places, weights, _NINE_IN_TEN))


def _share(trial: Trial, limit: str) -> float | None:
    """What it asked of that limit; None where that has no meaning."""
    asked = trial.of(limit)
    return asked.share if asked is not None and 0 < asked.share < math.inf else None


def _said(limit: str, trials: Iterable[Trial], today: str) -> tuple[Said, ...]:
    found = []
    for one in trials:
        share, word = _share(one, limit), says(one.outcome, limit)
        if share is not None and word:
            found.append(Said(word, math.log(share), _age(one.date, today)))
    return tuple(found)


def _shown(limit: str, trials: Sequence[Trial], today: str) -> _Evidence:
    """Good cuts and bad ends, in the order of time."""
    good: list[Good] = []
    bad: list[float] = []
    for place, one in enumerate(trials):
        share = _share(one, limit) or 0.0
        if _bad(one, limit):
            bad.append(share)
        elif one.outcome == "clean":
            later = (_share(other, limit) or 0.0 for other in trials[place + 1 :] if _bad(other, limit))
            good.append(_good(one, limit, overtaken=any(other <= share for other in later)))
    newest = _newest(trials)
    spoke = sum(1 for one in trials if says(one.outcome, limit))
    ends = tuple(_good(one, limit) for one in trials if _ended(one, limit))
    return _Evidence(
        good=tuple(good), bad=tuple(bad), ends=ends, newest=newest, age=_age(newest, today), spoke=spoke
    )


def _good(trial: Trial, limit: str, *, overtaken: bool = False) -> Good:
    """A trial as evidence of that limit, which it asked."""
    asked = trial.of(limit)
    return Good(
        share=asked.share if asked is not None else 0.0, date=trial.date, cutter=trial.cutter, stick_out=trial.stick_out,
        holding=trial.holding, trial=trial.id, overtaken=overtaken, demand=asked.demand if asked is not None else 0.0,
        outcome=trial.outcome,
    )  # fmt: skip


def _ended(trial: Trial, limit: str) -> bool:
    """Whether it gave out, or nearly, at this very limit."""
    return _share(trial, limit) is not None and says(trial.outcome, limit) in ("below", "near")


def _bad(trial: Trial, limit: str) -> bool:
    return ends_badly(trial.outcome, limit, frozenset(one.limit for one in trial.asked))


def _newest(trials: Sequence[Trial]) -> str:
    return max((one.date for one in trials), default="")


def _age(day: str, today: str) -> int:
    """Days from that day to this; 0 where either is no date, or it lies ahead: a clock that is wrong proves nothing."""
    try:
        return max(0, (date.fromisoformat(today) - date.fromisoformat(day)).days)
    except ValueError:
        return 0
