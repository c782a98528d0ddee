"""Asks whether a keyway in a shaft lies where the drawing has it, as long, as wide and as deep."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.finished import Feature
from jobsheet.model.quantity import Size
from jobsheet.model.remark import Remark
from jobsheet.review.plan.as_asked import AsAsked, as_asked, called
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.against_part import AGREES
from jobsheet.stages.as_drawn import ends_on, part_box
from jobsheet.stages.floors import from_corner

_BY_HAND = "look at start, length, depth and cutter of the step, at the zero, and at the places of the line"


@rule("keyway-of-a-shaft", "Keyways of a shaft as drawn", "scrap")
def keyway_of_a_shaft(view: View) -> Iterator[Remark]:
    """A keyway in a shaft is not milled, or lies beside its place, or is longer, shorter, deeper, shallower or of another width.

    Because: The hub goes on to where the key is, and there it stops.
    Not so: from 19 to 43 on the drawing, first centre at 29
    So: first centre at 19, 32 long over the round ends of an 8 wide keyway
    From: the lines of the drawing and the steps
    """
    asked = as_asked(view)
    if asked is None:
        return
    for line, feature in asked.part.features:
        if feature.shaft is None:  # a shaft is said of a keyway alone
            continue
        steps = [
            step
            for step in asked.plan.steps
            if step.cuts and step.roles.mills == "groove" and step.lie.up == feature.face
        ]
        found = [_wrong(asked, step, feature, view.job.units) for step in steps]
        if found and not all(found):
            continue
        wrong = min((one for one in found if one), default=(0.0, "no step mills it"))
        step = steps[found.index(wrong)] if found else None
        keys, set_up = ((step.key,), step.set_up.key) if step is not None else ((), "")
        yield remark(
            view,
            "keyway-of-a-shaft",
            f"{called(line, feature)}: {wrong[1]}",
            *keys,
            set_up=set_up,
            line=line,
            by_hand=_BY_HAND,
        )


def _wrong(asked: AsAsked, step: Step, feature: Feature, units: str) -> tuple[float, str] | None:
    """How far a groove is from the line [m], and in which way first; nothing where it is as drawn."""
    groove, shape = step.cut.shapes[0], step.cut.shapes[0].shape
    width = shape.width  # type: ignore[union-attr]
    ends = ends_on(feature, part_box(asked.plan.steps[-1].cut.after.box, asked.part))
    if ends is not None:
        one, other = sorted(from_corner(step.lie, point) for point in ends)
        out = [
            abs(a - b)
            for end, made in zip((one, other), sorted(groove.corners), strict=True)
            for a, b in zip(end, made, strict=True)
        ]
        within = feature.within or AGREES
        if max(out) > within + 1e-9:
            return max(out), f"made {fine(max(out), units)} beside its place at one end or both"
    elif feature.length is not None:
        long = math.dist(*groove.corners) + (0.0 if feature.over_all is False else width)
        off = _off(asked, feature.length, long)
        if off:
            return abs(off), f"it comes out {fine(long, units)} long"
    off = _off(asked, feature.size, width)
    if off and not any(
        other.roles.mills == "wall" for other in asked.plan.steps if other.lie.up == feature.face
    ):
        return abs(off), f"it comes out {fine(width, units)} wide"
    off = _off(asked, feature.depth, groove.depth or 0.0)
    deep = "deep" if off > 0 else "shallow"
    return (abs(off), f"it comes out {fine(abs(off), units)} too {deep}") if off else None


def _off(asked: AsAsked, size: Size | None, made: float) -> float:
    """By how much a size is beyond its limits [m]; 0 within them."""
    if size is None:
        return 0.0
    low, high = asked.part.limits(size) or (size.nominal - AGREES, size.nominal + AGREES)
    return min(0.0, made - low + 1e-9) or max(0.0, made - high - 1e-9)
