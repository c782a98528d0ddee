"""From demand and capacity to a share and a word.

Chance that the demand exceeds the capacity, their bands taken together (both lognormal): under 10 %
`expected`, 10-50 % `tight`, over 50 % `beyond`. What goes by a factor instead (holding, cutter strength,
marked speed) is judged by its share alone: to 0.6 `expected`, to 1 `tight`, over it `beyond`; no chance is
printed of it, for nobody has a band. What only has to fit is `expected` up to its whole.
"""

from __future__ import annotations

import math

from jobsheet.model.figure import Limit

#: Chance that makes a limit `tight`, and `beyond`.
TIGHT, BEYOND = 0.10, 0.50
#: From this share on a factor no longer covers what is not known (cutting-data sections 1.6, 1.7, 1.14).
DOUBTFUL = 0.6
#: How far a card's torque curve is trusted: standard deviation of its logarithm (demo scenario section 3a).
CURVE_SPREAD = 0.35
#: 90 % of a normal distribution lies within so many standard deviations.
NINE_IN_TEN = 1.6448536269514722
#: The chance of one in ten lies so many standard deviations under the middle.
ONE_IN_TEN = 1.2815515655446004
#: What is over by no more than this share of the whole is over by a rounding of units.
ROUNDING = 1e-9
#: By which verdict a limit comes first: what was not tried before all that is expected.
_RANK = {"cut before": 0, "expected": 0, "not tried": 1, "tight": 2, "beyond": 3}


def spread_of(band: tuple[float, float]) -> float:
    """Standard deviation of the logarithm from the ends of a nine-in-ten band, given as factors or values."""
    low, high = band
    return math.log(max(high / low, 1.0)) / (2 * NINE_IN_TEN) if low > 0 else 0.0


def chance_over(demand: float, capacity: float, spread: float) -> float:
    """The chance that the demand is more than the capacity, both medians, with one spread for both."""
    if demand <= 0:
        return 0.0
    if capacity <= 0:
        return 1.0
    if spread <= 0:
        return 1.0 if demand > capacity else 0.0
    return 0.5 * math.erfc(math.log(capacity / demand) / (spread * math.sqrt(2)))


def word(chance: float, share: float = 0.0) -> str:
    """The verdict for a chance; the thresholds themselves belong to the worse word.

    `share` is that of the middle of the capacity: what asks more than the middle is never `tight`, however
    crooked the distribution about it is.
    """
    if chance > BEYOND or share > 1 + ROUNDING:
        return "beyond"
    return "expected" if chance < TIGHT else "tight"


def spread_between(tenth: float, middle: float) -> float:
    """Standard deviation of the logarithm where one in ten gives out at
    `tenth`, and every other at `middle`.
    """
    return math.log(max(middle / tenth, 1.0)) / ONE_IN_TEN if tenth > 0 else 0.0


def by_chance(
    name: str,
    title: str,
    *,
    demand: float,
    capacity: float,
    unit: str,
    spread: float,
    happens: tuple[str, str],
    shown: str,
    demand_spread: float = 0.0,
    when_tight: str = "",
    when_beyond: str = "",
    working: str = "",
) -> Limit:
    """A limit whose capacity is a band: its middle, the spread of its logarithm,
    and what happens (`stalls`, `stall`).
    """
    share = demand / capacity if capacity > 0 else float("inf")
    chance = chance_over(demand, capacity, math.hypot(spread, demand_spread))
    verdict = word(chance, share)
    factor = math.exp(spread * NINE_IN_TEN)
    return Limit(
        name=name, title=title, demand=demand, capacity=capacity, unit=unit, share=share, verdict=verdict,
        low=capacity / factor, high=capacity * factor, chance=chance, odds=odds(chance, *happens), shown=shown,
        sentence={"tight": when_tight, "beyond": when_beyond}.get(verdict, ""), working=working,
    )  # fmt: skip


def by_factor(
    name: str,
    title: str,
    *,
    demand: float,
    capacity: float,
    unit: str,
    shown: str,
    tight: float = 1.0,
    when_tight: str = "",
    when_beyond: str = "",
    working: str = "",
    band: tuple[float, float] | None = None,
) -> Limit:
    """A limit that goes by its share alone: above `tight` of the capacity it is
    tight, above the capacity beyond.

    Without `tight` it only has to fit.
    """
    share = demand / capacity if capacity > 0 else float("inf")
    verdict, sentence = "expected", ""
    if share > 1 + ROUNDING:
        verdict, sentence = "beyond", when_beyond
    elif share > tight + ROUNDING:
        verdict, sentence = "tight", when_tight
    low, high = band or (capacity * tight, capacity)
    return Limit(
        name=name, title=title, demand=demand, capacity=capacity, unit=unit, share=share, verdict=verdict, low=low,
        high=high, shown=shown, sentence=sentence, working=working,
    )  # fmt: skip


def nearness(limit: Limit) -> tuple[int, float]:
    """By which limits are sorted: the nearest to giving out first."""
    return (-_RANK[limit.verdict], -round(limit.share, 6))


def is_tight(limit: Limit) -> bool:
    """Whether it is tight or was not tried, or only a recorded good cut keeps it from being
    so: a lucky cut is not planned with.
    """
    lucky = limit.verdict == "cut before" and limit.chance is not None and limit.chance >= TIGHT
    return limit.verdict in ("tight", "not tried") or lucky


def odds(chance: float, one: str, many: str) -> str:
    """A chance with what happens: `1 in 12 stalls`, `7 in 10 stall`; one that is
    next to nothing is only a number.
    """
    if chance < 0.01:
        return "under 1 in 100"
    if chance <= BEYOND:
        return f"{in_words(chance)} {one}"
    return f"{'nearly all' if chance >= 0.95 else f'{round(chance * 10)} in 10'} {many}"


def in_words(chance: float) -> str:
    """A chance as people say it: `1 in 7`."""
    if chance < 0.01:
        return "less than 1 in 100"
    if chance > 0.5:
        return "more likely than not"
    return f"1 in {round(1 / chance)}"
