"""From the trials of a machine to what it will carry: a snapshot that goes into the `Setting` as a value.

Imports numpy: import it late, where trials were read or written, never at start or while someone types.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from datetime import date
from functools import partial

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.capacity import Capacity, Doubt, Good, Snapshot
from jobsheet.model.shop import Shop
from jobsheet.model.trials import CHANGES, LEARNED, Trial, in_time, struck_out
from jobsheet.proving.assumed import WRONG, WRONG_AT_WORK, ends_badly, says, spread_of
from jobsheet.proving.chance import largest_share
from jobsheet.proving.grid import Array, Posterior, Process, Said, compressed, fits, posterior, quantiles
from jobsheet.remembered import remembered

#: Nine in ten lie between the first and the last; the median is in the middle.
_NINE_IN_TEN = (0.05, 0.5, 0.95)
#: Cells of a capacity: so few that a chance takes microseconds, so many that it is right to a thousandth.
_CELLS = 160


def snapshot(
    trials: Sequence[Trial], machine: str, today: str, shop: Shop, *, measured: bool = False
) -> Snapshot:
    """What these trials teach of that machine; the same trials on the same day are not reckoned twice.

    Parameters
    ----------
    trials : sequence of Trial
        Of this machine, in the order of its log, marks of a change among them; struck ones may still be there
    today : str
        Date to which the age of the trials counts, such as `2026-11-25`
    shop : Shop
        Its `proof_ageing` widens old proof, its `proof_chance` is that of the planned share
    measured : bool, optional
        Whether the frame was measured, so that shares are of its own level
    """
    return _snapshot(tuple(trials), machine, today, shop.proof_ageing, shop.proof_chance, measured)


@remembered(64)
def _snapshot(
    trials: tuple[Trial, ...], machine: str, today: str, ageing: float, chance: float, measured: bool
) -> Snapshot:
    struck = struck_out(trials)
    kept = frozenset(trial.keeps for trial in trials if trial.keeps and trial.id not in struck)
    records = [trial for trial in trials if trial.is_cut or trial.changed]
    standing = in_time(trial for trial in records if not trial.id or trial.id not in struck)
    capacities: list[Capacity] = []
    for limit in LEARNED:
        capacities += _of_limit(
            limit, standing, kept, today, ageing, chance, spread_of(limit, measured=measured)
        )
    cuts = sum(1 for trial in records if not trial.changed)
    count = sum(1 for trial in standing if not trial.changed)
    return Snapshot(
        machine=machine, made=today, capacities=tuple(capacities), trials=count, struck=cuts - count
    )


class _Evidence(Struct, frozen=True, kw_only=True):
    """The trials of one process and kind of cutter that asked a limit: what they
    showed, beside the posterior.
    """

    good: tuple[Good, ...] = ()
    bad: tuple[float, ...] = ()
    ends: tuple[Good, ...] = ()
    newest: str = ""
    age: int = 0
    spoke: int = 0
    since: float = 0.0
    doubts: tuple[Doubt, ...] = ()


class _Cut(Struct, frozen=True):
    """A trial that asked a limit, with that share, and how often the machine
    changed since in what concerns it.

    `kept`: it seemed odd, and somebody said that it was so.
    """

    trial: Trial
    share: float
    changes: int
    kept: bool


def _of_limit(
    limit: str,
    trials: Sequence[Trial],
    kept: frozenset[str],
    today: str,
    ageing: float,
    chance: float,
    spread: float,
) -> list[Capacity]:
    """A capacity for each process that asked it, and last one for any that was not yet tried."""
    asking: dict[Process, list[_Cut]] = {}
    left = sum(1 for trial in trials if limit in CHANGES.get(trial.changed, ()))
    for trial in trials:
        if trial.changed:
            left -= limit in CHANGES.get(trial.changed, ())
        elif (share := _share(trial, limit)) is not None:
            asking.setdefault((trial.process, trial.cutter_kind), []).append(
                _Cut(trial, share, left, trial.id in kept)
            )
    if not asking:
        return []
    said = {process: _said(limit, cuts, today) for process, cuts in sorted(asking.items())}
    known = posterior(said, spread, ageing)
    made = []
    for process, weights in known.processes.items():
        cuts = asking[process]
        doubts = _doubts(limit, cuts, spread, partial(fits, said, spread, known, process))
        made.append(_capacity(limit, process, known, weights, _shown(limit, cuts, today, doubts), chance))
    speaking = [cut for cuts in asking.values() for cut in cuts if says(cut.trial.outcome, limit)]
    if speaking:
        newest = _newest(speaking)
        ends = tuple(_good(cut) for cut in speaking if _ended(cut, limit))
        alone = _Evidence(newest=newest, age=_age(newest, today), spoke=len(speaking), ends=ends)
        untried = _capacity(limit, ("", ""), known, known.untried, alone, chance)
        made.append(replace(untried, machine=_band(known.places, known.machine)))
    return made


def _capacity(
    limit: str, process: Process, known: Posterior, weights: Array, shown: _Evidence, chance: float
) -> Capacity:
    low, median, high = _band(known.places, weights)
    made = Capacity(
        limit=limit, process=process[0], cutter_kind=process[1], low=low, median=median, high=high,
        cells=compressed(known.places, weights, _CELLS), good=shown.good, bad=shown.bad, newest=shown.newest, age=shown.age,
        spoke=shown.spoke, ends=shown.ends, noise=known.noise, since=shown.since, doubts=shown.doubts,
    )  # fmt: skip
    return replace(made, planned=largest_share(made, chance))


def _band(places: Array, weights: Array) -> tuple[float, ...]:
    return tuple(math.exp(one) for one in quantiles(places, weights, _NINE_IN_TEN))


def _share(trial: Trial, limit: str) -> float | None:
    """What it asked of that limit; None where that has no meaning."""
    asked = trial.of(limit)
    return asked.share if asked is not None and 0 < asked.share < math.inf else None


def _said(limit: str, cuts: Iterable[_Cut], today: str) -> tuple[Said, ...]:
    return tuple(
        Said(
            word, math.log(cut.share), _age(cut.trial.date, today), bool(cut.trial.job), cut.changes, cut.kept
        )
        for cut in cuts
        if (word := says(cut.trial.outcome, limit))
    )


def _doubts(
    limit: str, cuts: Sequence[_Cut], spread: float, chances: Callable[[], list[float]]
) -> tuple[Doubt, ...]:
    """Those that a slip of the pen explains better than the machine does, by all the others.

    Only a bad end under a clean cut can be one, or a clean cut over a bad end:
    without either nothing is reckoned.
    """
    speaking = [cut for cut in cuts if says(cut.trial.outcome, limit)]
    heaviest = max((cut.share for cut in speaking if says(cut.trial.outcome, limit) == "above"), default=0.0)
    lightest = min(
        (cut.share for cut in speaking if says(cut.trial.outcome, limit) != "above"), default=math.inf
    )
    if heaviest <= lightest:
        return ()
    odd: list[tuple[float, int]] = []
    for place, (cut, chance) in enumerate(zip(speaking, chances(), strict=True)):
        over = cut.share > lightest if says(cut.trial.outcome, limit) == "above" else cut.share < heaviest
        if over and not cut.kept and chance < (WRONG_AT_WORK if cut.trial.job else WRONG):
            odd.append((chance, place))
    doubts = []
    for chance, place in sorted(odd)[:_ODD_AT_ONCE]:
        cut, rest = speaking[place], speaking[:place] + speaking[place + 1 :]
        low, high = _without(limit, rest, spread)
        doubts.append(
            Doubt(trial=cut.trial.id, outcome=cut.trial.outcome, share=cut.share, chance=chance, low=low, high=high,
                  others=len(rest))
        )  # fmt: skip
    return tuple(doubts)


#: The oddest are asked about first; where there are more, the others are asked when these have been decided.
_ODD_AT_ONCE = 5


def _without(limit: str, cuts: Sequence[_Cut], spread: float) -> tuple[float, float]:
    """Nine in ten by these alone."""
    said = tuple(
        Said(
            says(cut.trial.outcome, limit), math.log(cut.share), 0, bool(cut.trial.job), cut.changes, cut.kept
        )
        for cut in cuts
    )
    known = posterior({("", ""): said}, spread)
    low, _, high = _band(known.places, known.processes["", ""])
    return low, high


def _shown(limit: str, cuts: Sequence[_Cut], today: str, doubts: tuple[Doubt, ...]) -> _Evidence:
    """Good cuts and bad ends, in the order of time.

    What does not fit the others ends no ladder, yet a good cut that it speaks against is none to rest on
    until somebody has decided. What was before the machine changed does neither.
    """
    doubted = {doubt.trial for doubt in doubts if doubt.trial}
    now = [cut for cut in cuts if not cut.changes]
    ends = [cut for cut in now if _bad(cut, limit) and cut.trial.id not in doubted]
    good: list[Good] = []
    since = 0.0
    for place, cut in enumerate(cuts):
        if cut in ends:
            since = 0.0
        elif cut.trial.outcome == "clean":
            later = [other for other in cuts[place + 1 :] if not other.changes and _bad(other, limit)]
            over = bool(cut.changes) or any(other.share <= cut.share for other in later)
            good.append(_good(cut, overtaken=over))
            since = since if cut.changes else max(since, cut.share)
    newest = _newest(cuts)
    spoke = sum(1 for cut in cuts if says(cut.trial.outcome, limit))
    shown = tuple(_good(cut) for cut in cuts if _ended(cut, limit))
    return _Evidence(
        good=tuple(good), bad=tuple(cut.share for cut in ends), ends=shown, newest=newest, age=_age(newest, today), spoke=spoke, since=since,
        doubts=doubts,
    )  # fmt: skip


def _good(cut: _Cut, *, overtaken: bool = False) -> Good:
    """A trial as evidence of the limit that it asked."""
    trial = cut.trial
    asked = next(asked for asked in trial.asked if asked.share == cut.share)
    return Good(
        share=cut.share, date=trial.date, cutter=trial.cutter, stick_out=trial.stick_out, holding=trial.holding, trial=trial.id,
        overtaken=overtaken, demand=asked.demand, outcome=trial.outcome,
    )  # fmt: skip


def _ended(cut: _Cut, limit: str) -> bool:
    """Whether it gave out, or nearly, at this very limit."""
    return says(cut.trial.outcome, limit) in ("below", "near")


def _bad(cut: _Cut, limit: str) -> bool:
    return ends_badly(cut.trial.outcome, limit, frozenset(asked.limit for asked in cut.trial.asked))


def _newest(cuts: Sequence[_Cut]) -> str:
    return max((cut.trial.date for cut in cuts), default="")


def _age(day: str, today: str) -> int:
    """Days from that day to this; 0 where either is no date, or it lies ahead: a
    clock that is wrong proves nothing.
    """
    try:
        return max(0, (date.fromisoformat(today) - date.fromisoformat(day)).days)
    except ValueError:
        return 0
