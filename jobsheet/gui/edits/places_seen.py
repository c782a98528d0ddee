"""The places of a step from above, as its set-up lies and counts: for the picture beside the rows."""

from __future__ import annotations

from jobsheet.gui.margin.plan_view import Plan
from jobsheet.gui.strip.stage_blocks import held
from jobsheet.model.job import Job
from jobsheet.model.quantity import Places


def plan_of(job: Job, key: str) -> Plan | None:
    """The picture of a step; none where it has no places."""
    set_up, operation = job.find(key)
    places = getattr(operation.fields, "at", None)
    if not isinstance(places, Places):
        return None
    length, width, _ = held(job, set_up)
    zero = set_up.zero
    x0 = 0.0 if zero.x_from == "left" else length
    y0 = 0.0 if zero.y_from == "front" else width
    right = 1.0 if zero.x_counts == "right" else -1.0
    away = 1.0 if zero.y_counts == "away" else -1.0
    points = tuple((x0 + right * place.x.value, y0 + away * place.y.value) for place in places.points)
    return Plan(length, width, (x0, y0), points)
