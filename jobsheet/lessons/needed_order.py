"""Which steps of a job must stand before which, which only by habit, and which may stand either way.

From facts: what a step does to which face or hole, what its sizes and places count from, what
holds the work. The order in which a plan has its steps is asked only where no fact says which of
two it is: of two deburrings, of two holds of one set-up. A set-up is kept together: its order
among the others follows from its steps.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.lessons.bench_pairs import bench_pairs
from jobsheet.lessons.face_pairs import face_pairs
from jobsheet.lessons.hole_pairs import hole_pairs
from jobsheet.lessons.pairs import Pair
from jobsheet.lessons.precedence import Circle, Precedence, closed
from jobsheet.model.identity import by_identity
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.plan.faces import Plan, plan_of
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.rule import View


class Needed(Struct, frozen=True, kw_only=True):
    """The order of a job, as far as it matters. Steps and set-ups go by their keys."""

    job: Job
    #: Drawn pairs with their reasons, inside a set-up and between two; the closure follows from them.
    pairs: tuple[Pair, ...]
    #: What is better, never a mistake: none of it contradicts a pair that is needed.
    habits: tuple[Pair, ...]
    #: The closure of all of them over all steps.
    steps: Precedence
    #: The order of the set-ups that follows.
    set_ups: Precedence

    def inside(self, set_up: str) -> Precedence:
        """The order of the steps of one set-up."""
        return self.steps.only(
            operation.key
            for other in self.job.set_ups
            if other.key == set_up
            for operation in other.operations
        )

    def count(self) -> int | None:
        """How many orders are right where each set-up stays together; None where
        they are too many to be counted.
        """
        total = self.set_ups.count()
        for set_up in self.job.set_ups:
            found = self.inside(set_up.key).count()
            if total is None or found is None:
                return None
            total *= found
        return total


def needed_order(reckoned: Reckoned) -> Needed:
    """The order that a job needs, worked out once a plan.

    Raises
    ------
    NoOrder
        If its pairs go round: then the plan itself asks for what cannot be.
    """
    return _needed(reckoned)


class NoOrder(JobsheetError):
    """No order is right, whatever it is: the plan's own facts ask for each other in a
    circle. The sentence names the rules.
    """


@by_identity(4)
def _needed(reckoned: Reckoned) -> Needed:
    job, view = reckoned.job, View(reckoned.job, reckoned)
    plan, holes = plan_of(view), holes_of(reckoned)
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    drawn: dict[tuple[str, str], Pair] = {}
    for pair in (*bench_pairs(plan, holes), *face_pairs(view, plan, holes), *hole_pairs(view, plan, holes)):
        drawn.setdefault((pair.first, pair.then), pair)
    home = {operation.key: set_up.key for set_up, operation in job.operations()}
    across: dict[tuple[str, str], Pair] = {}
    for (first, then), pair in drawn.items():
        if home[first] != home[then]:
            across.setdefault((home[first], home[then]), pair)
    try:
        steps = closed(numbers, drawn)
        set_ups = closed((set_up.key for set_up in job.set_ups if set_up.operations), across)
    except Circle as circle:
        asked = [drawn.get(pair) or across[pair] for pair in circle.pairs]
        said = "; ".join(
            f"step {numbers[pair.first]} before {numbers[pair.then]} ({pair.title})" for pair in asked
        )
        raise NoOrder(
            f"No order of this plan is right, because its steps ask for each other in a circle: {said}. Mend one of them first"
        ) from circle
    needed = set(steps.needed())
    pairs = sorted(
        (pair for key, pair in drawn.items() if key in needed),
        key=lambda pair: (numbers[pair.then], numbers[pair.first]),
    )
    habits = [
        pair
        for pair in _habits(plan)
        if not steps.before(pair.first, pair.then) and not steps.before(pair.then, pair.first)
    ]
    return Needed(job=job, pairs=tuple(pairs), habits=tuple(habits), steps=steps, set_ups=set_ups)


def _habits(plan: Plan) -> Iterator[Pair]:
    """Better, and never a mistake: heavy cuts before the holes of their
    set-up, a chamfer before its reamer.
    """
    for _, steps in plan.groups():
        for step in steps:
            for other in steps:
                if step.roles.sizes and not step.makes and other.roles.hole in ("ream", "tap"):
                    yield Pair(step.key, other.key, "heavy-cut-before-the-holes")
                elif step.roles.hole == "countersink" and other.roles.hole == "ream":
                    yield Pair(step.key, other.key, "chamfer-before-the-reamer")
