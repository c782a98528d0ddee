"""What the curve of a spindle gives against a cut, for torque and power alike: for long, and for seconds."""

from __future__ import annotations

import math

from jobsheet.limits import evidence
from jobsheet.limits.verdict import CURVE_SPREAD, NINE_IN_TEN, chance_over, odds, spread_of, word
from jobsheet.machine.spindle import Speed, at_speed
from jobsheet.model.capacity import Capacity
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What makes it lighter, and what is near to giving out.
LESS = "less width, depth or feed, or a lower speed step"
LONG = "more than it holds for long"
NEAR = f"near what stalls it: {LESS}"


def torque_limit(
    figures: Figures, setting: Setting, fields: object = None, process: str = ""
) -> Limit | None:
    """None where nothing turns under power.

    The share is of the continuous torque, which is the card's also where trials moved the peak: a cut of
    seconds says nothing of what gets hot in an hour. Whether it stalls is asked of the peak, with the spread
    of the card's curve and of the calculation; above continuous it is at best `tight`. Once something was
    tried it is whether it slows, by what was learned: the error of the calculation is in that factor already.
    """
    torque, speed = figures.get("torque"), figures.value("spindle_speed")
    if torque is None or speed is None:
        return None
    at = at_speed(setting.machine, speed)
    if at is None:
        return None
    peak = figures.value("torque_peak")
    # Where nothing carries the drive from tooth to tooth the peak counts too,
    # against what it reaches for seconds.
    most = max(torque.value, peak) if figures.gaps and peak is not None else torque.value
    known = evidence.learned(setting, "spindle-torque", process, fields)
    if known is not None:
        return _learned(known, torque.value, most, at, fields)
    band = (torque.low or torque.value, torque.high or torque.value)
    spread = (CURVE_SPREAD**2 + spread_of(band) ** 2) ** 0.5
    chance = chance_over(most, at.peak, spread)
    verdict = word(chance, most / at.peak)
    sentence = {
        "expected": "",
        "tight": NEAR,
        "beyond": f"more than the spindle gives even for seconds: {LESS}",
    }[verdict]
    if torque.value > at.continuous and verdict != "beyond":
        verdict, sentence = "tight", f"{LONG}: short cuts only"
    factor = math.exp(CURVE_SPREAD * NINE_IN_TEN)
    return Limit(
        name="spindle-torque", title="Spindle torque", demand=torque.value, capacity=at.continuous, unit="N*m",
        share=torque.value / at.continuous, verdict=verdict, low=at.continuous / factor, high=at.continuous * factor,
        chance=chance, odds=odds(chance, "stalls", "stall"), shown=f"{torque.value:.2f} of {at.continuous:.3g} N·m", sentence=sentence,
    )  # fmt: skip


def _learned(known: Capacity, torque: float, most: float, at: Speed, fields: object) -> Limit:
    """The same with what trials taught of the peak."""
    share = most / at.peak
    chance = evidence.chance_over(known, share)
    verdict = word(chance, share / known.median)
    sentence = NEAR if verdict == "tight" else ""
    before = evidence.cut_before(known, share, fields)
    end = evidence.first_end(known, ("slowed", "stalled"))
    if verdict == "beyond":
        sentence = f"more than this spindle has carried without slowing: {LESS}"
        if end is not None:
            sentence = f"this spindle {end.outcome} at {end.demand:.2f} N·m ({evidence.told(end)}): {LESS}"
    elif torque > at.continuous:
        verdict, sentence = "tight", f"{LONG}: short cuts only"
    elif before is not None:
        verdict, sentence = "cut before", f"cut before: {evidence.told(before)}"
    return Limit(
        name="spindle-torque", title="Spindle torque", demand=torque, capacity=at.continuous, unit="N*m",
        share=torque / at.continuous, verdict=verdict, low=at.continuous * known.low, high=at.continuous * known.high,
        chance=chance, odds=odds(chance, "slows", "slow"), shown=f"{torque:.2f} of {at.continuous:.3g} N·m", sentence=sentence, learned=True,
        evidence=evidence.dots(known, at.peak / at.continuous),
        working=f"{known.spoke} trials say the peak is {known.low:.2f} to {known.high:.2f} times the card's, newest {known.newest}",
    )  # fmt: skip
