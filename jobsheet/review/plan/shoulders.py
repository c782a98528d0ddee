"""Shoulders: steps cut along a side that leave a floor, and the sizes across what stands between them."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.finished.settled import AXIS
from jobsheet.model.finished import Feature
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.shape import Edge
from jobsheet.review.plan.faces import Step
from jobsheet.stages.course import NEAR

_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}


def shoulders(step: Step) -> Iterator[tuple[str, float]]:
    """Each shoulder that a step cuts: the face of the part at whose side it lies, and how wide it is [m]."""
    for sized in step.cut.shapes:
        shape = sized.shape
        if isinstance(shape, Edge) and shape.depth < step.lie.size[2] - NEAR:
            yield getattr(step.lie, _SIDES[shape.side]), shape.width


def opposite_of_shoulder(step: Step) -> tuple[str, ...]:
    """The faces across from the shoulders of a step."""
    return tuple(OPPOSITE[face] for face, _ in shoulders(step))


def across_what_stands(part: FinishedPart, feature: Feature) -> tuple[float, ...]:
    """What can be measured of a step of the drawing in place of its width: from its wall to the far
    face, or to the shoulder there [m].

    Nothing where the size of the whole is not said.
    """
    shape = part.shape
    if feature.kind != "step" or shape is None or feature.size is None or not feature.opens:
        return ()
    side = feature.opens[0]
    size = shape.sizes[AXIS[side]]
    if size is None:
        return ()
    left = size.nominal - feature.size.nominal
    over = (
        left - other.size.nominal
        for _, other in part.features
        if other.kind == "step"
        and other.face == feature.face
        and other.opens == (OPPOSITE[side],)
        and other.size is not None
    )
    return (left, *over)
