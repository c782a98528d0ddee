"""Asks whether every place lies on one side of the zero."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.card_words import reads_table
from jobsheet.model.remark import Remark
from jobsheet.review.plan.hole_chains import places_of
from jobsheet.review.rule import View, remark, rule


@rule("zero-where-positions-grow", "Zero where places grow", "habit")
def zero_where_positions_grow(view: View) -> Iterator[Remark]:
    """Places on both sides of a zero at a corner, on a machine without a readout of its table.

    Because: With the zero in the right corner every handle turns one way, and all moves keep to one side of the backlash.
    Not so: places at -20 and 30 from a corner
    So: places at 10 and 60 from the next corner
    From: common practice
    """
    for set_up in view.job.set_ups:
        placed = [operation for operation in set_up.operations if places_of(operation)]
        if not placed or set_up.zero.stands_on not in ("", "edges"):
            continue
        if reads_table(view.reckoned.settings[placed[0].key].machine):
            continue
        for axis in ("x", "y"):
            counted = [getattr(place, axis).value for operation in placed for place in places_of(operation)]
            if min(counted) >= -1e-9 or max(counted) <= 1e-9:
                continue
            message = f"{axis.upper()} has places on both sides of the zero: move the zero to the corner from which every place grows"
            yield remark(view, "zero-where-positions-grow", message, placed[0].key, set_up=set_up.key)
            break
