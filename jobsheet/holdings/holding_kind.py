"""What a kind of holding is: facts, form, words, bodies, grip, bound by name in one frozen record."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Generic, TypeVar

from msgspec import Struct

from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import Around, Body, Holding
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.setting import Grip
from jobsheet.model.shop import Shop
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Group

#: The facts of one kind: every part of a kind is written for the same.
H = TypeVar("H", bound=Holding)


def _no_words(_fields: object) -> str:
    return ""


def _no_bodies(_fields: object, _around: Around) -> tuple[Body, ...]:
    return ()


def _no_grip(_fields: object, _machine: Machine, _material: Material, _shop: Shop) -> Grip | None:
    return None


def _no_top(_fields: object, _machine: Machine, _high: float) -> float | None:
    return None


def _no_mass(_fields: object, _machine: Machine) -> float:
    return 0.0


class HoldingKind(Struct, Generic[H], frozen=True, kw_only=True):
    """One kind of holding, by its facts: a part that was written for the facts of another is a type error.

    `words` names it in a few words (`80 mm vice`), `rests` says what the work lies on, `bodies` where its
    parts stand round the work, `grip` with what force it holds (None where too little is said), `top` how
    high the top of work of that height stands over the table [m], `mass` what it weighs beside the work [kg],
    `example` is what a new one holds, as typed.
    """

    name: str
    title: str
    fields: type[H]
    form: tuple[Group, ...]
    words: Callable[[H], str]
    rests: Callable[[H], str] = _no_words
    bodies: Callable[[H, Around], tuple[Body, ...]] = _no_bodies
    grip: Callable[[H, Machine, Material, Shop], Grip | None] = _no_grip
    top: Callable[[H, Machine, float], float | None] = _no_top
    mass: Callable[[H, Machine], float] = _no_mass
    roles: HoldingRoles | Callable[[H], HoldingRoles] = HoldingRoles()
    example: dict[str, str] = {}
    #: Facts on which grip, height and mass rest: half-typed text in any other dims no figure.
    reckons: tuple[str, ...] = ()
    #: Facts without which something cannot be checked or drawn where it is: they
    #: are named until they are said.
    needs: tuple[str, ...] = ()
    #: Needs that fall away where another fact says one of these.
    spared: dict[str, tuple[str, tuple[Any, ...]]] = {}
    #: Facts that are asked only where another one says one of these: a step only of soft jaws.
    only_with: dict[str, tuple[str, tuple[Any, ...]]] = {}

    @property
    def entries(self) -> tuple[Entry, ...]:
        """Every field, in the order of the form."""
        return tuple(entry for group in self.form for entry in group.entries)

    def asked(self, fields: H) -> tuple[Entry, ...]:
        """The fields that make sense beside what is said already; what is said stays asked."""

        def asks(entry: Entry) -> bool:
            other, values = self.only_with.get(entry.name, ("", ()))
            return (
                not other or getattr(fields, entry.name) not in (None, "") or getattr(fields, other) in values
            )

        return tuple(entry for entry in self.entries if asks(entry))

    def unsaid(self, fields: H) -> tuple[Entry, ...]:
        """What should still be said of it."""

        def spared(entry: Entry) -> bool:
            other, values = self.spared.get(entry.name, ("", ()))
            return bool(other) and getattr(fields, other) in values

        return tuple(
            entry
            for entry in self.asked(fields)
            if entry.name in self.needs and not _said(fields, entry) and not spared(entry)
        )

    def plays(self, fields: H) -> HoldingRoles:
        """Its roles with these facts."""
        return self.roles if isinstance(self.roles, HoldingRoles) else self.roles(fields)


def _said(fields: object, entry: Entry) -> bool:
    value = getattr(fields, entry.name)
    return value is not None and value != ""
