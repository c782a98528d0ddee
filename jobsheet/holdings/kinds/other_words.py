"""Held in a way that no kind of ours says: words, of which nothing can be checked."""

from __future__ import annotations

from typing import ClassVar

from jobsheet.holdings import shared_facts as common
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Holding
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group


class Fields(Holding, frozen=True, kw_only=True):
    """What is typed and stored."""

    kind: ClassVar[str] = "other words"

    device: str = ""
    packing: str = ""


FORM = (
    Group(
        "In words",
        (
            Entry(name="device", title="Held in", asks="text", hint="nothing of it is checked"),
            Entry(name="packing", title="On what", asks="text", optional=True),
        ),
    ),
    Group("Words", (common.NOTE,)),
)


def words(fields: Fields) -> str:
    """As they stand."""
    return fields.device


def rests(fields: Fields) -> str:
    """As they stand."""
    return fields.packing


KIND = HoldingKind(
    name="other words", title="Another way, in words", fields=Fields, form=FORM, words=words, rests=rests,
    roles=HoldingRoles(in_words=True), example={"device": "fixture"},
)  # fmt: skip
