"""The torque that the spindle gives: mean torque of the cut against what it holds, and what it reaches for seconds."""

from __future__ import annotations

from typing import Any

from jobsheet.limits.verdict import BEYOND, CURVE_SPREAD, NINE_IN_TEN, chance_over, in_words, spread_of, word
from jobsheet.machine.spindle import at_speed
from jobsheet.model.figures import Figures, Limit
from jobsheet.model.setting import Setting


def limit(figures: Figures, setting: Setting, _fields: Any = None) -> Limit | None:
    """None where nothing turns under power.

    The share is of the continuous torque. Whether it stalls is asked of the peak, with the spread of
    the card's curve and of the calculation; above continuous it is at best `tight`.
    """
    torque, speed = figures.get("torque"), figures.value("spindle_speed")
    if torque is None or speed is None:
        return None
    at = at_speed(setting.machine, speed)
    if at is None:
        return None
    band = (torque.low or torque.value, torque.high or torque.value)
    spread = (CURVE_SPREAD**2 + spread_of(band) ** 2) ** 0.5
    chance = chance_over(torque.value, at.peak, spread)
    peak = figures.value("torque_peak")
    if figures.gaps and peak is not None:
        # Nothing carries the drive from tooth to tooth: the peak counts too, against what it reaches for seconds.
        chance = max(chance, chance_over(peak, at.peak, spread))
    verdict = word(chance)
    sentence = f"{in_words(chance)} stalls"
    if torque.value > at.continuous and verdict == "expected":
        verdict, sentence = "tight", "more than it holds for long: short cuts only"
    if chance > BEYOND:
        sentence = "more than the spindle gives even for seconds"
    factor = 2.718281828459045 ** (CURVE_SPREAD * NINE_IN_TEN)
    return Limit(
        name="spindle-torque", title="Spindle torque", demand=torque.value, capacity=at.continuous, unit="N*m",
        share=torque.value / at.continuous, verdict=verdict, low=at.continuous / factor, high=at.continuous * factor,
        chance=chance, shown=f"{torque.value:.2f} of {at.continuous:.3g} N·m", sentence=sentence,
    )  # fmt: skip
