"""What is measured in a set-up, with its limits as two figures, and how."""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.tools.measuring import how_in_words
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.quantity import Measured, Size
from jobsheet.operations.registry import roles
from jobsheet.report.blocks import Measure
from jobsheet.report.plan import Plan
from jobsheet.units.show import plain
from jobsheet.units.table import INCH

#: What of a difference goes on the dial, and where, by what a step makes (common practice): a bore grows by twice what its bar
#: is set out, a slot has a wall on either side, a face or a wall is cut on one side only.
_DIAL = {
    "bore": "dial now ___ + half = ___, boring head outwards",
    "groove": "dial now ___ + half = ___, then as much on the other wall",
    "recess": "dial now ___ + half = ___, then as much on the other wall",
    "wall": "dial now ___ + all of it = ___, into this wall",
    "flat": "dial now ___ + all of it = ___, down",
}


def measures_of(plan: Plan, set_up: SetUp) -> tuple[Measure, ...]:
    """What is measured in this hold: sizes with blanks, gauges with boxes."""
    found: list[Measure] = []
    for operation in set_up.operations:
        size = measured(operation)
        where = f"step {operation.number}, measure"
        if isinstance(size, Size):
            found.append(_row(plan, operation, size, where))
            continue
        found += [
            Measure(step=str(operation.number), what=plan.short(row.measure, 40, where), boxes=("goes in",))
            for row in plan.reckoned.operations[operation.key].rows
            if row.measure
        ]
    return tuple(found)


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
        again=_again(operation) if size.between else "",
    )


def _again(operation: Operation) -> str:
    """What is written down between two cuts: found, still to take, and where the dial goes then."""
    plays = roles(operation)
    made = "bore" if plays.hole == "bore" else plays.mills
    dial = _DIAL.get(made or "", "dial now ___ then ___")
    return f"found ___, still to take ___; {dial}"


def _limits(operation: Operation, units: str) -> str:
    size = measured(operation)
    if size is None or not size.nominal:
        return size.said if size is not None else ""
    low, high = limits(size, units)
    return f"{low} to {high}" if high else low


def words(operation: Operation, units: str) -> str:
    """What a step's row says of it: `39.97 to 40.03, micrometer, before unclamping`."""
    size = measured(operation)
    how = how_in_words(size) if isinstance(size, Measured) and size.sized else ""
    return ", ".join(part for part in (_limits(operation, units), how) if part)


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
