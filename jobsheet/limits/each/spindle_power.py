"""The power at the spindle: the same curve as its torque, read the other way; one evidence moves both."""

from __future__ import annotations

from jobsheet.limits.spindle_curve import LESS, LONG, torque_limit
from jobsheet.machine.spindle import at_speed
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.setting import Setting

#: What of its setting it reads.
READS = frozenset({"machine", "proof"})
#: Where it stands among limits of one share.
ORDER = 40
#: Trials teach it: it is told which process is cut.
LEARNS = True


#: Its own reason and remedy: the same drive, asked in a minute; a lower speed step would not help.
WATTS = "take less metal in a minute, by depth, width or feed"
HOT = "more than the motor stands for long"


def limit(figures: Figures, setting: Setting, fields: object = None, process: str = "") -> Limit | None:
    """None where nothing turns under power. Its verdict is that of the torque: one cut, one drive."""
    power, speed = figures.value("power"), figures.value("spindle_speed")
    torque = torque_limit(figures, setting, fields, process)
    if power is None or speed is None or torque is None:
        return None
    at = at_speed(setting.machine, speed)
    assert at is not None
    scale = at.power / torque.capacity
    sentence = torque.sentence.replace(LESS, WATTS).replace(LONG, HOT)
    return Limit(
        name="spindle-power", title="Spindle power", demand=power, capacity=at.power, unit="W",
        share=power / at.power, verdict=torque.verdict, low=torque.low * scale, high=torque.high * scale,
        chance=torque.chance, shown=f"{power:.0f} of {at.power:.0f} W", odds=torque.odds, sentence=sentence,
        learned=torque.learned, evidence=torque.evidence, working=torque.working,
    )  # fmt: skip
