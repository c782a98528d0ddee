"""The document: one plan for one part. An edit returns a new job that shares what did not change."""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.model.finished import Finished
from jobsheet.model.held_work import NOTHING, Holding
from jobsheet.model.quantity import Quantity
from jobsheet.model.stock import Stock

#: What a step's empty fields mean, as its file has it.
AS_RECOMMENDED = "as recommended"


class Part(Struct, frozen=True, kw_only=True):
    """What is made: the upper part of the title block."""

    number: str = ""
    name: str = ""
    revision: str = ""
    drawing: str = ""
    quantity: int = 1
    #: What is done to it afterwards: hardened, ground, plated; in words.
    later: str = ""
    #: What is left on for it; nought is said too.
    allowance: Quantity | None = None
    #: The limits of all sizes that have none of their own, as the drawing says them.
    general_limits: str = ""


class Zero(Struct, frozen=True, kw_only=True):
    """Where the coordinates of a set-up start, and which way they count.

    `corner` names two side faces and the height, of the stock as it lies in this set-up:
    x counts along left and right, y along towards and away. `x_counts` and `y_counts` say which way
    is plus; a machinist's own order is right and away.
    """

    named: str = ""
    x_from: str = "left"
    y_from: str = "front"
    x_counts: str = "right"
    y_counts: str = "away"
    found: str = ""
    #: What the zero is found on where it is no two edges: `a bore`, `the middle`, `another hole`.
    stands_on: str = ""


class Operation(Struct, frozen=True, kw_only=True, weakref=True):
    """One step: a key that never changes, the number on paper, the kind and that kind's own `Fields`.

    `empty` says what its speed, its layers and their like mean where they are left empty: as before (the
    whole depth at once, the fastest speed that carries it), or `AS_RECOMMENDED`. A step without a feed
    leaves them all to the program anyway.
    """

    key: str
    number: int
    kind: str
    fields: Any
    empty: str = ""


class SetUp(Struct, frozen=True, kw_only=True):
    """One way the work is held. `up`, `operator` and `fixed_jaw` are faces of the stock; the
    last means something in jaws only.
    """

    key: str
    number: int
    title: str = ""
    up: str = "top"
    operator: str = "front"
    fixed_jaw: str = "rear"
    holding: Holding = NOTHING
    zero: Zero = Zero()
    minutes: Quantity | None = None
    note: str = ""
    operations: tuple[Operation, ...] = ()


class Dismissed(Struct, frozen=True, kw_only=True):
    """A remark that was set aside for this job: its rule, the key of the step or set-up
    it is about, why, and who says so.
    """

    rule: str
    about: str = ""
    reason: str = ""
    initials: str = ""


class Revision(Struct, frozen=True, kw_only=True):
    """One state of the plan that was printed: its number counts from 1; the
    drawing's own revision is another thing.
    """

    number: int
    changed: str = ""
    who: str = ""
    when: str = ""
    #: The drawing's own revision that it was made from, as typed.
    drawing: str = ""


class Photograph(Struct, frozen=True, kw_only=True):
    """A picture beside the plan, named by its content (the SHA-256 of its bytes), what it
    shows, and of which set-up or step.
    """

    content: str
    shows: str = ""
    about: str = ""


class Job(Struct, frozen=True, kw_only=True):
    """One plan for one part on one machine."""

    units: str = "mm"
    part: Part = Part()
    workshop: str = ""
    planned_by: str = ""
    planned_on: str = ""
    material: str = ""
    stock: Stock
    machine: str = ""
    card_hash: str = ""
    fluid: str = "brushed"
    #: What the fluid is: `mineral oil`, or mixed with water.
    fluid_is: str = ""
    trainee: bool = False
    datums: tuple[tuple[str, str], ...] = ()
    #: What the part shall be, line by line as on the drawing.
    finished: Finished = Finished()
    also_fetch: str = ""
    why: str = ""
    note: str = ""
    dismissed: tuple[Dismissed, ...] = ()
    #: Revisions of the plan, the newest last. What happened at the machine never stands here.
    revisions: tuple[Revision, ...] = ()
    photographs: tuple[Photograph, ...] = ()
    set_ups: tuple[SetUp, ...] = ()

    @property
    def plan_number(self) -> int:
        """The number of its last revision; 0 before the first."""
        return self.revisions[-1].number if self.revisions else 0

    def operations(self) -> list[tuple[SetUp, Operation]]:
        """Every operation in cutting order, with its set-up."""
        return [(set_up, operation) for set_up in self.set_ups for operation in set_up.operations]

    def find(self, key: str) -> tuple[SetUp, Operation]:
        """The operation of that key and its set-up; KeyError if there is none."""
        for set_up in self.set_ups:
            for operation in set_up.operations:
                if operation.key == key:
                    return set_up, operation
        raise KeyError(key)
