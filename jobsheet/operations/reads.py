"""What a kind reads of its setting, by name: only that is shown to it, so that a change
of anything else costs it nothing.
"""

from __future__ import annotations

from typing import Any

from jobsheet.model.machine import Machine, Marked, Spindle
from jobsheet.model.material import Material, Sourced
from jobsheet.model.setting import Setting

#: A kind that does not say what it reads is shown everything, and is reckoned anew whatever changes.
EVERYTHING = frozenset(
    {
        "machine", "material", "shop", "units", "fluid", "extent.x", "extent.y", "extent.z", "pilot", "thickness", "grip",
        "top", "load", "proof", "wound", "skin", "profile",
    }
)  # fmt: skip
#: What every cut under power reads: the card, the metal and its fluid, the workshop's own numbers.
CUT = frozenset({"machine", "material", "shop", "units", "fluid"})
#: What only the dials are read by: a step behind one that goes deeper keeps its figures and its limits.
TO_READ = frozenset({"wound"})
#: What a milling cut reads: its depth dial counts on from where the same cutter was touched.
MILL = CUT | TO_READ
#: The lengths of the work as they lie on the table, and its profile where it is no box.
FLAT = frozenset({"extent.x", "extent.y", "profile"})

_NOTHING = Sourced(0.0, "", "")
#: Stand where a kind reads no card or no metal: every formula refuses their noughts.
_NO_MACHINE = Machine(
    name="", title="", kind="", card_date="", invented=True, column="", handles=(), lever=None, quill=False,
    spindle=Spindle(drive="", change="", power=Marked(0.0, ""), short_peak=0.0, ranges=(), reverses=False, slips=False),
)  # fmt: skip
_NO_MATERIAL = Material(
    name="", title="", group="", family="", kc11=_NOTHING, mc=_NOTHING, kd_torque=_NOTHING, kd_thrust=_NOTHING
)
_LENGTHS = ("extent.x", "extent.y", "extent.z")


def depth_through(fields: Any) -> frozenset[str]:
    """The height of the work, for a depth that may be typed as *through*."""
    return frozenset({"thickness"}) if fields.depth.value is None else frozenset()


def hole_there(fields: Any) -> frozenset[str]:
    """The hole that stands at its places, where none is typed."""
    return frozenset({"pilot"}) if fields.hole is None else frozenset()


def in_a_hole(fields: object) -> frozenset[str]:
    """A cut in a hole that stands there, or is typed, down to a depth that may be through."""
    return CUT | hole_there(fields) | depth_through(fields)


def narrowed(setting: Setting, reads: frozenset[str]) -> Setting:
    """A setting that holds only this; the rest is nought, nothing, or as where nobody says."""
    held: dict[str, Any] = {"machine": _NO_MACHINE, "material": _NO_MATERIAL}
    for name in reads:
        if not name.startswith("extent."):
            held[name] = getattr(setting, name)
    extent = tuple(
        length if name in reads else 0.0 for name, length in zip(_LENGTHS, setting.extent, strict=True)
    )
    return Setting(**held, extent=extent)  # type: ignore[arg-type]
