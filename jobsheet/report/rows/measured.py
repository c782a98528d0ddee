"""What is measured in a set-up, with its limits as two figures, and how."""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.tools.measuring import how_in_words
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.quantity import Measured, Size
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import depth_handle
from jobsheet.report.blocks import Measure
from jobsheet.report.heed.set_up_ticks import seated
from jobsheet.report.plan import Plan
from jobsheet.units.show import plain
from jobsheet.units.table import INCH

#: What of a difference goes on the dial, and where, by what a step makes (common practice): a bore grows by twice what its bar
#: is set out, a slot has a wall on either side, a face or a wall is cut on one side only.
_DIAL = {
    "bore": "set the bar out by half of it, dial ___",
    "groove": "set {side} by half of it ___, other wall too",
    "recess": "set {side} by half of it ___, other wall too",
    "wall": "set {side} by all of it ___",
    "flat": "set {down} by all of it ___",
}


def measures_at(plan: Plan, set_up: SetUp, operation: Operation) -> tuple[Measure, ...]:
    """What a step's result is measured by: sizes with blanks, gauges with boxes."""
    size = measured(operation)
    where = f"step {operation.number}, measure"
    if "clamp" in roles(operation).does:
        return (Measure(step=str(operation.number), what="", boxes=(seated(plan, set_up),)),)
    if isinstance(size, Size):
        return (_row(plan, operation, size, where),)
    return tuple(
        Measure(step=str(operation.number), what=plan.short(row.measure, 60, where), boxes=("goes in",))
        for row in plan.reckoned.operations[operation.key].rows
        if row.measure
    )


def measured(operation: Operation) -> Size | None:
    """The size that a step measures; a bore that names none has its own."""
    fields: Any = operation.fields
    size = getattr(fields, "measure", None)
    return size if isinstance(size, Size) else None


def _row(plan: Plan, operation: Operation, size: Size, where: str) -> Measure:
    low, high = limits(size, plan.job.units) if size.nominal else ("", "")
    what = plan.short(size.said, 24 if low else 60, where)
    if not isinstance(size, Measured):
        return Measure(step=str(operation.number), what=what, low=low, high=high)
    return Measure(
        step=str(operation.number),
        what=what,
        low=low,
        high=high,
        how=how_in_words(size) if size.sized else "",
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
    """The two limits with the same number of decimals, in the job's units; one figure where there is no tolerance."""
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
