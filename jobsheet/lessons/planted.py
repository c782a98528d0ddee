"""Mistakes planted into a job, each with one cause: accepted only where the review then has
exactly one remark more, the wanted one.

What is right about the job stays so; a habit is no mistake. The modeller is asked too before one is accepted,
so that a change that spoils the work in a second way is none.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from functools import cached_property

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.lessons.needed_order import Needed, needed_order
from jobsheet.lessons.slips import step_words
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Remark
from jobsheet.operations import written
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.mending.at_hand import at_hand
from jobsheet.review.mending.fixes import Mend, added_before, all_moved_before, set_field, taken_out
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.solid_facts import facts_of

#: A drill so much larger or smaller is taken for the right one [m].
NEXT = 1.0e-3


class Plant(Struct, frozen=True, kw_only=True):
    """One mistake that could be made: which step or set-up it is at, what was done,
    and by which rules it may be found.
    """

    sort: str
    at: str
    done: str
    mend: Mend
    rules: frozenset[str]


class Planted(Struct, frozen=True, kw_only=True):
    """A mistake that was made: the job with it, and what the review has to say of it."""

    job: Job
    plant: Plant
    remark: Remark


class Ground:
    """A job into which mistakes are planted: what the review says of it as it is, and of it with a change."""

    def __init__(self, reckoned: Reckoned) -> None:
        self.reckoned = reckoned
        self.job = reckoned.job
        self._reckoner = Reckoner(learns=True)

    @cached_property
    def needed(self) -> Needed:
        """The order of the job."""
        return needed_order(self.reckoned)

    @cached_property
    def _before(self) -> tuple[Counter[str], Counter[str]]:
        """Rules with their remarks, without the solids and with them."""
        return self._rules(self.job, solids=False)[0], self._rules(self.job, solids=True)[0]

    def _rules(self, job: Job, *, solids: bool) -> tuple[Counter[str], list[Remark], bool]:
        reckoned = self._reckoner.reckon(job)
        read = reviewed(reckoned.job, reckoned, facts_of(reckoned.job, reckoned) if solids else None)
        remarks = [
            one for one in (*read.open, *(remark for remark, _ in read.aside)) if one.severity != "habit"
        ]
        whole = not read.not_checked and not any(outcome.problem for outcome in reckoned.operations.values())
        return Counter(remark.rule for remark in remarks), remarks, whole

    def gained(self, job: Job, *, solids: bool) -> tuple[Remark, ...] | None:
        """The remarks that a changed job has more; None where some of it can no
        longer be reckoned or checked.
        """
        rules, remarks, whole = self._rules(job, solids=solids)
        more = rules - self._before[solids]
        if not whole or any(self._before[solids][one] for one in more):
            return None  # of a rule that has a remark already nobody can say which one is new
        return tuple(remark for remark in remarks if remark.rule in more)

    def problems(self, job: Job) -> tuple[str, ...]:
        """What of a changed job can no longer be calculated, in the sentences that are
        shown; nothing where it was so before.
        """
        by_key, before = self._reckoner.reckon(job).operations, self.reckoned.operations
        new = (
            outcome.problem
            for key, outcome in by_key.items()
            if outcome.problem and not (key in before and before[key].problem)
        )
        return tuple(dict.fromkeys(new))

    def planted(self, plant: Plant) -> Planted | None:
        """The mistake made, where exactly one wanted remark comes of it; else nothing. The
        solids, which take longest, come last.
        """
        job = plant.mend(self.job)
        if job == self.job:
            return None
        for solids in (False, True):
            remarks = self.gained(job, solids=solids)
            if remarks is None or len(remarks) != 1 or (plant.rules and remarks[0].rule not in plant.rules):
                return None
        return Planted(job=job, plant=plant, remark=remarks[0]) if remarks else None

    def several(
        self, plants: tuple[Plant, ...], *, solids: bool = True
    ) -> tuple[Job, tuple[Remark, ...]] | None:
        """All of them in one job, where it then has exactly one remark more for each; else nothing."""
        job = self.job
        for plant in plants:
            job = plant.mend(job)
        remarks = self.gained(numbered(job), solids=solids)
        return (numbered(job), remarks) if remarks is not None and len(remarks) == len(plants) else None


def numbered(job: Job) -> Job:
    """The job with its steps numbered from 1: no gap says that one was taken
    out, no number that one was moved.
    """
    numbers = {operation.key: at for at, (_, operation) in enumerate(job.operations(), 1)}
    set_ups = tuple(
        replace(
            set_up, operations=tuple(replace(step, number=numbers[step.key]) for step in set_up.operations)
        )
        for set_up in job.set_ups
    )
    return replace(job, set_ups=set_ups)


# --- what can be planted ---


def wrong_ones(ground: Ground) -> Iterator[Plant]:
    """What can be wrong: an order, a tool, a speed, a depth, a face, a zero."""
    for set_up in ground.job.set_ups:
        yield from _other_jaw(set_up)
        for operation in set_up.operations:
            for make in _AT_A_STEP:
                yield from make(ground, set_up, operation)
    yield from _out_of_order(ground)


def missing_ones(ground: Ground) -> Iterator[Plant]:
    """What can be missing: any one step."""
    for _, operation in ground.job.operations():
        yield Plant(
            sort="missing",
            at=operation.key,
            done="left out",
            mend=taken_out(operation.key),
            rules=frozenset(),
        )


def _out_of_order(ground: Ground) -> Iterator[Plant]:
    home = {operation.key: set_up.key for set_up, operation in ground.job.operations()}
    words = step_words(ground.reckoned)
    for pair in ground.needed.pairs:
        if home[pair.first] == home[pair.then]:
            yield Plant(
                sort="order",
                at=pair.then,
                done=f"“{words[pair.then]}” stands before “{words[pair.first]}”",
                mend=all_moved_before((pair.then,), pair.first),
                rules=frozenset((pair.rule,)),
            )


def _other_jaw(set_up: SetUp) -> Iterator[Plant]:
    yield Plant(
        sort="jaw",
        at=set_up.key,
        done="the other face at the fixed jaw",
        mend=set_field(f"setup:{set_up.key}", "fixed_jaw", OPPOSITE[set_up.fixed_jaw]),
        rules=frozenset(("machined-face-to-fixed-jaw", "bar-at-the-moving-jaw")),
    )


def _next_drill(ground: Ground, _set_up: SetUp, operation: Operation) -> Iterator[Plant]:
    if roles(operation).hole != "drill" or operation.fields.cutter.diameter is None:
        return
    size = operation.fields.cutter.diameter
    for other, line in at_hand(ground.job, "drill", size - NEXT, size + NEXT):
        if abs(other - size) > 1e-6:
            wanted = (
                "thread-height-in-bounds",
                "reaming-allowance",
                "hole-to-its-size",
                "enough-left-for-the-drill",
            )
            yield Plant(
                sort="drill", at=operation.key, done=f"{line} in place of {operation.fields.cutter.text}",
                mend=set_field(operation.key, "cutter", line), rules=frozenset(wanted),
            )  # fmt: skip


def _drill_speed(ground: Ground, set_up: SetUp, operation: Operation) -> Iterator[Plant]:
    """The reamer, tap or countersink at the speed of the drill before it."""
    if (
        roles(operation).hole not in ("ream", "countersink", "counterbore")
        or operation.fields.spindle is None
    ):
        return
    before = [
        other
        for other in set_up.operations
        if other.number < operation.number and roles(other).hole == "drill"
    ]
    for other in before:
        if other.fields.spindle is not None and other.fields.spindle.value > operation.fields.spindle.value:
            wanted = ("reamer-slower-than-the-drill", "slow-for-countersinks", "slow-down-for-the-edge")
            yield Plant(
                sort="speed", at=operation.key, done=f"at {other.fields.spindle.text}, the speed of the drill",
                mend=set_field(operation.key, "spindle", other.fields.spindle.text), rules=frozenset(wanted),
            )  # fmt: skip
    del ground


def _no_room_below(ground: Ground, _set_up: SetUp, operation: Operation) -> Iterator[Plant]:
    """The tap drill no deeper than the thread."""
    if (
        roles(operation).hole != "tap"
        or operation.fields.depth is None
        or operation.fields.depth.value is None
    ):
        return
    for chain, step in holes_of(ground.reckoned).by_step(operation.key):
        drill = chain.hole_before(step)
        if drill is not None:
            yield Plant(
                sort="depth", at=drill.key, done=f"only {operation.fields.depth.text} deep",
                mend=set_field(drill.key, "depth", operation.fields.depth.text), rules=frozenset(("room-below-the-thread", "hole-as-deep-as-asked")),
            )  # fmt: skip
            return


def _zero_lost(_ground: Ground, set_up: SetUp, operation: Operation) -> Iterator[Plant]:
    """The work out and in again before a place is gone to."""
    first = set_up.operations[0]
    if roles(operation).hole and operation is not first:
        texts = {
            "does": "take out, put back",
            "what": "Take the work out, look at it, put it back",
            "minutes": "3 min",
        }
        yield Plant(
            sort="zero", at=operation.key, done="taken out and put back before it, and nothing found again",
            mend=added_before(operation.key, written.BENCH, texts), rules=frozenset(("zero-again-after-taking-out",)),
        )  # fmt: skip


_AT_A_STEP: tuple[Callable[[Ground, SetUp, Operation], Iterator[Plant]], ...] = (
    _next_drill,
    _drill_speed,
    _no_room_below,
    _zero_lost,
)
