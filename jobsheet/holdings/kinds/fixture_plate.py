"""A fixture plate: the work screwed to it through its own holes."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import Places, Quantity, Thread
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group

#: Head of a socket screw over its thread: 1.5 d wide, d high (ISO 4762, from memory).
HEAD = 1.5


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "fixture plate"

    at: Places | None = None
    screw: Thread | None = None
    engaged: Quantity | None = None
    plate: Quantity | None = None
    plate_metal: str | None = None
    dowels: int | None = None
    tighten: Quantity | None = None


FORM = (
    Group(
        "Screws",
        (
            Entry(
                name="at",
                title="Screws at",
                asks="places",
                optional=True,
                hint="from the left front corner of the work",
            ),
            Entry(name="screw", title="Screws", asks="thread", optional=True, hint="such as M6"),
            common.TIGHTEN,
        ),
    ),
    Group(
        "Plate",
        (
            common.length("plate", "Plate thick", "200 mm"),
            common.choice("plate_metal", "Plate of", "steel", "aluminium"),
            common.length("engaged", "Thread engaged", "200 mm"),
            common.count("dowels", "Dowels", 0),
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def words(fields: Fields) -> str:
    """The plate, and the screws."""
    many = f", {len(fields.at)} screws" if fields.at else ""
    return f"fixture plate{many}{f' {fields.screw.text}' if fields.screw and many else ''}"


def rests(fields: Fields) -> str:
    """The plate."""
    return f"{fields.plate.text} plate" if fields.plate else ""


def grip(fields: Fields, _machine: Machine, material: Material, shop: Shop) -> Grip | None:
    """Friction of the screws: the screw itself never carries a side push."""
    return common.bolted(
        len(fields.at) if fields.at else None,
        fields.screw,
        fields.tighten,
        material,
        shop,
        heel=1.0,
        work=0.0,
        what="screws",
    )


def top(fields: Fields, _machine: Machine, high: float) -> float | None:
    """The work on the plate."""
    return fields.plate.value + high if fields.plate is not None else None


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """Plate, and the head and shank of each screw."""
    long, wide, high = around.size
    thick = fields.plate.value if fields.plate else 0.02
    parts = [
        Body(
            part="backing",
            low=(-0.02, -0.02, -thick),
            high=(long + 0.02, wide + 0.02, 0.0),
            sure=fields.plate is not None,
        )
    ]
    major = fields.screw.major if fields.screw else 0.006
    head = HEAD * major / 2
    for at in fields.at.points if fields.at else ():
        x, y = at.x.value, at.y.value
        parts.append(
            Body(
                part="screw",
                low=(x - head, y - head, high),
                high=(x + head, y + head, high + major),
                axis=2,
                sure=fields.screw is not None,
            )
        )
        parts.append(
            Body(
                part="screw",
                low=(x - major / 2, y - major / 2, -thick),
                high=(x + major / 2, y + major / 2, high),
                axis=2,
                sure=fields.screw is not None,
            )
        )
    return tuple(parts)


KIND = HoldingKind(
    name="fixture plate", title="Fixture plate, screwed", reckons=("at", "screw", "tighten", "plate"),
    needs=("at", "screw", "engaged", "tighten", "dowels"), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies,
    grip=grip, top=top, roles=HoldingRoles(screwed=True),
)  # fmt: skip
