"""What is measured in a set-up, with its limits as two figures."""

from __future__ import annotations

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.quantity import Size
from jobsheet.report.blocks import Measure
from jobsheet.report.plan import Plan
from jobsheet.units.show import plain
from jobsheet.units.table import INCH


def measures_of(plan: Plan, set_up: SetUp) -> tuple[Measure, ...]:
    """What is measured in this hold: sizes with blanks, gauges with boxes."""
    found = []
    for operation in set_up.operations:
        size = getattr(operation.fields, "measure", None)
        where = f"step {operation.number}, measure"
        if isinstance(size, Size):
            low, high = limits(size, plan.job.units)
            found.append(
                Measure(step=str(operation.number), what=plan.short(size.text, 24, where), low=low, high=high)
            )
            continue
        found += [
            Measure(step=str(operation.number), what=plan.short(row.measure, 40, where), boxes=("goes in",))
            for row in plan.reckoned.operations[operation.key].rows
            if row.measure
        ]
    return tuple(found)


def _limits(operation: Operation, units: str) -> str:
    size = getattr(operation.fields, "measure", None)
    if not isinstance(size, Size):
        return ""
    low, high = limits(size, units)
    return f"{low} to {high}" if high else low


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
