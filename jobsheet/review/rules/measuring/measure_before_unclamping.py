"""Asks whether a size is measured while it can still be put right."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.tools.measuring import AFTER, BEFORE
from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.manners import MEASURED, TO_SIZE
from jobsheet.review.mending.fixes import added_after, moved_before
from jobsheet.review.plan.faces import Step, plan_of, width_of_limits
from jobsheet.review.plan.gauges import measures, named
from jobsheet.review.plan.held import does, how
from jobsheet.review.rule import View, remark, rule


@rule("measure-before-unclamping", "Measure before unclamping", "scrap")
def measure_before_unclamping(view: View) -> Iterator[Remark]:
    """A step makes a size with limits, names no gauge, and nothing measures before the work is taken out or the set-up ends.

    Also where the step says itself that its limits are measured after unclamping, or close ones are by another. Quiet where the step names a gauge or says that it is measured in place.

    Because: Here it can still be put right in the same hold.
    Not so: mill the edge to 60 ±0.1, unclamp
    So: mill the edge to 60 ±0.1, measure, unclamp
    From: common practice
    """
    close = view.reckoned.shop.close_limits
    for set_up, steps in plan_of(view).groups():
        for index, step in enumerate(steps):
            if width_of_limits(step) is None or not (step.cuts or measures(step)):
                continue
            if _too_late(steps, step, close):
                size = step.fields.measure.said
                message = (
                    f"Measure {size} before you unclamp: afterwards it is not cut again in the same hold"
                )
                yield remark(
                    view, "measure-before-unclamping", message, step.key, set_up=set_up.key,
                    by_hand=f"write {BEFORE} under Measure, or leave out {AFTER}",
                )  # fmt: skip
                continue
            if (
                not step.cuts
                or named(step)
                or how(step.operation, MEASURED, TO_SIZE)
                or any(measures(step) for step in _still_held(steps[index + 1 :]))
            ):
                continue
            size = step.fields.measure.said
            message = f"Measure now, before you unclamp: {size} is made here, and nothing measures it in this set-up"
            texts = {"does": "measure", "measure": size, "minutes": "2 min"}
            fix = Fix(f"Measure behind {step.number}", added_after(step.key, written.BENCH, texts))
            yield remark(view, "measure-before-unclamping", message, step.key, fix=fix, set_up=set_up.key)
        yield from _only_when_out(view, set_up, steps)


def _too_late(steps: tuple[Step, ...], step: Step, close: float) -> bool:
    """Whether the size it cuts, or a close one it measures, is measured when the work is out, and nothing measured it in this set-up before."""
    if not _after(step):
        return False
    if step.cuts:
        return True
    before = [other for other in steps if other.index < step.index]
    return (
        (width_of_limits(step) or 0.0) <= close + 1e-9
        and any(other.cuts for other in before)
        and not any(_same(other, step) and not _after(other) for other in before)
    )


def _same(step: Step, other: Step) -> bool:
    size, asked = getattr(step.fields, "measure", None), other.fields.measure
    return size is not None and abs(size.nominal - asked.nominal) < 1e-6


def _after(step: Step) -> bool:
    """Whether its size is said to be measured when the work is out."""
    return getattr(step.fields.measure, "when", "") == AFTER


def _only_when_out(view: View, set_up: SetUp, steps: tuple[Step, ...]) -> Iterator[Remark]:
    """A size with limits that is measured after the work was taken out, and by no step before."""
    held = _still_held(steps)
    if len(held) == len(steps) or not any(step.cuts for step in held) or any(measures(step) for step in held):
        return
    late = next((step for step in steps[len(held) :] if measures(step)), None)
    asked = getattr(late.fields, "measure", None) if late is not None else None
    if (
        late is None
        or asked is None
        or asked.high <= asked.low
        or any(step.cuts for step in steps[len(held) : late.index])
    ):
        return
    message = f"Measure before it is taken out: {asked.said} is measured only when it can no longer be cut in the same hold"
    fix = Fix(f"Move {late.number} before {held[-1].number}", moved_before(late.key, held[-1].key))
    yield remark(view, "measure-before-unclamping", message, late.key, fix=fix, set_up=set_up.key)


def _still_held(steps: tuple[Step, ...]) -> tuple[Step, ...]:
    """The steps until the work is taken out, that one too."""
    out = next((index for index, step in enumerate(steps) if does(step.operation, "take out")), len(steps))
    return steps[: out + 1]
