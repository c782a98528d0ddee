"""What is learned of a machine from all its trials."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import astuple


class Good(Struct, frozen=True, kw_only=True):
    """A recorded good cut, with what `cut before` needs to know of it."""

    share: float
    date: str
    cutter: str
    stick_out: float | None
    holding: str
    trial: str = ""
    #: A later trial of the same process and kind of cutter ended badly at this share or less.
    overtaken: bool = False
    #: What it asked as reckoned then [N·m or N/m], and how it ended.
    demand: float = 0.0
    outcome: str = ""


class Doubt(Struct, frozen=True, kw_only=True):
    """A trial that does not fit the others: what it says has by them a smaller
    chance [0..1] than a slip of the pen.

    `low` to `high` is nine in ten of the capacity by the others alone, a factor
    on card or class as `share` is.
    """

    trial: str
    outcome: str
    share: float
    chance: float
    low: float
    high: float
    others: int


class Capacity(Struct, frozen=True, kw_only=True):
    """What was learned of one limit in one process with one kind of cutter; all
    values are factors on card or class.

    `low`, `median` and `high` are nine in ten; `cells` the posterior of ln capacity for this process as
    (ln factor, weight) pairs, so that the chance for any demand follows without the trials; `good` and
    `bad` the shares asked. Where the process is empty it is for one not yet tried: what the others say
    about the machine, and on top the bias of a process (so that the chance holds there); `machine` is then
    the nine in ten of the machine alone.
    """

    limit: str
    process: str
    cutter_kind: str
    low: float
    median: float
    high: float
    cells: tuple[tuple[float, float], ...] = ()
    good: tuple[Good, ...] = ()
    bad: tuple[float, ...] = ()
    #: The largest share that ends badly with at most the workshop's chance.
    planned: float = 0.0
    #: The newest trial's date, and its age in days when this was made.
    newest: str = ""
    age: int = 0
    #: How many trials said something of it; at 0 it is still what card or class alone say.
    spoke: int = 0
    #: Trials that ended at this limit, in the order of time; where the process
    #: is empty those of every process.
    ends: tuple[Good, ...] = ()
    #: How one cut repeats: standard deviation of the logarithm of its demand, learned with the rest.
    noise: float = 0.12
    #: The largest clean share since the newest end that counts; 0 where there is none.
    since: float = 0.0
    #: Trials that do not fit the others. They end no ladder, and stand until somebody strikes or keeps them.
    doubts: tuple[Doubt, ...] = ()
    #: Only where the process is empty: low, median and high of the machine without any process.
    machine: tuple[float, ...] = ()


class Snapshot(Struct, frozen=True, kw_only=True):
    """All that is learned of one machine, as a value: it goes into the
    `Setting`, so that verdicts follow at once.
    """

    machine: str
    made: str
    capacities: tuple[Capacity, ...] = ()
    #: How many trials stand behind it, and how many were struck out.
    trials: int = 0
    struck: int = 0

    def __hash__(self) -> int:
        """By a few numbers that every trial moves: a `Setting` is hashed at each
        keystroke, hundreds of cells are not.
        """
        return hash(
            (
                self.machine,
                self.made,
                self.trials,
                self.struck,
                *(capacity.median for capacity in self.capacities),
            )
        )

    def __eq__(self, other: object) -> bool:
        """The very same at once, for a job's operations share one; else by value."""
        return self is other or (isinstance(other, Snapshot) and astuple(self) == astuple(other))

    def tried(self, limit: str, cutter_kind: str) -> bool:
        """Whether a trial with that kind of cutter, in any process, said something of that limit."""
        return any(
            capacity.spoke and capacity.limit == limit and capacity.cutter_kind == cutter_kind
            for capacity in self.capacities
        )

    def find(self, limit: str, process: str, cutter_kind: str) -> Capacity | None:
        """What is known for that process and kind of cutter; else what the machine alone gives; else None."""
        alone = None
        for capacity in self.capacities:
            if capacity.limit != limit:
                continue
            if (capacity.process, capacity.cutter_kind) == (process, cutter_kind):
                return capacity
            if not capacity.process:
                alone = capacity
        return alone
