"""What a cut asks of the limits that are learned, as a share of what card or
class give there before any trial.
"""

from __future__ import annotations

from jobsheet.limits.each.chatter import class_capacity
from jobsheet.machine.spindle import at_speed
from jobsheet.model.figure import Figures
from jobsheet.model.setting import Setting
from jobsheet.model.trials import Asked


def asked_of(figures: Figures, setting: Setting, speed: float | None = None) -> tuple[Asked, ...]:
    """Torque over the card's peak at this speed, cutting stiffness over the class value with this cutter.

    Parameters
    ----------
    speed : float, optional
        As the tachometer shows it [rev/s]; without it the figures' own
    """
    found = []
    torque, marked = figures.value("torque"), figures.value("spindle_speed")
    at = at_speed(setting.machine, speed) if speed is not None else None
    if at is None and marked is not None:  # a belt step under load turns slower than any that is marked
        at = at_speed(setting.machine, marked)
    if torque is not None and at is not None:
        found.append(Asked("spindle-torque", torque, torque / at.peak))
    demand, capacity = figures.value("cutting_stiffness"), class_capacity(figures, setting.machine)
    if demand is not None and capacity is not None:
        found.append(Asked("chatter", demand, demand / capacity))
    return tuple(found)
