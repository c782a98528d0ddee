"""What is measured in a set-up, with its limits as two figures, and how."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from jobsheet.catalog.tools.measuring import how_in_words
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Measured, Size
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import depth_handle, millimetres
from jobsheet.report.blocks import Measure
from jobsheet.report.dial_words import in_words
from jobsheet.report.heed.set_up_ticks import seated
from jobsheet.report.plan import Course, Plan
from jobsheet.report.points import numbers_of, places_of
from jobsheet.units.show import plain
from jobsheet.units.table import INCH

#: What of a difference goes on the dial, and where, by what a step makes (common practice): a bore grows by
#: twice what its bar is set out, a slot has a wall on either side, a face or a wall is cut on one side only.
_DIAL = {
    "bore": "set the bar out by half of it, dial ___",
    "groove": "set {side} by half of it ___, other wall too",
    "recess": "set {side} by half of it ___, other wall too",
    "wall": "set {side} by all of it ___",
    "flat": "set {down} by all of it ___",
}


def measures_at(plan: Plan, course: Course, operation: Operation) -> tuple[Measure, ...]:
    """What a step's result is measured by: sizes with blanks, gauges, squareness and places with boxes."""
    size = measured(operation)
    where = f"step {operation.number}, measure"
    step = str(operation.number)
    if "clamp" in roles(operation).does:
        return (Measure(step=step, what="", boxes=(seated(plan, course.set_up),)),)
    measures: list[Measure] = []
    if isinstance(size, Size):
        measures.append(_row(plan, operation, size, where))
    else:
        measures += [
            Measure(step=step, what=plan.short(row.measure, 60, where), boxes=("goes in",))
            for row in plan.reckoned.operations[operation.key].rows
            if row.measure
        ]
    boxes = (*_asked(plan, operation, size), *_places(plan, course, operation))
    if not boxes:
        return tuple(measures)
    if measures and not measures[-1].again and not (measures[-1].low and not measures[-1].boxes):
        return (*measures[:-1], replace(measures[-1], boxes=(*measures[-1].boxes, *boxes)))
    return (*measures, Measure(step=step, what="", boxes=boxes))


def _asked(plan: Plan, operation: Operation, size: Size | None) -> tuple[str, ...]:
    """Squareness, places and their like that are asked with a size or beside it, each a
    box: `square to A within 0.03 mm`.
    """
    units = plan.job.units
    asks = size.asks if isinstance(size, Measured) else ()
    beside = getattr(operation.fields, "tolerances", None)
    asks += tuple(
        (name, value, "")
        for name in ("square", "parallel", "flat")
        if (value := getattr(beside, name, None)) is not None and name not in {one for one, _, _ in asks}
    )
    return tuple(
        f"{name} {f'to {to} ' if to else ''}within {' '.join(millimetres(value, units))}"
        for name, value, to in asks
    )


def _places(plan: Plan, course: Course, operation: Operation) -> tuple[str, ...]:
    """The places of holes that have a tolerance of their own, at the last step that goes there:
    before it nothing is to be measured.
    """
    spots = {place.spot for place in places_of(operation)}
    if not spots or roles(operation).hole == "spot":
        return ()
    own = course.set_up.operations
    there = [other for other in own if spots & {place.spot for place in places_of(other)}]
    # A hole's tolerance may be said at any of the steps that cut it; the closest holds.
    asked = [one for step in there if (one := getattr(step.fields, "within", None)) is not None]
    if there[-1] is not operation or not asked:
        return ()
    within = min(asked, key=lambda one: one.value)
    where = in_words(numbers_of(operation, course.points))
    return (f"{where} in place, ±{' '.join(millimetres(within.value, plan.job.units))}",)


def measured(operation: Operation) -> Size | None:
    """The size that a step measures; a bore that names none has its own."""
    fields: Any = operation.fields
    size = getattr(fields, "measure", None)
    return size if isinstance(size, Size) else None


def named(size: Size) -> str:
    """A size as its row names it; what has boxes of its own is not said twice."""
    return "" if isinstance(size, Measured) and size.asks and not size.sized else size.said


def _row(plan: Plan, operation: Operation, size: Size, where: str) -> Measure:
    low, high = limits(size, plan.job.units) if size.nominal else ("", "")
    said = named(size)
    what = plan.short(said, 24 if low else 60, where)
    if not isinstance(size, Measured):
        return Measure(step=str(operation.number), what=what, low=low, high=high)
    return Measure(
        step=str(operation.number),
        what=what,
        low=low,
        high=high,
        how=how_in_words(replace(size, asks=())) if size.sized or size.asks else "",
        boxes=("goes", "does not go") if size.goes else (),
        again=_again(plan, operation) if size.between or (high and _made(operation)) else "",
    )


def _made(operation: Operation) -> str:
    """What a step cuts whose size can still be brought nearer with the next cut; empty for any other step."""
    plays = roles(operation)
    made = "bore" if plays.hole == "bore" else plays.mills
    return made if made in _DIAL else ""


def _again(plan: Plan, operation: Operation) -> str:
    """What is written down between two cuts: found, still to take, and which dial goes where then."""
    down = depth_handle(plan.card)
    side = getattr(operation.fields, "side", "")
    handle = {"left": "X", "right": "X", "front": "Y", "rear": "Y"}.get(side, "the dial")
    dial = _DIAL.get(_made(operation), "set ___").format(side=handle, down=down.name if down else "the depth")
    return f"found ___ take ___ more, {dial}"


def limits(size: Size, units: str) -> tuple[str, str]:
    """The two limits with the same number of decimals, in the job's units; one
    figure where there is no tolerance.
    """
    factor, most = (1 / INCH, 5) if units == "in" else (1e3, 4)
    low, high = size.low * factor, size.high * factor
    decimals = next(
        (
            count
            for count in range(most)
            if all(abs(round(value, count) - value) < 10**-most / 2 for value in (low, high))
        ),
        most,
    )
    if units == "in":
        decimals = max(decimals, 3)
    return plain(low, decimals), "" if size.low == size.high else plain(high, decimals)
