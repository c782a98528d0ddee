"""Asks whether a drill starts on a face that lets it stay where it is put."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import finished_part
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.reckoning.skin import is_cast
from jobsheet.review.mending.at_hand import at_hand
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import for_tool, typed
from jobsheet.review.rule import View, remark, rule

#: Steps that cut a flat for the drill.
_FLAT = ("counterbore", "plunge", "bore")


@rule("flat-before-drilling-a-slope", "A flat before the drill", "scrap")
def flat_before_drilling_a_slope(view: View) -> Iterator[Remark]:
    """A hole that starts on a raw casting, where nothing flat was cut before.

    Quiet where the drawing leaves the face as it is bought and the hole is spotted: so the holes of cast feet are drilled, and spot faced
    behind that.

    Because: The drill slides downhill before it bites, and a casting's face is neither flat nor square to the drill.
    Not so: drill into the face of a raw casting
    So: mill the face or a small flat first, then spot and drill
    From: from memory of trade teaching
    """
    stock = view.job.stock
    shape = finished_part(view.job).shape if view.job.finished else None
    bought = shape.as_bought if shape is not None else ()
    holes = holes_of(view.reckoned)
    told: set[str] = set()
    for chain in holes.chains:
        first = next((step for step in chain.steps if step.does in ("spot", "drill")), None)
        if first is None or first.key in told or chain.face in stock.stays or not is_cast(stock, chain.face):
            continue
        if any(lowered.face == chain.face and lowered.index < first.index for lowered in holes.lowered):
            continue
        if any(
            taken.face == chain.face and taken.index < first.index and taken.inside(chain.at) > 0
            for taken in holes.taken
        ):
            continue
        if first.does == "spot" and chain.face in bought:
            continue
        if any(hole_step.does in _FLAT for hole_step in chain.before(first)):
            continue
        told.add(first.key)
        width = max(step.diameter for step in chain.steps)
        known = at_hand(view.job, "slot drill", width, 3 * width) or at_hand(
            view.job, "end mill", width, 3 * width
        )
        texts = {
            "cutter": known[0][1] if known else f"end mill {for_tool(width, view.job.units)}, 2 teeth", "at": first.fields.at.text,
            "depth": typed(1.5e-3, view.job.units), "what": "Mill a flat for the drill",
        }  # fmt: skip
        message = f"The {chain.face} is still raw casting here: mill a flat first"
        yield remark(
            view, "flat-before-drilling-a-slope", message, first.key, set_up=first.set_up,
            fix=Fix(f"Add a flat before {first.number}", added_before(first.key, written.PLUNGE, texts)),
        )  # fmt: skip
