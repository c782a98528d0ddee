"""Trials that do not fit the others, said in sizes: a slip of the pen, something
loose, or a machine that has changed.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.limits.as_depth import said
from jobsheet.model.capacity import Doubt, Snapshot
from jobsheet.model.trials import MILLING, Trial
from jobsheet.operations.names import show
from jobsheet.reckoning.ladder.ladder_sizes import two_figures
from jobsheet.storage.records.proof_log import Log
from jobsheet.units.grammar import read
from jobsheet.units.table import INCH

#: What a number is called in a sentence, up to where it is read at a glance.
_COUNTS = (
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)


class Odd(Struct, frozen=True, kw_only=True):
    """A trial that does not fit, and the sentence that says against what."""

    trial: Trial
    limit: str
    chance: float
    sentence: str


def odd_trials(known: Snapshot | None, log: Log) -> tuple[Odd, ...]:
    """The trials of a log that do not fit the others, the least likely first."""
    if known is None:
        return ()
    trials = {trial.id: trial for trial in log.standing}
    odds = [
        Odd(trial=trials[doubt.trial], limit=capacity.limit, chance=doubt.chance,
            sentence=_sentence(trials[doubt.trial], capacity.limit, doubt))
        for capacity in known.capacities
        for doubt in capacity.doubts
        if doubt.trial in trials
    ]  # fmt: skip
    return tuple(sorted(odds, key=lambda odd: (odd.chance, odd.trial.id)))


def _sentence(trial: Trial, limit: str, doubt: Doubt) -> str:
    """Against what it stands: `1.2 mm deep chattered; the other six say over 1.9 mm`."""
    others = f"the other {_count(doubt.others)} say{'s' if doubt.others == 1 else ''}"
    if doubt.outcome == "clean":
        edge = f"up to {_size(trial, limit, doubt.high / doubt.share)}"
    else:
        edge = f"over {_size(trial, limit, doubt.low / doubt.share)}"
    return (
        f"This one says {_size(trial, limit, 1.0)}, {doubt.outcome}; {others} {edge}: "
        "a slip of the pen, or was something loose?"
    )


def _count(number: int) -> str:
    return _COUNTS[number] if number < len(_COUNTS) else str(number)


def _size(trial: Trial, limit: str, factor: float) -> str:
    """What a cut like it, but for its depth, would ask so many times as much of;
    a torque where depth says nothing.
    """
    depth = trial.one_cut().get("depth", "")
    if trial.process in MILLING and depth:
        try:
            size = read(depth, "length", trial.units) * factor
            if factor == 1.0:
                return f"{said(size, trial.units)} deep"
            unit, name = (1e-3, "mm") if trial.units == "mm" else (INCH, "in")
            return f"{two_figures(size / unit)} {name} deep"
        except JobsheetError:
            pass
    asked = trial.of(limit)
    measured = {"spindle-torque": "torque", "chatter": "cutting_stiffness"}[limit]
    return show(measured, asked.demand * factor, trial.units) if asked is not None else f"{factor:.2f}"
