"""A hand vice on a support: drilling of small holes only."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.quantity import Quantity
from jobsheet.operations.kind import Group

#: A hand gives 30 N at the end of 120 mm of handle (holding-and-more-kinds A1).
HAND, ARM = 30.0, 0.120


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "hand vice"

    arm: Quantity | None = None
    support: str | None = None
    stop: bool | None = None


FORM = (
    Group(
        "Hand vice",
        (
            common.length("arm", "Its handle is long", "600 mm"),
            common.choice("support", "Lies on", "table", "wood", "block"),
            common.flag("stop", "Against a stop"),
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def moment(fields: Fields) -> float:
    """What the hand holds against turning [N m]: 30 N at the end of its handle."""
    return HAND * (fields.arm.value if fields.arm else ARM)


def words(_fields: Fields) -> str:
    """What it is."""
    return "hand vice"


def rests(fields: Fields) -> str:
    """Support and stop."""
    return ", ".join(
        part
        for part in (
            f"on {fields.support}" if fields.support else "",
            "against a stop" if fields.stop else "",
        )
        if part
    )


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """The vice at the right, its handle, the support."""
    long, wide, high = around.size
    arm = fields.arm.value if fields.arm else ARM
    return (
        Body(part="table", low=(-0.03, -0.03, -0.02), high=(long + 0.03, wide + 0.03, 0.0), sure=False),
        Body(
            part="moving jaw",
            low=(long - 0.006, wide * 0.2, -0.0),
            high=(long + 0.03, wide * 0.8, high),
            sure=False,
        ),
        Body(
            part="bar",
            low=(long + 0.03, wide * 0.42, high * 0.3),
            high=(long + arm, wide * 0.58, high * 0.7),
            axis=0,
            sure=False,
        ),
    )


KIND = HoldingKind(
    name="hand vice", title="Hand vice, small holes only", needs=("support",), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies,
    roles=HoldingRoles(drills_only=True), example={"support": "table"},
)  # fmt: skip
