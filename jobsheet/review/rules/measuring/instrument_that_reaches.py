"""Asks whether a gauge reaches what it is to measure."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.finished.settled import AXIS
from jobsheet.model.finished import Feature
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.quantity import Size
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import with_instrument
from jobsheet.review.plan.as_asked import AsAsked, as_asked, called
from jobsheet.review.plan.asked_limits import SAME, size_of
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.gauges import named
from jobsheet.review.plan.shoulders import across_what_stands
from jobsheet.review.rule import View, remark, rule

#: What closes round a part from outside.
OUTSIDE = "micrometer"
#: What reaches the floor of something instead, and what goes into it: read as finely.
FLOOR, INTO = "depth micrometer", "inside micrometer"
#: What says whether a screw goes in, and nothing else.
THREAD = "thread gauge"


@rule("instrument-that-reaches", "A gauge that reaches", "scrap")
def instrument_that_reaches(view: View) -> Iterator[Remark]:
    """An outside micrometer is named for a depth, for a shoulder, or for the width or diameter of something hollow; or a thread gauge for no thread.

    Quiet where the drawing has an outside size of the same nominal, and where it measures what is left standing, a floor from below.

    Because: An outside micrometer does not reach a floor, a shoulder or the walls of a hole: the size is not measured at all.
    Not so: pocket 5 ±0.05 deep, micrometer
    So: pocket 5 ±0.05 deep, depth micrometer
    From: common practice
    """
    asked = as_asked(view)
    if asked is None:
        return
    outside = _outside(asked.part)
    for step in plan_of(view).steps:
        size = size_of(step)
        if size is not None and named(step) == THREAD and not _is_thread(asked, step, size):
            yield _no_thread(view, asked, step, size)
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


def _is_thread(asked: AsAsked, step: Step, size: Size) -> bool:
    """Whether it is a thread that is measured: where one is cut, or by the size of one on the drawing."""
    threads = [feature.thread.major for _, feature in asked.part.features if feature.thread is not None]
    return step.roles.hole == "tap" or _one_of(size, threads)


def _no_thread(view: View, asked: AsAsked, step: Step, size: Size) -> Remark:
    """A gauge of threads for a size that is none."""
    found = _hollow(asked, size)
    line, instead = (found[0], found[2]) if found is not None else (None, OUTSIDE)
    message = f"A thread gauge says nothing of {size.said}: take {'an' if instead == INTO else 'a'} {instead}"
    return remark(
        view, "instrument-that-reaches", message, step.key, set_up=step.set_up.key, line=line, fix=_fix(step, instead, THREAD),
    )  # fmt: skip


def _hollow(asked: AsAsked, size: Size) -> tuple[int, Feature, str] | None:
    """The line whose depth, diameter or width this is, and what measures it; None where it can as well be something outside."""
    for line, feature in asked.part.features:
        mouth = feature.mouth
        hollow = feature.kind not in ("step", "chamfer")
        depths = (feature.depth, mouth.depth if mouth is not None else None)
        widths = (feature.size, feature.other, feature.length) if hollow else ()
        shoulder = feature.kind == "step"
        if (hollow or shoulder) and _is(size, depths):
            return line, feature, FLOOR
        if shoulder and _is(size, (feature.size,)):
            return line, feature, FLOOR
        if _is(size, widths):
            return line, feature, INTO
    return None


def _outside(part: FinishedPart) -> list[float]:
    """What closes between the jaws of a gauge [m]: the sizes of the whole, and what stands beside and between its steps."""
    sizes = part.shape.sizes if part.shape is not None else (None, None, None)
    found = [size.nominal for size in sizes if size is not None]
    steps = [feature for _, feature in part.features if feature.kind == "step"]
    for feature in steps:
        found += across_what_stands(part, feature)
        whole = sizes[AXIS[feature.face]]
        if whole is not None and feature.depth is not None:
            across = [
                other for other in steps if other.face == OPPOSITE[feature.face] and other.depth is not None
            ]
            found.append(whole.nominal - feature.depth.nominal)
            found += [
                whole.nominal - feature.depth.nominal - other.depth.nominal for other in across if other.depth
            ]
    return found


def _is(size: Size, others: tuple[Size | None, ...]) -> bool:
    return any(other is not None and abs(other.nominal - size.nominal) < SAME for other in others)


def _one_of(size: Size, nominals: list[float]) -> bool:
    return any(abs(nominal - size.nominal) < SAME for nominal in nominals)


def _fix(step: Step, instead: str, taken: str = OUTSIDE) -> Fix | None:
    size = step.fields.measure
    if size.instrument == taken:
        line = with_instrument(size.text, instead)
        return Fix(f"Take {'an' if instead == INTO else 'a'} {instead}", set_field(step.key, "measure", line))
    if getattr(step.fields, "instrument", None) == taken:
        return Fix(
            f"Take {'an' if instead == INTO else 'a'} {instead}", set_field(step.key, "instrument", instead)
        )
    return None
