"""How the work sits in jaws: how long it is along them, what hangs over each end, what stands
above, which cuts go along an end.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.holdings.placed import above_jaws, in_jaws, vice_of
from jobsheet.model.job import SetUp
from jobsheet.model.machine import Vice
from jobsheet.model.shape import Edge
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.held import size


class Sits(Struct, frozen=True, kw_only=True):
    """Sizes along and across the jaws [m]. `over` has what hangs over at the left and right
    as said, `least` what must at least.
    """

    long: float
    wide: float
    vice: Vice | None
    over: tuple[float | None, float | None]
    least: tuple[float, float]
    above: float | None
    ends: tuple[str, str]

    @property
    def held(self) -> float:
        """How much of it the jaws hold [m], where what is not said hangs over as little as it can."""
        return max(self.long - sum(self.least), 0.0)


def sits(set_up: SetUp, first: Step) -> Sits | None:
    """How it sits as the set-up begins; None where no jaws hold it."""
    lie = first.lie
    if not in_jaws(set_up, lie):
        return None
    run = 0 if lie.side(set_up.fixed_jaw) in ("near", "far") else 1
    long, wide = lie.size[run], lie.size[1 - run]
    vice = vice_of(set_up.holding, first.setting.machine)
    left, right = size(set_up, "over_left"), size(set_up, "over_right")
    spare = max(long - vice.jaw_width, 0.0) if vice is not None else 0.0
    least = (
        left if left is not None else max(spare - right, 0.0) if right is not None else spare / 2,
        right if right is not None else max(spare - left, 0.0) if left is not None else spare / 2,
    )
    return Sits(
        long=long, wide=wide, vice=vice, over=(left, right), least=least,
        above=above_jaws(set_up, lie, first.setting.machine), ends=("left", "right") if run == 0 else ("front", "rear"),
    )  # fmt: skip


def jaw_cuts(found: Sits, first: Step, steps: tuple[Step, ...]) -> Iterator[tuple[Step, str, float]]:
    """Walls along a jaw: the step, its side, how deep from the top as the set-up began [m]."""
    for step in steps:
        lowered = first.lie.size[2] - step.lie.size[2]
        for sized in step.cut.shapes:
            shape = sized.shape
            if isinstance(shape, Edge) and shape.side not in found.ends:
                yield step, shape.side, shape.depth + lowered


def end_cuts(found: Sits, first: Step, steps: tuple[Step, ...]) -> Iterator[tuple[Step, int, float, float]]:
    """Walls along an end: the step, which end (0 left, 1 right), how wide and how deep
    from the top as the set-up began [m].
    """
    for step in steps:
        lowered = first.lie.size[2] - step.lie.size[2]
        for sized in step.cut.shapes:
            shape = sized.shape
            if isinstance(shape, Edge) and shape.side in found.ends:
                yield step, found.ends.index(shape.side), shape.width, shape.depth + lowered
