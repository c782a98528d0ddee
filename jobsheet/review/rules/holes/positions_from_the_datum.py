"""Asks whether places are counted from the datum faces."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import FROM_A_HOLE
from jobsheet.review.mending.fixes import Mend, in_turn, set_field
from jobsheet.review.plan.held import how
from jobsheet.review.plan.hole_chains import places_of
from jobsheet.review.plan.zero_faces import letters_at_zero
from jobsheet.review.rule import View, remark, rule


@rule("positions-from-the-datum", "Places from the datum", "scrap")
def positions_from_the_datum(view: View) -> Iterator[Remark]:
    """Places that are counted from another hole, though the drawing has datum faces.

    Rows, grids and pitch circles are no chain: their middle or first hole is placed from the datum.

    Because: Chain steps add their errors, base-line steps do not.
    Not so: zero in hole 1, hole 2 at 52 from it
    So: zero on A and B, hole 2 at 66 from B
    From: United States Army Ordnance, course OD1641, base-line dimensioning
    """
    if not view.job.datums:
        return
    for set_up in view.job.set_ups:
        placed = [operation for operation in set_up.operations if places_of(operation)]
        if not placed:
            continue
        chained = [operation for operation in placed if how(operation, FROM_A_HOLE)]
        from_hole = set_up.zero.stands_on == "another hole"
        if not from_hole and not chained:
            continue
        first = chained[0] if chained else placed[0]
        fix = None
        if from_hole:
            letters = letters_at_zero(view, set_up)
            fix = Fix(f"Zero at {letters}", _on_edges(set_up.key, letters)) if letters else None
        message = "A chain of sizes: measure each place from the datum, not from another hole"
        yield remark(view, "positions-from-the-datum", message, first.key, fix=fix, set_up=set_up.key)


def _on_edges(key: str, letters: str) -> Mend:
    owner = f"zero:{key}"
    return in_turn(set_field(owner, "stands_on", "edges"), set_field(owner, "named", letters))
