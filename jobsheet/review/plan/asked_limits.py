"""Sizes of the drawing that have limits of their own: which step makes each
last, and which step measures it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jobsheet.model.finished import SIZES, Feature
from jobsheet.model.quantity import Size
from jobsheet.operations.manners import MEASURED, TO_SIZE
from jobsheet.review.plan.as_asked import AsAsked, as_asked, called
from jobsheet.review.plan.faces import Step, measured_across
from jobsheet.review.plan.gauges import named
from jobsheet.review.plan.held import does, how
from jobsheet.review.plan.shoulders import across_what_stands
from jobsheet.review.rule import View

#: Sizes that differ by less are one [m].
SAME = 1e-6


class Limited(Struct, frozen=True, kw_only=True):
    """A size with limits: what it is called, its line, and the steps that make it, in order."""

    called: str
    line: int
    size: Size
    steps: tuple[Step, ...]
    #: What can be measured in its place: what is left standing beside a step of the drawing [m].
    instead: tuple[float, ...] = ()

    @property
    def width(self) -> float:
        """How wide the limits are [m]."""
        return self.size.high - self.size.low


def limited(asked: AsAsked) -> Iterator[Limited]:
    """Every size with limits of its own that a step makes and that is not out: of the whole, diameters
    of holes, widths of what is milled.
    """
    shape = asked.part.shape
    for axis, size in enumerate(shape.sizes if shape is not None else ()):
        size_found = asked.size(axis)
        if (
            size is not None
            and _has_limits(size)
            and size_found is not None
            and size_found.steps
            and not size_found.out
        ):
            steps = asked.steps(size_found.steps)
            yield Limited(called=f"the {SIZES[axis]} {size.text.strip()}", line=0, size=size, steps=steps)
    for line, feature in asked.part.features:
        if feature.kind == "chamfer" or feature.thread is not None or not _has_limits(feature.size):
            continue
        steps = _makers(asked, line, feature)
        if steps and feature.size is not None:
            instead = across_what_stands(asked.part, feature)
            yield Limited(
                called=called(line, feature), line=line, size=feature.size, steps=steps, instead=instead
            )


def asked_sizes(asked: AsAsked) -> Iterator[tuple[Size, tuple[Step, ...]]]:
    """Every size that the drawing has, with the steps that make it, in order: of the whole, widths,
    diameters, depths, lengths, mouths.
    """
    shape = asked.part.shape
    for axis, size in enumerate(shape.sizes if shape is not None else ()):
        size_found = asked.size(axis)
        if size is not None and size_found is not None:
            yield size, asked.steps(size_found.steps)
    for line, feature in asked.part.features:
        steps = _makers(asked, line, feature)
        mouth = feature.mouth
        sizes = (
            feature.size,
            feature.other,
            feature.depth,
            feature.length,
            *((mouth.size, mouth.depth) if mouth is not None else ()),
        )
        yield from ((size, steps) for size in sizes if size is not None)


def _has_limits(size: Size | None) -> bool:
    return size is not None and size.high > size.low


def _makers(asked: AsAsked, line: int, feature: Feature) -> tuple[Step, ...]:
    """The steps that make a feature: of a hole what works at its places, else what mills into its face."""
    if feature.kind == "hole":
        keys = {
            key for hole_found in asked.found.holes if hole_found.line == line for key in hole_found.steps
        }
        return asked.steps(tuple(keys))
    return tuple(
        step
        for step in asked.plan.steps
        if step.cuts
        and step.roles.mills in ("groove", "recess", "wall")
        and not step.makes
        and step.lie.up == feature.face
    )


def size_of(step: Step) -> Any:
    """The size that a step names, or None."""
    size = getattr(step.fields, "measure", None)
    return size if size is not None and size.nominal else None


def names(step: Step, one: Limited) -> bool:
    """Whether a step names that size as its own."""
    size = size_of(step)
    if size is None or abs(size.nominal - one.size.nominal) > SAME:
        return False
    return one.line > 0 or step.roles.beside == "bench" or step in one.steps


def _stands_for(step: Step, one: Limited) -> bool:
    """Whether a step measures what is left standing beside it instead, once it is cut."""
    size = size_of(step)
    return (
        size is not None
        and step.index >= one.steps[0].index
        and any(abs(size.nominal - other) < SAME for other in one.instead)
    )


def measures_all(step: Step) -> bool:
    """Whether it measures without saying which size: then all that is made by then."""
    return does(step.operation, "measure") and size_of(step) is None


def measured_by(asked: AsAsked, one: Limited) -> tuple[Step, ...]:
    """The steps that measure a size, in order: those that name it, that gauge what they
    make, or that measure what is there.
    """
    last = one.steps[-1].index
    own = [step for step in one.steps if named(step) or how(step.operation, MEASURED, TO_SIZE)]
    return tuple(
        step
        for step in asked.plan.steps
        if names(step, one)
        or step in own
        or _stands_for(step, one)
        or (step.index > last and measures_all(step))
    )


def last_size(one: Limited) -> tuple[Step, Any] | None:
    """The last step that names a size where this one is made, with that size; None where none does."""
    for step in reversed(one.steps):
        size = size_of(step)
        if size is None or (one.line == 0 and measured_across(step) is None):
            continue
        if one.line == 0 or abs(size.nominal - one.size.nominal) < 0.1 * one.size.nominal:
            return step, size
    return None


def closest_unnamed(view: View) -> dict[str, float]:
    """By the steps that measure without saying what: how wide the closest limits
    are that they alone measure [m].
    """
    asked = as_asked(view)
    found: dict[str, float] = {}
    for one in limited(asked) if asked is not None else ():
        by = measured_by(asked, one)  # type: ignore[arg-type]
        if by and all(measures_all(step) for step in by):
            for step in by:
                found[step.key] = min(found.get(step.key, one.width), one.width)
    return found
