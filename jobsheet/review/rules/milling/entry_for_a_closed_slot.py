"""Asks how the cutter gets into a slot or pocket that is closed all round."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.cuts import hole_within, outline
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.words import said
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import trimmed

#: A hole of this share of the cutter lets it in (sequencing rules, the row of this rule).
SHARE = 0.8


@rule("entry-for-a-closed-slot", "An entry for a closed slot", "scrap")
def entry_for_a_closed_slot(view: View) -> Iterator[Remark]:
    """A closed slot, pocket or window is cut with a cutter that has no teeth at its centre, and nothing lets it in.

    Quiet where the start is open to an edge, where a ramp is entered, with slot drills and whatever is written to cut to its centre,
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
        if said(
            f"{cutter.text} {step.words}",
            "centre cutting",
            "center cutting",
            "to its centre",
            "to centre",
            "ramp",
            "ramped",
        ):
            continue
        if hole_within(plan, step, SHARE * cutter.diameter):
            continue
        message = f"Drill an entry hole or use a centre-cutting cutter: nothing at its start is wide enough for {trimmed(cutter.diameter * 1e3, 2)} mm"
        yield remark(
            view,
            "entry-for-a-closed-slot",
            message,
            step.key,
            fix=_entry(plan.steps, step),
            set_up=step.set_up.key,
        )


def _entry(steps: tuple[Step, ...], step: Step) -> Fix | None:
    """A hole nine tenths of the cutter at the start, opened where a smaller one is there already."""
    ends = outline(step)
    if not ends:
        return None
    at = ends[0]
    there = [
        place
        for one in steps[: step.index]
        if one.set_up.key == step.set_up.key and one.roles.hole == "drill"
        for place in one.fields.at
        if step.roles.mills == "recess" and _off_centre(place.x.value, place.y.value, step)
    ]
    kind = written.DRILL
    if there:
        at, kind = (there[-1].x.value, there[-1].y.value), written.ENLARGE
    size = max(1.0, math.floor(step.fields.cutter.diameter * 0.9e3 * 2) / 2)
    place = ", ".join(f"{trimmed(value * 1e3, 3).replace('−', '-')} mm" for value in at)
    texts = {
        "cutter": f"drill {trimmed(size, 1)} mm",
        "at": place,
        "depth": step.fields.depth.text,
        "feed": "0.1 mm",
        "what": "Entry hole",
    }
    return Fix(f"Drill {trimmed(size, 1)} mm before {step.number}", added_before(step.key, kind, texts))


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
