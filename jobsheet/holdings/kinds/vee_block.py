"""Vee blocks on the table, the round work strapped into them."""

from __future__ import annotations

import math
from typing import ClassVar

from msgspec.structs import replace

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import Quantity, Thread
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group

USUAL_ANGLE = math.radians(90)


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "vee block"

    angle: Quantity | None = None
    vee_above_table: Quantity | None = None
    blocks: int | None = None
    diameter: Quantity | None = None
    clamps: int | None = None
    bolt: Thread | None = None
    tighten: Quantity | None = None
    over_left: Quantity | None = None
    over_right: Quantity | None = None
    stop: str | None = None


FORM = (
    Group(
        "Vee blocks",
        (
            Entry(name="angle", title="Angle of the vee", asks="angle", optional=True, hint="empty: 90°"),
            common.length("vee_above_table", "Point of the vee above the table", "500 mm"),
            common.count("blocks", "Blocks", 1, 4),
            common.length("diameter", "Diameter of the work"),
            common.count("clamps", "Straps over it"),
            common.BOLT,
            common.TIGHTEN,
            common.OVER_LEFT,
            common.OVER_RIGHT,
            common.choice("stop", "Stop at its", "left", "right"),
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def words(fields: Fields) -> str:
    """How many blocks."""
    return "two vee blocks" if fields.blocks == 2 else "vee block"


def centre_height(radius: float, angle: float = USUAL_ANGLE) -> float:
    """How high the centre of round work lies over the point of its vee [m]: R / sin(α / 2) (holding-and-more-kinds A1)."""
    return radius / math.sin(angle / 2)


def twisting_grip(force: float, radius: float, friction: float, angle: float = USUAL_ANGLE) -> float:
    """What keeps round work from turning in its vee [N m]: µ F R (1 + 1 / sin(α / 2)), a strap on top and two flanks (A1)."""
    return friction * force * radius * (1 + 1 / math.sin(angle / 2))


def grip(fields: Fields, _machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """What its straps press it into the vee with, and what keeps it from turning there."""
    found = common.bolted(fields.clamps, fields.bolt, fields.tighten, material, shop)
    if found is None or fields.diameter is None:
        return found
    radius, angle = fields.diameter.value / 2, _angle(fields)
    turning = twisting_grip(found.force, radius, found.friction, angle)
    return replace(found, turning=turning, radius=radius)


def _angle(fields: Fields) -> float:
    return fields.angle.value if fields.angle is not None else USUAL_ANGLE


def top(fields: Fields, _machine: Machine, _high: float) -> float | None:
    """The point of the vee, the centre over it, and half the work."""
    if fields.vee_above_table is None or fields.diameter is None:
        return None
    radius = fields.diameter.value / 2
    return fields.vee_above_table.value + centre_height(radius, _angle(fields)) + radius


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """The blocks under the work."""
    long, wide, high = around.size
    many = fields.blocks or 1
    left = fields.over_left.value if fields.over_left else 0.0
    right = fields.over_right.value if fields.over_right else 0.0
    run = max(long - left - right, 0.02)
    thick = min(0.03, run / many)
    radius, half = (fields.diameter.value if fields.diameter else wide) / 2, _angle(fields) / 2
    # The flanks rise a little over where they touch the work, and the point of the vee lies under its centre.
    touches = radius - radius * math.sin(half)
    point = radius - centre_height(radius, 2 * half)
    broad = (touches + 0.15 * radius - point) * math.tan(half)
    found = []
    for one in range(many):
        begin = left if many == 1 else left + one * (run - thick) / (many - 1)
        end = left + run if many == 1 else begin + thick
        found.append(
            Body(
                part="vee",
                low=(begin, wide / 2 - broad - 0.15 * wide, point - 0.2 * wide),
                high=(end, wide / 2 + broad + 0.15 * wide, touches + 0.15 * radius),
                sure=False,
            )
        )
    if fields.stop:
        at = (-0.008, 0.0) if fields.stop == "left" else (long, long + 0.008)
        found.append(
            Body(
                part="stop", low=(at[0], wide * 0.35, 0.0), high=(at[1], wide * 0.65, high * 0.8), sure=False
            )
        )
    return tuple(found)


KIND = HoldingKind(
    name="vee block", title="Vee blocks", reckons=("angle", "vee_above_table", "diameter", "clamps", "bolt", "tighten"),
    needs=("diameter", "clamps", "bolt", "tighten"), fields=Fields, form=FORM, words=words, bodies=bodies, grip=grip, top=top,
    roles=HoldingRoles(on_top=True, round=True, clamped=True), example={"angle": "90°"},
)  # fmt: skip
