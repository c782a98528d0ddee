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
    """How high the centre of round work lies over the point of its vee [m]: R /
    sin(α / 2) (holding-and-more-kinds A1).
    """
    return radius / math.sin(angle / 2)


def twisting_grip(force: float, radius: float, friction: float, angle: float = USUAL_ANGLE) -> float:
    """What keeps round work from turning in its vee [N m]: µ F R (1 + 1 / sin(α / 2)),
    a strap on top and two flanks (A1).
    """
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
    """The blocks under the work, along it."""
    bar = around.bar if around.bar is not None and around.bar.along < 2 else None
    run = bar.along if bar is not None else 0
    long, wide, high = around.size[run], around.size[1 - run], around.size[2]
    middle, centre = wide / 2, None
    radius = (fields.diameter.value if fields.diameter else wide) / 2
    if bar is not None:
        radius, middle, centre = bar.radius, bar.middle[1 - run], bar.middle[2]
    half = _angle(fields) / 2
    # The flanks rise a little over where they touch the work, and the point of the vee lies under its centre.
    centre = centre if centre is not None else radius
    touches = centre - radius * math.sin(half)
    point = centre - centre_height(radius, 2 * half)
    level = touches + 0.15 * radius
    broad = (level - point) * math.tan(half) + 0.3 * radius
    parts = [
        _along(
            run,
            Body(
                part="vee",
                low=(begin, middle - broad, point - 0.4 * radius),
                high=(end, middle + broad, level),
                sure=False,
                vee=(middle, point, half),
            ),
        )
        for begin, end in _blocks(fields, long)
    ]
    if fields.stop:
        at = (-0.008, 0.0) if fields.stop == "left" else (long, long + 0.008)
        stop = Body(
            part="stop", low=(at[0], wide * 0.35, 0.0), high=(at[1], wide * 0.65, high * 0.8), sure=False
        )
        parts.append(_along(run, stop))
    return tuple(parts)


def _blocks(fields: Fields, long: float) -> list[tuple[float, float]]:
    """From where to where along the work each block goes [m]."""
    many = fields.blocks or 1
    left = fields.over_left.value if fields.over_left else 0.0
    right = fields.over_right.value if fields.over_right else 0.0
    run = max(long - left - right, 0.02)
    if many == 1:
        return [(left, left + run)]
    thick = min(0.03, run / many)
    begins = [left + one * (run - thick) / (many - 1) for one in range(many)]
    return [(begin, begin + thick) for begin in begins]


def _along(run: int, body: Body) -> Body:
    """A part said along x, turned to where the work lies along."""
    if run == 0:
        return body
    (x0, y0, z0), (x1, y1, z1) = body.low, body.high
    return replace(body, low=(y0, x0, z0), high=(y1, x1, z1))


KIND = HoldingKind(
    name="vee block", title="Vee blocks", reckons=("angle", "vee_above_table", "diameter", "clamps", "bolt", "tighten"),
    needs=("diameter", "clamps", "bolt", "tighten"), fields=Fields, form=FORM, words=words, bodies=bodies, grip=grip, top=top,
    roles=HoldingRoles(on_top=True, round=True, clamped=True), example={"angle": "90°"},
)  # fmt: skip
