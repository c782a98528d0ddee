"""What a machine will carry, as values: rows, the card that they stand on, a job on each machine."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.capacity import Snapshot
from jobsheet.model.job import Job
from jobsheet.model.machine import Machine
from jobsheet.reckoning.answers.what_next import Answered, Shown, what_next
from jobsheet.reckoning.minutes import Minutes


class Row(Struct, frozen=True, kw_only=True):
    """One answer: what to plan with, its verdict there, the band (`low`,
    `middle`, `high`) and what stops more.

    Sizes are words ready to show. `words` is `planned limit, a chance of 1 in 10`, or
    `cut before`; `proved` says whether trials stand behind the band. `speed` [rev/s] and
    `torque` [N·m] are those of the cut at the answer.
    """

    what: str
    cutter: str
    plan: str
    plan_size: float | None
    verdict: str
    low: str
    middle: str
    high: str
    stops: str
    words: str
    note: str = ""
    proved: bool = False
    speed: float | None = None
    torque: float | None = None
    #: What stands behind it: cuts of that process with that kind of cutter.
    shown: Shown

    @property
    def name(self) -> str:
        """What it is about, in few words: `slot`, `side cut 6 mm wide`."""
        return self.what.partition(", ")[0].removeprefix("deepest ").removeprefix("largest ")


class Card(Struct, frozen=True, kw_only=True):
    """One machine in one metal."""

    machine: Machine
    material: str
    title: str
    held: str
    rows: tuple[Row, ...]
    proof: Snapshot | None = None

    @property
    def next(self) -> tuple[str, ...]:
        """What to try next on this machine, a sentence each, the most telling first."""
        return what_next(
            [
                Answered(name=row.name, low=row.low, high=row.high, plan=row.plan, shown=row.shown)
                for row in self.rows
            ]
        )


class OnMachine(Struct, frozen=True, kw_only=True):
    """A job on one machine: its minutes, and what of it is beyond there (step and words)."""

    machine: Machine
    minutes: Minutes
    fits: bool
    beyond: tuple[tuple[int, str], ...] = ()
    #: Number of the step, speed [rev/s], torque [N·m] of what turns under power.
    cuts: tuple[tuple[int, float, float], ...] = ()


class Capability(Struct, frozen=True, kw_only=True):
    """All cards, metal by metal, each with the machines in the order they were
    asked for; and the job on each.
    """

    machines: tuple[Machine, ...]
    materials: tuple[tuple[Card, ...], ...]
    units: str
    job: Job | None = None
    on: tuple[OnMachine, ...] = ()
