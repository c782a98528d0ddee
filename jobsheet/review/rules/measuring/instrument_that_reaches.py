"""Asks whether a gauge reaches what it is to measure."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.finished import Feature
from jobsheet.model.quantity import Size
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.as_asked import AsAsked, as_asked, called
from jobsheet.review.plan.asked_limits import SAME, size_of
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.gauges import named
from jobsheet.review.rule import View, remark, rule

#: What closes round a part from outside.
OUTSIDE = "micrometer"
#: What reaches the floor of something instead, and what goes into it: read as finely.
FLOOR, INTO = "depth micrometer", "inside micrometer"


@rule("instrument-that-reaches", "A gauge that reaches", "scrap")
def instrument_that_reaches(view: View) -> Iterator[Remark]:
    """An outside micrometer is named for a depth, or for the width or diameter of something hollow.

    Quiet where the drawing has an outside size of the same nominal, and where it measures what is left standing, a floor from below.

    Because: An outside micrometer does not reach a floor or the walls of a hole: the size is not measured at all.
    Not so: pocket 5 ±0.05 deep, micrometer
    So: pocket 5 ±0.05 deep, depth micrometer
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    outside = [
        size.nominal
        for size in (asked.part.shape.sizes if asked.part.shape is not None else ())
        if size is not None
    ]
    for step in plan_of(view).steps:
        size = size_of(step)
        if size is None or named(step) != OUTSIDE or _one_of(size, outside):
            continue
        found = _hollow(asked, size)
        if found is None:
            continue
        line, feature, instead = found
        message = f"A micrometer does not reach {size.said} of {called(line, feature)}: take {'an' if instead == INTO else 'a'} {instead}"
        yield remark(
            view, "instrument-that-reaches", message, step.key, set_up=step.set_up.key, line=line, fix=_fix(step, instead),
        )  # fmt: skip


def _hollow(asked: AsAsked, size: Size) -> tuple[int, Feature, str] | None:
    """The line whose depth, diameter or width this is, and what measures it; None where it can as well be something outside."""
    for line, feature in asked.part.features:
        mouth = feature.mouth
        hollow = feature.kind not in ("step", "chamfer")
        depths = (feature.depth, mouth.depth if mouth is not None else None)
        widths = (feature.size, feature.other, feature.length) if hollow else ()
        if hollow and _is(size, depths):
            return line, feature, FLOOR
        if _is(size, widths):
            return line, feature, INTO
    return None


def _is(size: Size, others: tuple[Size | None, ...]) -> bool:
    return any(one is not None and abs(one.nominal - size.nominal) < SAME for one in others)


def _one_of(size: Size, nominals: list[float]) -> bool:
    return any(abs(one - size.nominal) < SAME for one in nominals)


def _fix(step: Step, instead: str) -> Fix | None:
    size = step.fields.measure
    if size.instrument == OUTSIDE:
        line = size.text.replace(OUTSIDE, instead)
        return Fix(f"Take {'an' if instead == INTO else 'a'} {instead}", set_field(step.key, "measure", line))
    if getattr(step.fields, "instrument", None) == OUTSIDE:
        return Fix(
            f"Take {'an' if instead == INTO else 'a'} {instead}", set_field(step.key, "instrument", instead)
        )
    return None
