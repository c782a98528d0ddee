"""Why no ladder is made: metals, cutters, machines and holdings that are never proved, each with its reason."""

from __future__ import annotations

import re

from jobsheet.limits.each.chatter import CLASSES
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.reckoning.what_if import Tried

#: Dangers of a metal in which no test cuts are made (safety note `no-proving-on-these`).
_NEVER = {
    "magnesium": "magnesium: its chips burn",
    "titanium": "titanium: its chips burn",
    "beryllium": "beryllium copper: its dust makes ill",
    "unknown": "a metal that nobody knows",
}
_BY_NAME = re.compile(r"(?P<beryllium>beryllium|becu|cu-?be|c17[0-9]{3})|(?P<magnesium>magnesium|az[369]1)|"
                      r"(?P<titanium>titanium|ti-?6al)|(?P<unknown>^\s*(unknown|scrap)\b)", re.IGNORECASE)  # fmt: skip


def by_name(material: str) -> str:
    """The reason where the name alone says it, also of a metal that the catalogue has not."""
    match = _BY_NAME.search(material)
    return _metal(match.lastgroup) if match and match.lastgroup else ""


def _metal(hazard: str) -> str:
    return f"No test cuts in {_NEVER[hazard]}."


def by_material(material: Material) -> str:
    """The reason where the metal is one of those that are never proved."""
    return next((_metal(hazard) for hazard in _NEVER if hazard in material.hazards), by_name(material.title))


def by_machine(machine: Machine, process: str) -> str:
    """The reason where the machine cannot do it, or too little is known of it."""
    if process == "tap" and not machine.spindle.reverses:
        return (
            "This machine does not reverse: taps are turned by hand, there is nothing to prove under power."
        )
    if process in ("face", "side", "slot") and machine.stiffness_class not in CLASSES:
        known = " or ".join(CLASSES)
        return f"The card does not say which stiffness class the machine is of: write {known} there first."
    return ""


def by_cutter(cutter: Cutter) -> str:
    """The reason where a cutter with inserts has no highest speed written: it cannot be kept below it."""
    inserts = cutter.kind in ("face mill", "fly cutter") and cutter.material == "carbide"
    if (
        inserts or cutter.kind in ("fly cutter", "boring head", "slitting saw")
    ) and cutter.marked_speed is None:
        return (
            f"The highest speed marked on the {cutter.kind} is not written: read it off the cutter and add it, "
            "such as marked 12000 rpm."
        )
    return ""


def by_holding(setting: Setting) -> str:
    """The reason where nobody knows what holds the work."""
    if setting.grip is None:
        return (
            "What holds the work is not known: name a vice of the card, with its screw and usual torque. "
            "Holding is never learned by slipping."
        )
    return ""


def by_limits(tried: Tried) -> str:
    """Why this cut is not made: it cannot be reckoned, or a limit that is not learned gives out. Empty where it can."""
    if tried.figures is None:
        return tried.problem
    stopped = tried.stopped_by
    if stopped is None or stopped.name == "chatter":
        return ""
    words = stopped.sentence or stopped.shown
    if stopped.name == "holding":
        words = f"{words}; better holding first, it is never learned by slipping".lstrip("; ")
    return f"{stopped.title}: {words}."
