"""What stands where a new step will be: the step before, what is cut at the same
places, and what the cabinet has.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.own_tools import Cabinet
from jobsheet.model.quantity import Cutter, Places, Thread
from jobsheet.operations.registry import roles


class Here(Struct, frozen=True, kw_only=True):
    """The place of a new step in its set-up: behind so many steps."""

    set_up: SetUp
    index: int
    units: str
    cabinet: Cabinet | None = None
    #: How high a thread the workshop wants (`Shop.thread_height`).
    thread_height: str = ""

    @property
    def before(self) -> Operation | None:
        """The step before."""
        return self.set_up.operations[self.index - 1] if self.index else None

    @property
    def role(self) -> str:
        """What the step before is to others; nothing where there is none."""
        return roles(self.before).name if self.before is not None else ""

    @property
    def places(self) -> Places | None:
        """The holes of the step before."""
        found = getattr(self.before.fields, "at", None) if self.before is not None else None
        return found if isinstance(found, Places) else None

    @property
    def holes_in_words(self) -> str:
        """`these 4 holes`."""
        count = len(self.places or ())
        return "this hole" if count == 1 else f"these {count} holes"

    def at_the_same(self) -> tuple[Operation, ...]:
        """Every step of the set-up at one of these places, in its order."""
        spots = _spots(self.places)
        return tuple(
            operation
            for operation in self.set_up.operations
            if spots and spots & _spots(getattr(operation.fields, "at", None))
        )

    @property
    def hole(self) -> float | None:
        """The diameter that stands there [m]: that of the last step before this
        place that made or opened a hole.
        """
        earlier = self.set_up.operations[: self.index]
        for operation in reversed(self.at_the_same()):
            if operation in earlier and roles(operation).hole in ("drill", "plunge", "bore", "ream"):
                return _diameter(operation)
        return None

    @property
    def thread(self) -> Thread | None:
        """The thread that some step cuts at these places."""
        found = (getattr(operation.fields, "thread", None) for operation in self.at_the_same())
        return next((one for one in found if isinstance(one, Thread)), None)

    def has(self, role: str) -> bool:
        """Whether a step of that role works at these places already; for what is
        no hole, anywhere in the set-up.
        """
        among = self.at_the_same() if self.places is not None else self.set_up.operations
        return any(roles(operation).name == role for operation in among)

    def done(self, role: str) -> bool:
        """Whether a step of that role has worked at these places before this one."""
        earlier = self.set_up.operations[: self.index]
        return any(roles(operation).name == role and operation in earlier for operation in self.at_the_same())

    def anywhere(self, role: str) -> bool:
        """Whether the set-up has a step of that role."""
        return any(roles(operation).name == role for operation in self.set_up.operations)


def _spots(places: object) -> frozenset[tuple[int, int]]:
    return frozenset(place.spot for place in places) if isinstance(places, Places) else frozenset()


def _diameter(operation: Operation) -> float | None:
    to = getattr(operation.fields, "to", None)
    if roles(operation).hole == "bore" and to is not None:
        value = getattr(to, "value", None) or getattr(to, "nominal", None)
        return float(value) if value else None
    cutter = getattr(operation.fields, "cutter", None)
    return cutter.diameter if isinstance(cutter, Cutter) else None
