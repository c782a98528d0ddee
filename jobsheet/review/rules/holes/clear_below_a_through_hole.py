"""Asks whether there is room under a hole or slot that goes through."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Groove, Hole, Recess
from jobsheet.review.mending.edge_holes import OUT_OF_A_SIDE, breaks_out
from jobsheet.review.mending.fixes import Mend, in_turn, set_field
from jobsheet.review.plan.held import backed, fact, holding_roles, size
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.course import Cut
from jobsheet.units.table import INCH

#: What a drill wants beside it, from a parallel [m] (common practice, no source).
BESIDE = 1e-3
#: Thinner parallels are not to be had [m] (common practice, no source).
THINNEST = 2e-3


@rule("clear-below-a-through-hole", "Room under a through hole", "hazard")
def clear_below_a_through_hole(view: View) -> Iterator[Remark]:
    """A hole or slot that comes out over a parallel, the bed of the vice or the table.

    Parallels of a known thickness lie at the jaws: the edge of the hole must clear them by a millimetre. What is said to be packed,
    and parallels of which only that they are there is said, are not reckoned.

    Because: It spoils drill, parallel and vice, and the drill grabs as it meets them.
    Not so: drill through at 5 from the edge, on 8 mm parallels
    So: drill through, on 4 mm parallels, or on scrap
    From: United States Navy, training course 14018, drilling; common practice
    """
    holes = holes_of(view.reckoned)
    for set_up in view.job.set_ups:
        by_hand = holding_roles(set_up).drills_only
        rests = fact(set_up, "support" if by_hand else "rests_on")
        cuts = [cut for cut in holes.course.cuts if cut.set_up == set_up.key and _through(cut)]
        if backed(set_up) or not cuts:
            continue
        if rests in ("bed", "table"):
            backing = "wood" if by_hand else "backing" if rests == "bed" else "backing plate"
            where = "bed of the vice" if rests == "bed" else "table"
            other = "wood" if by_hand else "scrap or set it on parallels"
            message = f"The work lies flat on the {where} here: back it with {other}"
            yield _told(
                view,
                set_up,
                cuts,
                message,
                "On wood" if by_hand else "On scrap",
                set_field(f"holding:{set_up.key}", "support" if by_hand else "rests_on", backing),
            )
            continue
        thick = size(set_up, "parallel_width")
        if (
            thick is None
            or fact(set_up, "parallels_then") == "taken out"
            or not in_jaws(set_up, cuts[0].before)
        ):
            continue
        room, cut = min(((_room(cut, set_up), cut) for cut in cuts), key=lambda pair: pair[0])
        if room >= thick + BESIDE - 1e-7:
            continue
        yield _at_a_parallel(view, set_up, cut, room, thick)


def _at_a_parallel(view: View, set_up: SetUp, cut: Cut, room: float, thick: float) -> Remark:
    """Thinner parallels, or scrap where none is thin enough."""
    by = 1e-3 if view.job.units == "mm" else INCH / 16
    fits = math.floor((room - BESIDE) / by + 1e-3) * by
    thin = fits >= THINNEST - 1e-9
    owner = f"holding:{set_up.key}"
    label = f"Parallels {length(fits, view.job.units)} thick" if thin else "On scrap"
    mend = (
        set_field(owner, "parallel_width", length(fits, view.job.units))
        if thin
        else in_turn(set_field(owner, "rests_on", "backing"), set_field(owner, "parallel_width", ""))
    )
    message = (
        f"No room under step {cut.number}: its edge is {length(max(room, 0.0), view.job.units)} from the jaw and the parallels are"
        f" {length(thick, view.job.units)} thick"
    )
    return _told(view, set_up, [cut], message, label, mend)


def _told(view: View, set_up: SetUp, cuts: list[Cut], message: str, label: str, mend: Mend) -> Remark:
    """Scrap below what breaks out of a side mends nothing: the drill runs off into the air beside it."""
    fix: Fix | None = Fix(label, mend)
    hand = ""
    if any(breaks_out(cut) for cut in cuts):
        fix, hand = None, OUT_OF_A_SIDE
    return remark(
        view, "clear-below-a-through-hole", message, cuts[0].key, fix=fix, set_up=set_up.key, by_hand=hand
    )


def _through(cut: Cut) -> bool:
    """Whether a step goes through and leaves the metal around it standing."""
    return any(
        isinstance(sized.shape, Hole | Groove | Recess)
        and sized.depth is None
        and not (isinstance(sized.shape, Hole) and sized.shape.threaded)
        for sized in cut.shapes
    )


def _room(cut: Cut, set_up: SetUp) -> float:
    """How far the nearest edge of what goes through is from a jaw [m]."""
    lie = cut.before
    axis = 1 if lie.side(set_up.fixed_jaw) in ("near", "far") else 0
    whole = lie.size[axis]
    rooms = []
    for sized in cut.shapes:
        shape = sized.shape
        if sized.depth is not None or not isinstance(shape, Hole | Groove | Recess):
            continue
        if isinstance(shape, Hole):
            half = shape.diameter / 2
        elif isinstance(shape, Groove):
            half = shape.width / 2
        else:
            half = (shape.length if axis == 0 else shape.width) / 2
        rooms += [min(at[axis], whole - at[axis]) - half for at in sized.corners]
    return min(rooms)
