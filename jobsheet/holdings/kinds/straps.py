"""Straps on the table: noses, bolts, packing under the heels, what the work lies on."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import Places, Quantity, Several, Thread
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group

#: A strap, its nut and stud, the reach of its nose over the work, and bolt to heel, where nobody
#: says [m] (common practice, no source).
WIDE, THICK, STUD, REACH, ARM = 0.030, 0.014, 0.025, 0.012, 0.035
SIDES = ("left", "right", "front", "rear")
NONE = "none"


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "straps"

    at: Places | None = None
    clamps: int | None = None
    bolt: Thread | None = None
    tighten: Quantity | None = None
    heel_to_bolt: Quantity | None = None
    bolt_to_nose: Quantity | None = None
    heel_level: Quantity | None = None
    strap_width: Quantity | None = None
    strap_thickness: Quantity | None = None
    stud_above: Quantity | None = None
    rests_on: str | None = None
    under: Quantity | None = None
    supported: bool | None = None
    press_on: str | None = None
    nose_below: Quantity | None = None
    supported_by: str | None = None
    stops: Several | None = None


FORM = (
    Group(
        "Straps",
        (
            Entry(
                name="at", title="Noses at", asks="places", optional=True,
                hint="where they press, from the left front corner of the work",
            ),
            common.choice(
                "press_on", "They press on", "top", "a step", "sides", hint="a step or the sides: below what is cut"
            ),
            common.length(
                "nose_below", "Noses below the top by", hint="from what is up to the step they press on"
            ),
            common.count("clamps", "How many"),
            common.BOLT,
            common.TIGHTEN,
            common.length("heel_to_bolt", "Heel to bolt", "500 mm"),
            common.length("bolt_to_nose", "Bolt to nose", "500 mm"),
            common.length("heel_level", "Heel higher than the nose by", "200 mm", "minus: lower", low="-200 mm"),
            common.length("strap_width", "Strap wide", "200 mm"),
            common.length("strap_thickness", "Strap thick", "100 mm"),
            common.length("stud_above", "Stud above the strap", "200 mm"),
        ),
    ),
    Group(
        "What it lies on",
        (
            common.choice("rests_on", "Rests on", "table", "parallels", "packing", "backing plate"),
            common.length("under", "That is thick", "300 mm"),
            common.flag("supported", "Something solid under every nose"),
            common.SUPPORTED_BY,
            Entry(
                name="stops", title="Stops at its", asks="several", choices=(*SIDES, NONE), optional=True,
                hint="as you stand, such as rear, left; none where only friction holds against a push",
            ),
        ),
    ),
    Group("Words", (common.NOTE,)),
)  # fmt: skip


def number(fields: Fields) -> int | None:
    """How many straps: as many as there are places, or as it is said."""
    return len(fields.at) if fields.at is not None else fields.clamps


def words(fields: Fields) -> str:
    """How many, and their bolts."""
    many = number(fields)
    return " ".join(
        part
        for part in (f"{many}" if many else "", "strap clamps", fields.bolt.text if fields.bolt else "")
        if part
    )


def rests(fields: Fields) -> str:
    """What lies under the work, and the stops."""
    thick = f"{fields.under.text} " if fields.under else ""
    found = (
        [f"{thick}{fields.rests_on}" if fields.rests_on != "table" else "on the table"]
        if fields.rests_on
        else []
    )
    sides = stops_at(fields)
    return "; ".join((*found, *((f"stops: {', '.join(sides)}",) if sides else ())))


def stops_at(fields: Fields) -> tuple[str, ...]:
    """The sides at which stops stand."""
    return tuple(side for side in fields.stops.items if side != NONE) if fields.stops else ()


def grip(fields: Fields, _machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """What the bolts draw down, by the arms of the strap."""
    heel = fields.heel_to_bolt.value if fields.heel_to_bolt else 1.0
    work = fields.bolt_to_nose.value if fields.bolt_to_nose else (heel if fields.heel_to_bolt else 1.0)
    if fields.bolt_to_nose and not fields.heel_to_bolt:
        heel = work
    return common.bolted(number(fields), fields.bolt, fields.tighten, material, shop, heel=heel, work=work)


def top(fields: Fields, _machine: Machine, high: float) -> float | None:
    """The work on what lies under it."""
    if fields.rests_on == "table":
        return high
    return fields.under.value + high if fields.under is not None else None


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """Table, what lies on it, straps with their studs, stops."""
    long, wide, _high = around.size
    under = (
        fields.under.value
        if fields.under and fields.rests_on != "table"
        else (0.0 if fields.rests_on == "table" else 0.010)
    )
    parts = [
        Body(
            part="table",
            low=(-0.08, -0.08, -under - 0.015),
            high=(long + 0.08, wide + 0.08, -under),
            sure=False,
        )
    ]
    known = fields.under is not None
    if fields.rests_on == "backing plate":
        parts.append(
            Body(part="backing", low=(-0.02, -0.02, -under), high=(long + 0.02, wide + 0.02, 0.0), sure=known)
        )
    elif fields.rests_on in ("parallels", "packing") and under > 0:
        broad = min(0.012, long / 4)
        part = "parallel" if fields.rests_on == "parallels" else "packing"
        parts += [
            Body(part=part, low=(x, 0.0, -under), high=(x + broad, wide, 0.0), sure=False)
            for x in (0.0, long - broad)
        ]
    parts += [
        body
        for at in (fields.at.points if fields.at else ())
        for body in _strap(fields, around, at.x.value, at.y.value)
    ]
    for side in stops_at(fields):
        parts += _stops(side, around)
    return tuple(parts)


def nose_level(fields: Fields, high: float) -> float:
    """How high over the bottom of the work the noses press [m]: its top, a step in
    it, or half-way where nobody says.
    """
    if fields.press_on in (None, "top"):
        return high
    return high - fields.nose_below.value if fields.nose_below is not None else high / 2


def _strap(fields: Fields, around: Around, x: float, y: float) -> list[Body]:
    """One strap from the edge that is nearest to its nose: along it, its stud through it."""
    long, wide, high = around.size[0], around.size[1], nose_level(fields, around.size[2])
    broad = fields.strap_width.value if fields.strap_width else WIDE
    thick = fields.strap_thickness.value if fields.strap_thickness else THICK
    reach = fields.bolt_to_nose.value if fields.bolt_to_nose else ARM
    heel = fields.heel_to_bolt.value if fields.heel_to_bolt else reach
    stud = fields.stud_above.value if fields.stud_above else STUD
    radius = (fields.bolt.major if fields.bolt else 0.012) / 2
    axis, way = min(
        ((x, (0, -1)), (long - x, (0, 1)), (y, (1, -1)), (wide - y, (1, 1))), key=lambda one: one[0]
    )[1]
    nose, other = (x, y) if axis == 0 else (y, x)
    tip, end = nose - way * 0.006, nose + way * (reach + heel)
    level_known = fields.press_on in (None, "top") or fields.nose_below is not None
    sure = fields.strap_width is not None and fields.strap_thickness is not None and level_known

    def body(
        part: str,
        run: tuple[float, float],
        side: float,
        levels: tuple[float, float],
        round_: int | None = None,
        *,
        sure: bool = sure,
    ) -> Body:
        low, up = [0.0, 0.0, levels[0]], [0.0, 0.0, levels[1]]
        low[axis], up[axis] = min(run), max(run)
        low[1 - axis], up[1 - axis] = other - side, other + side
        return Body(part=part, low=tuple(low), high=tuple(up), axis=round_, sure=sure)  # type: ignore[arg-type]

    bolt = nose + way * reach
    level = high + (fields.heel_level.value if fields.heel_level else 0.0)
    under = fields.under.value if fields.under and fields.rests_on != "table" else 0.0
    return [
        body("strap", (tip, end), broad / 2, (high, high + thick)),
        body(
            "stud",
            (bolt - radius, bolt + radius),
            radius,
            (-under, high + thick + stud),
            2,
            sure=fields.stud_above is not None and level_known,
        ),
        body("packing", (end - way * 0.02, end), broad / 2, (-under, level), sure=False),
    ]


def _stops(side: str, around: Around) -> list[Body]:
    """Two pins on a long side, one on a short one, against the lower half of the work."""
    long, wide, high = around.size
    axis = 0 if side in ("left", "right") else 1
    run, at = (wide, long) if axis == 0 else (long, wide)
    level = min(high * 0.6, 0.02)
    shares = (0.2, 0.8) if run >= at else (0.5,)
    begin = -0.01 if side in ("left", "front") else at
    stops = []
    for share in shares:
        low, up = [0.0, 0.0, 0.0], [0.0, 0.0, level]
        low[axis], up[axis] = begin, begin + 0.01
        low[1 - axis], up[1 - axis] = run * share - 0.005, run * share + 0.005
        stops.append(Body(part="stop", low=tuple(low), high=tuple(up), axis=2, sure=False))  # type: ignore[arg-type]
    return stops


KIND = HoldingKind(
    name="straps", title="Straps on the table", reckons=("at", "clamps", "bolt", "tighten", "heel_to_bolt", "bolt_to_nose", "rests_on", "under"),
    needs=("at", "bolt", "tighten", "rests_on", "supported", "nose_below", "stops"), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies, grip=grip,
    top=top, roles=HoldingRoles(on_top=True, straps=True), only_with={"nose_below": ("press_on", ("a step",))},
)  # fmt: skip
