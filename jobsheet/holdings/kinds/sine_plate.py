"""A sine bar, sine plate or angle plate that is set to an angle by a stack under one roll."""

from __future__ import annotations

import math
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
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "sine plate"

    rolls: Quantity | None = None
    stack: Quantity | None = None
    angle: Quantity | None = None
    stop: str | None = None
    clamps: int | None = None
    bolt: Thread | None = None
    tighten: Quantity | None = None


FORM = (
    Group(
        "Angle",
        (
            Entry(name="angle", title="Angle", asks="angle", optional=True),
            common.length("rolls", "Between the rolls"),
            common.length("stack", "Stack under one roll", hint="L × sine of the angle"),
            common.choice("stop", "Stop at the", "low end", "none"),
        ),
    ),
    Group("Clamps", (common.count("clamps", "Clamps"), common.BOLT, common.TIGHTEN)),
    Group("Words", (common.NOTE,)),
)


def stack_for(rolls: float, angle: float) -> float:
    """The stack that sets an angle [m]: H = L sin θ (holding-and-more-kinds A1)."""
    return rolls * math.sin(angle)


def words(fields: Fields) -> str:
    """The plate and its angle."""
    return "sine plate" + (f" at {fields.angle.text}" if fields.angle else "")


def rests(fields: Fields) -> str:
    """The stack."""
    return f"stack {fields.stack.text} under one roll" if fields.stack else ""


def grip(fields: Fields, _machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """What its clamps press with."""
    return common.bolted(fields.clamps, fields.bolt, fields.tighten, material, shop, what="clamps")


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """The plate under the work, in the frame of the work."""
    long, wide, high = around.size
    found = [Body(part="plate", low=(-0.01, -0.01, -0.02), high=(long + 0.01, wide + 0.01, 0.0), sure=False)]
    if fields.stop == "low end":
        found.append(
            Body(
                part="stop",
                low=(-0.008, wide * 0.3, 0.0),
                high=(0.0, wide * 0.7, min(high, 0.015)),
                sure=False,
            )
        )
    return tuple(found)


KIND = HoldingKind(
    name="sine plate", title="Sine plate, set to an angle", reckons=("clamps", "bolt", "tighten"),
    needs=("angle", "rolls", "stack", "stop", "clamps"), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies,
    grip=grip, roles=HoldingRoles(leans=True, tilted=True, on_top=True, clamped=True),
)  # fmt: skip
