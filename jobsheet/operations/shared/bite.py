"""What one turn of a hole's tool takes, and at which feed it presses how hard."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.cutting.drill_point import SPLIT_POINT, STANDARD_POINT
from jobsheet.cutting.quill import feed_from_thrust, pilot_feed_from_thrust
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.operations.shared import common


class Bite(Struct, frozen=True, kw_only=True):
    """What one turn of the tool takes: diameter, hole already there, feed per
    turn [m], cutting edges, chisel.

    `relief` is a hole smaller than the chisel edge, which takes only a part of it off.
    """

    diameter: float
    feed: float
    pilot: float | None = None
    relief: float | None = None
    edges: float = 2.0
    chisel: float = STANDARD_POINT
    cutter: Cutter | None = None


def bite_of(cutter: Cutter, diameter: float, feed: float, hole: float | None) -> Bite:
    """The bite of a drill in what is there: a hole smaller than the chisel edge relieves a part of it."""
    chisel = SPLIT_POINT if cutter.split_point else STANDARD_POINT
    pilot = hole if hole is not None and chisel * diameter <= hole < diameter * (1 - 1e-9) else None
    return Bite(
        diameter=diameter,
        feed=feed,
        pilot=pilot,
        relief=hole if hole is not None and 0 < hole < chisel * diameter else None,
        edges=float(cutter.teeth or 2),
        chisel=chisel,
        cutter=cutter,
    )


def wear_of(setting: Setting, bite: Bite) -> float:
    """The factor for the state of the edges."""
    return (
        common.wear(setting, bite.cutter, "drill") if bite.cutter is not None else setting.shop.wear_drilling
    )


def feed_at_thrust(setting: Setting, bite: Bite, thrust: float) -> float:
    """The feed per turn at which a bite presses with this thrust [N]; over a hole smaller than
    the chisel edge between its ends [m].
    """
    chisel = bite.chisel * bite.diameter
    asked = {
        "thrust": thrust,
        "kd": setting.material.kd_thrust.value,
        "diameter": bite.diameter,
        "wear": wear_of(setting, bite),
    }
    if bite.pilot is not None:
        return pilot_feed_from_thrust(**asked, pilot=bite.pilot, edges=bite.edges)
    solid = feed_from_thrust(**asked, chisel_ratio=bite.chisel)
    if bite.relief is None:
        return solid
    opened = pilot_feed_from_thrust(**asked, pilot=chisel, edges=bite.edges)
    return solid + (opened - solid) * bite.relief / chisel
