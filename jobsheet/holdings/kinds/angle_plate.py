"""An angle plate: the work clamped to its upright face."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import Quantity, Thread
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.kind import Group

#: How thick its face and its foot are drawn [m] (common practice, no source).
THICK = 0.015


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "angle plate"

    height: Quantity | None = None
    width: Quantity | None = None
    clamps: int | None = None
    bolt: Thread | None = None
    tighten: Quantity | None = None
    plate_bolts: int | None = None
    squared_by: str | None = None
    over_left: Quantity | None = None
    over_right: Quantity | None = None
    above_plate: Quantity | None = None
    rests_on: str | None = None
    supported_by: str | None = None


FORM = (
    Group(
        "Plate",
        (
            common.length("height", "Its face is high"),
            common.length("width", "and wide"),
            common.count("plate_bolts", "Bolts that hold it down", 0),
            common.choice("squared_by", "Squared by", "indicator", "square", "nothing"),
        ),
    ),
    Group(
        "Work on it",
        (
            common.count("clamps", "Clamps"),
            common.BOLT,
            common.TIGHTEN,
            common.choice("rests_on", "Rests on", "table", "parallels", "packing", "nothing"),
            common.length("above_plate", "Above the plate"),
            common.OVER_LEFT,
            common.OVER_RIGHT,
            common.SUPPORTED_BY,
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def words(fields: Fields) -> str:
    """The plate, and how many clamps."""
    return "angle plate" + (f", {fields.clamps} clamps" if fields.clamps else "")


def rests(fields: Fields) -> str:
    """What is under the work."""
    return {"table": "on the table", "nothing": "clear of the table"}.get(
        fields.rests_on or "", fields.rests_on or ""
    )


def grip(fields: Fields, _machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """What its clamps press the work to the face with."""
    return common.bolted(fields.clamps, fields.bolt, fields.tighten, material, shop, what="clamps")


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """The upright face behind the work, and its foot."""
    long, wide, high = around.size
    out = fields.above_plate.value if fields.above_plate else 0.0
    upper = high - out
    tall = fields.height.value if fields.height else max(upper, 0.02)
    broad = fields.width.value if fields.width else long
    left = fields.over_left.value if fields.over_left else None
    right = fields.over_right.value if fields.over_right else None
    begin = left if left is not None else long - right - broad if right is not None else (long - broad) / 2
    sure = fields.height is not None and fields.width is not None
    return (
        Body(
            part="plate",
            low=(begin, wide, upper - tall),
            high=(begin + broad, wide + THICK, upper),
            sure=sure,
        ),
        Body(
            part="plate",
            low=(begin, wide, upper - tall),
            high=(begin + broad, wide + 0.08, upper - tall + THICK),
            sure=False,
        ),
    )


KIND = HoldingKind(
    name="angle plate", title="Angle plate", reckons=("clamps", "bolt", "tighten"),
    needs=("clamps", "bolt", "tighten", "plate_bolts", "squared_by"), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies, grip=grip,
    roles=HoldingRoles(upright=True, clamped=True),
)  # fmt: skip
