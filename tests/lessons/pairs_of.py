"""What a maker of pairs is given of a plan."""

from __future__ import annotations

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.rule import View


def looked_at(job):
    """What a maker of pairs is given: how the review sees the plan, its steps, its holes."""
    reckoned = Reckoner().reckon(job)
    view = View(reckoned.job, reckoned)
    plan = plan_of(view)
    return view, plan, holes_of(reckoned)
