"""Asks whether there is room under a hole or slot that goes through."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.job import SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Groove, Hole, Recess
from jobsheet.review.mending.edge_holes import OUT_OF_A_SIDE, breaks_out
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.hole_chains import holes_of
from jobsheet.review.plan.lengths import length
from jobsheet.review.plan.words import says
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.course import Cut

#: What a drill wants beside it, from a parallel [m] (common practice, no source).
BESIDE = 1e-3
_THICK = re.compile(r"(\d+(?:[.,]\d+)?)\s*mm\s+parallels?\b", re.IGNORECASE)
_BACKED = r"backing|backed|sacrificial|scrap|wood"
_UNDER = r"(?:parallels?|packing|block|bar)s? (?:\w+ )?(?:right |just |straight )?(?:under|below|beneath) (?:the |a |each )?(?:hole|bore|slot|window)s?"
_ON_BED = r"(?:flat |straight |right )?on the (?:vise |vice )?(?:bed|table)|no parallels|without parallels"
_CLEAR = r"clear (?:of|below)|spacers?|parallels?|packed"


@rule("clear-below-a-through-hole", "Room under a through hole", "hazard")
def clear_below_a_through_hole(view: View) -> Iterator[Remark]:
    """A hole or slot that comes out over a parallel, the bed of the vice or the table, as far as words or sizes say so.

    Parallels of a written thickness that lie at the jaws are reckoned: the edge of the hole must clear them by a millimetre.

    Because: It spoils drill, parallel and vice, and the drill grabs as it meets them.
    Not so: drill through at 5 from the edge, on 8 mm parallels at the jaws
    So: drill through, on 4 mm parallels at the jaws, or on scrap
    From: United States Navy, training course 14018, drilling; common practice
    """
    found = holes_of(view.reckoned)
    for set_up in view.job.set_ups:
        holding = set_up.holding
        words = (holding.packing, holding.note, set_up.note)
        if says(_BACKED, *words):
            continue
        cuts = [cut for cut in found.course.cuts if cut.set_up == set_up.key and _through(cut)]
        if not cuts:
            continue
        if says(_UNDER, *words) and not says("clear of", *words):
            message, packing = (
                "The packing lies under what goes through",
                "parallels at the jaws, clear of what goes through",
            )
            yield _told(view, set_up, cuts, message, packing)
            continue
        if says(_ON_BED, *words) and not says(_CLEAR, *words) and "mm" not in holding.packing:
            packing = f"{holding.packing}, on scrap backing".lstrip(", ")
            yield _told(view, set_up, cuts, "The work lies flat on the bed here", packing)
            continue
        thick = _THICK.search(holding.packing)
        if thick is None or not says("jaws?", holding.packing) or not in_jaws(set_up, cuts[0].before):
            continue
        size = float(thick[1].replace(",", ".")) * 1e-3
        room, cut = min(((_room(one, set_up), one) for one in cuts), key=lambda pair: pair[0])
        if room >= size + BESIDE - 1e-7:
            continue
        fits = int((room - BESIDE) * 1e3 + 1e-6)
        packing = (
            holding.packing.replace(thick[1], str(fits), 1)
            if fits >= 2
            else f"{holding.packing}, on scrap backing"
        )
        message = (
            f"No room under step {cut.number}: its edge is {length(max(room, 0.0), view.job.units)} from the jaw and the parallels are"
            f" {length(size, view.job.units)} thick"
        )
        yield _told(view, set_up, [cut], message, packing)


def _told(view: View, set_up: SetUp, cuts: list[Cut], message: str, packing: str) -> Remark:
    """Scrap below what breaks out of a side mends nothing: the drill runs off into the air beside it."""
    fix: Fix | None = Fix(f"Packing: {packing}", set_field(f"holding:{set_up.key}", "packing", packing))
    hand = ""
    if any(breaks_out(cut) for cut in cuts):
        fix, hand = None, OUT_OF_A_SIDE
    text = f"{message}: move the parallels or back it with scrap" if "step" not in message else message
    return remark(
        view, "clear-below-a-through-hole", text, cuts[0].key, fix=fix, set_up=set_up.key, by_hand=hand
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
    size = lie.size[axis]
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
        rooms += [min(at[axis], size - at[axis]) - half for at in sized.corners]
    return min(rooms)
