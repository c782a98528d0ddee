"""Asks whether a plastic is cool when it is measured."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.faces import Step, plan_of, width_of_limits
from jobsheet.review.plan.gauges import measures
from jobsheet.review.plan.held import does
from jobsheet.review.rule import View, remark, rule

#: Growth of plastics [1/K]: acetal and nylon, rounded (from memory of makers'
#: data sheets: 80 to 120 millionths).
GROWTH = 100e-6
#: A cut warms a plastic by so much [K]: it carries no heat away (common practice, no source).
WARMER = 20.0
#: A cut that takes so much of the work warms it through (common practice, no source).
HEAVY = 0.05
#: So much of the limits may be growth (common practice, no source).
SHARE = 0.2


@rule("cool-before-measuring", "Plastics measured cool", "scrap")
def cool_before_measuring(view: View) -> Iterator[Remark]:
    """A plastic is measured straight behind cuts that take a twentieth of it or more, and its growth is a good part of the limits.

    Quiet where a step waits until it is cool.

    Because: Plastics grow ten times as much as steel and keep the heat: what is to size warm is too small when it is cold.
    Not so: mill both sides of a rib in acetal, measure 24 ±0.1
    So: mill both sides, let it cool, measure 24 ±0.1
    From: common practice; growth from memory of data sheets
    """
    for set_up, steps in plan_of(view).groups():
        warm = 0.0
        for step in steps:
            if does(step.operation, "cool"):
                warm = 0.0
            if step.setting.material.family != "plastic":
                continue
            if measures(step) and not step.cuts and warm >= HEAVY and _grows(step):
                message = f"Let it cool before you measure {step.fields.measure.said}: it is warm from the cuts, and plastics grow"
                texts = {"does": "cool", "minutes": "15 min"}
                yield remark(
                    view, "cool-before-measuring", message, step.key, set_up=set_up.key,
                    fix=Fix(f"Wait before {step.number}", added_before(step.key, written.BENCH, texts)),
                )  # fmt: skip
                break
            warm += _share(step)


def _share(step: Step) -> float:
    """How much of the work a step takes away."""
    along, across, high = step.lie.size
    volume = step.figure("volume") if step.cuts else None
    return (volume or 0.0) / (along * across * high)


def _grows(step: Step) -> bool:
    width = width_of_limits(step)
    return width is not None and step.fields.measure.nominal * GROWTH * WARMER > SHARE * width
