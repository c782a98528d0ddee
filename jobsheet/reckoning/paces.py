"""Planned and real minutes of runs that were written down: by which factor this workshop's
times differ, and how much that varies.

What was planned is in the record of each run, by kind of work; what was read on the clock is the time to set
up and the time to do the rest. How the rest divides follows from runs of different mixes: a kind has a factor
of its own only where the runs tell it apart.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import exp, log, sqrt

from msgspec import Struct

from jobsheet.model.what_ran import Entry, Runs

#: Kinds of work beside setting up, and all of them together.
WORK = ("milling", "holes", "by hand")
SET_UP, TOGETHER = "set-up", "the work"
#: Runs before a factor is said; the record asks no fewer (issue: once there are five).
LEAST = 5
#: Of ten runs eight lie between the two ends of the spread: 1.28 standard deviations of
#: a normal distribution (its table).
EIGHT_OF_TEN = 1.28
#: How much the kinds of work differ from each other in one workshop before anything is known, as a standard
#: deviation of the logarithm (estimate: they lie within a factor of two).
APART = 0.35
#: A kind is told apart where its own factor is known so well [standard deviation of the
#: logarithm]; 15 % is two of them (estimate).
KNOWN = 0.085
#: The scatter of one run that is taken for granted, and for how many runs that belief counts (estimate): few
#: runs that happen to agree do not say that all will.
USUAL_NOISE, BELIEVED = 0.15, 6
#: A run that is off by more than so many times the scatter counts less: somebody was called away (from memory
#: of Huber, Robust estimation of a location parameter, 1964: k = 1.345).
OFF = 1.345
#: Under this no two runs are alike, however few there are (estimate: minutes are
#: read off a clock on the wall).
LEAST_NOISE = 0.05


class Timed(Struct, frozen=True, kw_only=True):
    """One set-up on one day [s]: what was planned for setting up and by kind of work, and what
    the clock said; None was not said.
    """

    date: str
    set_up: float
    milling: float
    holes: float
    hand: float
    setting_up: float | None = None
    cutting: float | None = None
    id: str = ""

    @property
    def work(self) -> tuple[float, float, float]:
        """Planned, in the order of `WORK`."""
        return self.milling, self.holes, self.hand


class Pace(Struct, frozen=True, kw_only=True):
    """By what real times are longer than planned ones: of ten runs eight lie between `low` and `high`."""

    kind: str
    factor: float
    low: float
    high: float
    runs: int

    def words(self) -> str:
        """`set-up × 1.3 (1.1 to 1.5 in eight of ten, 8 runs)`."""
        return f"{self.kind} × {self.factor:.2g} ({self.low:.2g} to {self.high:.2g} in eight of ten, {self.runs} runs)"


def timed(runs: Runs) -> tuple[Timed, ...]:
    """What a record says of minutes, where it holds what was planned then."""
    return tuple(one for entry in runs.standing if (one := timed_of(entry)) is not None)


def timed_of(entry: Entry) -> Timed | None:
    """One entry; None where it is about something else, or is from before
    what was planned was written down.
    """
    if entry.about != "minutes" or entry.planned_set_up is None:
        return None
    return Timed(
        date=entry.date, set_up=entry.planned_set_up, milling=entry.planned_milling or 0.0, holes=entry.planned_holes or 0.0,
        hand=entry.planned_by_hand or 0.0, setting_up=entry.setting_up, cutting=entry.cutting, id=entry.id,
    )  # fmt: skip


def paces(known: Iterable[Timed]) -> tuple[Pace, ...]:
    """The factors that can be said: setting up, the work together, and each kind of it that is told apart."""
    runs = tuple(known)
    found = []
    sets = [log(timed.setting_up / timed.set_up) for timed in runs if timed.setting_up and timed.set_up > 0]
    if len(sets) >= LEAST:
        found.append(_pace(SET_UP, sets))
    cuts = [timed for timed in runs if timed.cutting and sum(timed.work) > 0]
    if len(cuts) >= LEAST:
        found.append(_pace(TOGETHER, [log((timed.cutting or 0.0) / sum(timed.work)) for timed in cuts]))
        found += _apart(cuts, log(found[-1].factor))
    return tuple(found)


def _pace(kind: str, logs: Sequence[float]) -> Pace:
    """From ratios alone."""
    middle = sum(logs) / len(logs)
    spread = sqrt(sum((log - middle) ** 2 for log in logs) / (len(logs) - 1) + LEAST_NOISE**2)
    return _between(kind, middle, spread, len(logs))


def _between(kind: str, middle: float, spread: float, runs: int) -> Pace:
    low, high = exp(middle - EIGHT_OF_TEN * spread), exp(middle + EIGHT_OF_TEN * spread)
    return Pace(kind=kind, factor=exp(middle), low=low, high=high, runs=runs)


def _apart(runs: Sequence[Timed], together: float) -> list[Pace]:
    """A factor for each kind of work: those that make the sums of all runs
    likeliest, held near the common one.

    ln(real) = ln(sum of factor x planned) + noise; the logarithms of the factors are normal about the common
    one (`APART`). Solved by Newton's method on the linearised sum; the noise is that of the runs themselves.
    """
    at = [together] * len(WORK)
    noise = USUAL_NOISE
    inverse: list[list[float]] = []
    for _ in range(20):
        matrix = [[float(row == column) / APART**2 for column in range(3)] for row in range(3)]
        right = [(together - value) / APART**2 for value in at]
        off = 0.0
        for run in runs:
            parts = [exp(value) * planned for value, planned in zip(at, run.work, strict=True)]
            whole = sum(parts)
            slope = [part / whole for part in parts]
            miss = log((run.cutting or 0.0) / whole)
            weight = min(1.0, OFF * noise / abs(miss)) if miss else 1.0
            off += weight * miss**2
            for row in range(3):
                right[row] += weight * slope[row] * miss / noise**2
                for column in range(3):
                    matrix[row][column] += weight * slope[row] * slope[column] / noise**2
        inverse = _inverse(matrix)
        step = [sum(inverse[row][column] * right[column] for column in range(3)) for row in range(3)]
        at = [value + max(-0.5, min(0.5, by)) for value, by in zip(at, step, strict=True)]
        noise = sqrt((off + BELIEVED * USUAL_NOISE**2) / (len(runs) - 2 + BELIEVED))
        if max(abs(by) for by in step) < 1e-6:
            break
    found = []
    for place, kind in enumerate(WORK):
        count = sum(timed.work[place] >= 0.1 * sum(timed.work) for timed in runs)
        if count >= LEAST and sqrt(inverse[place][place]) <= KNOWN:
            found.append(_between(kind, at[place], sqrt(inverse[place][place] + noise**2), count))
    return found


def _inverse(matrix: list[list[float]]) -> list[list[float]]:
    """Of three by three, by cofactors; it is positive definite, for the prior alone is."""
    (a, b, c), (d, e, f), (g, h, i) = matrix
    cofactors = [
        [e * i - f * h, c * h - b * i, b * f - c * e],
        [f * g - d * i, a * i - c * g, c * d - a * f],
        [d * h - e * g, b * g - a * h, a * e - b * d],
    ]
    whole = a * cofactors[0][0] + b * cofactors[1][0] + c * cofactors[2][0]
    return [[value / whole for value in row] for row in cofactors]
