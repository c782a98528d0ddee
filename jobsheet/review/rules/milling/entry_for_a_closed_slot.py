"""Asks how the cutter gets into a slot or pocket that is closed all round."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import RAMP, TO_CENTRE
from jobsheet.review.mending.added_hole import drilled_before
from jobsheet.review.mending.at_hand import drill_near
from jobsheet.review.plan.cuts import hole_within, outline
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import how
from jobsheet.review.plan.lengths import length, place_text
from jobsheet.review.rule import View, remark, rule

#: A hole of this share of the cutter lets it in (sequencing rules, the row of this rule).
SHARE = 0.8


@rule("entry-for-a-closed-slot", "An entry for a closed slot", "scrap")
def entry_for_a_closed_slot(view: View) -> Iterator[Remark]:
    """A closed slot, pocket or window is cut with a cutter that has no teeth at its centre, and nothing lets it in.

    Quiet where the start is open to an edge, where a ramp is entered, with slot drills and a cutter that is said to cut to its centre,
    and behind a hole of eight tenths of the cutter at its start.

    Because: An end mill without centre teeth cannot plunge.
    Not so: window from solid with a 4-flute end mill
    So: a hole drilled for it first
    From: common practice
    """
    plan = plan_of(view)
    for step in plan.steps:
        if not step.roles.closed:
            continue
        cutter = step.fields.cutter
        if not cutter.diameter or cutter.kind != "end mill" or cutter.teeth is None or cutter.teeth < 4:
            continue
        if how(step.operation, RAMP, TO_CENTRE):
            continue
        if hole_within(plan, step, SHARE * cutter.diameter):
            continue
        message = f"Drill an entry hole or use a centre-cutting cutter: nothing at its start is wide enough for {length(cutter.diameter, view.job.units)}"
        yield remark(
            view,
            "entry-for-a-closed-slot",
            message,
            step.key,
            fix=_entry(view.job, plan.steps, step),
            set_up=step.set_up.key,
        )


def _entry(job: Job, steps: tuple[Step, ...], step: Step) -> Fix | None:
    """A hole nine tenths of the cutter at the start, opened where a smaller one is there already."""
    ends = outline(step)
    if not ends:
        return None
    at = ends[0]
    there = [
        (place, other.fields.cutter.diameter)
        for other in steps[: step.index]
        if other.set_up.key == step.set_up.key and other.roles.hole == "drill"
        for place in other.fields.at
        if step.roles.mills == "recess" and _off_centre(place.x.value, place.y.value, step)
    ]
    if there:
        at = (there[-1][0].x.value, there[-1][0].y.value)
    diameter = step.fields.cutter.diameter
    wanted = max(1.0, math.floor(diameter * 0.9e3 * 2) / 2) * 1e-3
    size, line = drill_near(job, wanted, SHARE * diameter, diameter)
    texts = {
        "cutter": line,
        "at": place_text(at, job.units),
        "depth": step.fields.depth.text,
        "what": "Entry hole",
    }
    mend = drilled_before(step.operation, step.setting, texts, hole=there[-1][1] if there else None)
    return Fix(f"Drill {length(size, job.units)} before {step.number}", mend)


def _off_centre(x: float, y: float, step: Step) -> bool:
    """Whether a place lies in the pocket but not at its middle, where a slug may be held."""
    middle = next(iter(step.fields.centre))
    dx, dy = abs(x - middle.x.value), abs(y - middle.y.value)
    return (
        bool(dx)
        and dx <= step.fields.length.value / 2
        and dy <= step.fields.width.value / 2
        and max(dx, dy) > 1e-6
    )
