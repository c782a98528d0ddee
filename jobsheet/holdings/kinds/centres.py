"""Between centres on a dividing head and its tailstock."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.quantity import Quantity
from jobsheet.operations.kind import Group


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "centres"

    diameter: Quantity | None = None
    length: Quantity | None = None
    dog: bool | None = None
    jack: bool | None = None
    locked: bool | None = None


FORM = (
    Group(
        "Centres",
        (
            common.length("diameter", "Diameter of the work"),
            common.length("length", "Between the centres", "3 m"),
            common.flag("dog", "Dog without play"),
            common.flag("jack", "Jack under the middle"),
            common.flag("locked", "Locked before a straight cut"),
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def words(_fields: Fields) -> str:
    """As the trade says it."""
    return "between centres"


def rests(fields: Fields) -> str:
    """Dog and jack."""
    return ", ".join(
        word for word, there in (("dog", fields.dog), ("jack under the middle", fields.jack)) if there
    )


def bodies(fields: Fields, around: Around) -> tuple[Body, ...]:
    """Both centres, the dog at the left, the jack under the middle."""
    long, wide, high = around.size
    third = min(wide, high) / 6
    parts = [
        Body(
            part="tail",
            low=(at, wide / 2 - third, high / 2 - third),
            high=(at + 0.03, wide / 2 + third, high / 2 + third),
            axis=0,
            sure=False,
        )
        for at in (-0.03, long)
    ]
    if fields.dog:
        parts.append(
            Body(
                part="dog",
                low=(0.0, -0.015, -0.015),
                high=(0.015, wide + 0.015, high + 0.015),
                axis=0,
                sure=False,
            )
        )
    if fields.jack:
        parts.append(
            Body(
                part="jack",
                low=(long / 2 - 0.01, wide / 2 - 0.01, -0.05),
                high=(long / 2 + 0.01, wide / 2 + 0.01, 0.0),
                axis=2,
                sure=False,
            )
        )
    return tuple(parts)


KIND = HoldingKind(
    name="centres", title="Between centres", needs=("length", "dog", "locked"), fields=Fields, form=FORM, words=words, rests=rests, bodies=bodies,
    roles=HoldingRoles(turns=True, round=True, between=True),
)  # fmt: skip
