"""Tools for a mend: one that the workshop has where there is one, else its size in plain words."""

from __future__ import annotations

from jobsheet.errors import DocumentError
from jobsheet.model.job import Job
from jobsheet.review.plan.lengths import length
from jobsheet.storage.cabinet_file import cabinet_for

_ROUNDING = 1e-7


def at_hand(job: Job, kind: str, low: float, high: float) -> tuple[tuple[float, str], ...]:
    """Diameter [m] and line of every tool of that kind in the job's cabinet
    between two sizes, from small to large.
    """
    try:
        cabinet = cabinet_for(job.workshop)
    except DocumentError:
        return ()  # said by in-the-cabinet
    if cabinet is None:
        return ()
    found = [
        (thing.cutter.diameter, thing.line)
        for thing in cabinet.things
        if thing.here
        and thing.cutter is not None
        and thing.cutter.kind == kind
        and thing.cutter.diameter is not None
        and low - _ROUNDING <= thing.cutter.diameter <= high + _ROUNDING
    ]
    return tuple(sorted(found))


def drill_named(name: str, units: str) -> str:
    """The size of a drill from its table as a job in these units has it: the bare number of a metric one would be inches."""
    return f"{name} mm" if units == "in" and name.replace(".", "").isdecimal() else name


def drill_near(job: Job, wanted: float, low: float, high: float) -> tuple[float, str]:
    """The drill of the cabinet nearest to a size within bounds, else one as it is
    sold: diameter [m] and line.
    """
    found = at_hand(job, "drill", low, high)
    if found:
        return min(found, key=lambda one: abs(one[0] - wanted))
    return drill_sold(wanted, low, high, job.units)


def drill_sold(wanted: float, low: float, high: float, units: str) -> tuple[float, str]:
    """A drill of that very size in millimetres; in an inch job the fraction nearest to it
    within bounds, else the letter or number, else that size.
    """
    if units == "in":
        from jobsheet.catalog.tools.drill_sets import drills_between

        sold = [drill_size for drill_size in drills_between(low, high) if drill_size.set != "metric"]
        near = min(
            sold,
            key=lambda drill_size: (drill_size.set != "fractional", abs(drill_size.diameter - wanted)),
            default=None,
        )
        if near is not None:
            return near.diameter, f"drill {near.name}"
    return wanted, f"drill {length(wanted, units)}"
