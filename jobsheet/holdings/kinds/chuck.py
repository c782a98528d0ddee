"""A chuck on a dividing head or a rotary table."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group

#: What a hand on the key gives scatters by so much either way (common practice, no source).
BAND = (0.7, 1.3)


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "chuck"

    on: str | None = None
    jaws: int | None = None
    lies: str | None = None
    diameter: Quantity | None = None
    grip_length: Quantity | None = None
    out: Quantity | None = None
    jaw_force: Quantity | None = None
    tailstock: bool | None = None
    locked: bool | None = None


FORM = (
    Group(
        "Chuck",
        (
            common.choice("on", "On a", "dividing head", "rotary table"),
            common.count("jaws", "Jaws", 2, 6),
            common.choice("lies", "The work", "along", "upright"),
            common.length("diameter", "Diameter of the work"),
            common.length("grip_length", "Gripped over"),
            common.length("out", "Stands out by"),
            Entry(
                name="jaw_force",
                title="All its jaws press with",
                asks="force",
                low="0 N",
                high="500 kN",
                optional=True,
                hint="by the paper of the chuck, such as 12 kN",
            ),
            common.flag("tailstock", "Tailstock at its end"),
            common.flag("locked", "Locked before a straight cut"),
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def words(fields: Fields) -> str:
    """Chuck and what it is on."""
    jaws = f"{fields.jaws}-jaw " if fields.jaws else ""
    return f"{jaws}chuck" + (f" on {'the ' if fields.on else ''}{fields.on}" if fields.on else "")


def rests(fields: Fields) -> str:
    """Tailstock or not."""
    return "tailstock at its end" if fields.tailstock else ""


def stands(fields: Fields) -> bool:
    """Whether the work stands up in it: as it does on a rotary table where nobody says."""
    return fields.lies == "upright" or (fields.lies is None and fields.on == "rotary table")


def grip(fields: Fields, _machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """All its jaws together by friction: along the work µ F, about its axis µ F r (A1; plain statics)."""
    if fields.jaw_force is None or fields.diameter is None:
        return None
    force, slip, radius = fields.jaw_force.value, common.friction(material, shop), fields.diameter.value / 2
    half = force / 2  # a grip counts its force at two faces, and this one is that of all jaws
    return Grip(
        kind="chuck", force=half, low=half * BAND[0], high=half * BAND[1], friction=slip, turning=slip * force * radius,
        radius=radius, around=True, upright=stands(fields),
        out=fields.out.value if fields.out and not fields.tailstock else None, gripped=fields.grip_length.value if fields.grip_length else None,
        working=f"half of {force / 1e3:.2f} kN at all jaws",
    )  # fmt: skip


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """The chuck at the left or below, the tail centre at the right, both round the axis
    of the bar where the stock is one.
    """
    long, wide, high = around.size
    held = fields.grip_length.value if fields.grip_length else 0.02
    wider = 0.04
    upright = stands(fields)
    bar = around.bar if around.bar is not None and around.bar.along == (2 if upright else 0) else None
    if upright:
        low, top = (-wider, -wider), (long + wider, wide + wider)
        if bar is not None:
            low, top = _round(bar.middle[0], bar.middle[1], bar.radius + wider)
        return (Body(part="chuck", low=(*low, -0.06), high=(*top, held), axis=2, sure=False),)
    low, top = (-wider, -wider), (wide + wider, high + wider)
    middle, third = (wide / 2, high / 2), min(wide, high) / 6
    if bar is not None:
        middle, third = (bar.middle[1], bar.middle[2]), bar.radius / 3
        low, top = _round(*middle, bar.radius + wider)
    found = [Body(part="chuck", low=(-0.06, *low), high=(held, *top), axis=0, sure=False)]
    if fields.tailstock:
        low, top = _round(*middle, third)
        found.append(Body(part="tail", low=(long, *low), high=(long + 0.04, *top), axis=0, sure=False))
    return tuple(found)


def _round(one: float, other: float, radius: float) -> tuple[tuple[float, float], tuple[float, float]]:
    """The low and the high corner of a square round a circle."""
    return (one - radius, other - radius), (one + radius, other + radius)


KIND = HoldingKind(
    name="chuck", title="Chuck on a dividing head or rotary table", reckons=("on", "lies", "diameter", "jaw_force", "out", "grip_length", "tailstock"),
    needs=("on", "grip_length", "out", "locked"), fields=Fields, form=FORM, words=words, rests=rests,
    bodies=bodies, grip=grip, roles=HoldingRoles(turns=True, round=True, chuck=True), example={"on": "dividing head"},
)  # fmt: skip
