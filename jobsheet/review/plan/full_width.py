"""Slots cut in one go by a cutter of their own width: what that cutter holds by itself."""

from __future__ import annotations

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Size
from jobsheet.review.plan.faces import Step

#: Slot drills are ground under size for keyways: a trial cut, then one pass at full width holds this
#: grade (common practice, no source).
GRADE = "H9"
#: A cutter or drill of the nominal cuts up to so much over its own size [m] (common practice, no source).
OVER = 0.1e-3


def own_width(step: Step, size: Size) -> bool:
    """Whether a groove is as wide as the cutter is: nothing but the cutter gives the width."""
    across = step.fields.cutter.diameter or 0.0
    return step.roles.mills == "groove" and size.low - 1e-6 <= across <= size.high + 1e-6


def held_by_the_cutter(step: Step, size: Size) -> bool:
    """Whether a slot drill of the width holds the limits of a keyway in one pass:
    no closer than grade 9 of its size.
    """
    if not step.roles.keyed or step.fields.cutter.kind != "slot drill":
        return False
    try:
        grade = read_size(f"{size.nominal * 1e3:.6g} mm {GRADE}")
    except QuantityError:
        return False
    return size.high - size.low >= grade.high - grade.low - 1e-9


def given_by_the_cutter(step: Step, size: Size) -> bool:
    """Whether the cutter's own size gives a width or a diameter however it is used: limits that
    hold what cutters cut over their size.
    """
    if step.roles.mills != "groove" and step.roles.hole not in ("drill", "plunge"):
        return False
    across = step.fields.cutter.diameter or 0.0
    return size.low - 1e-6 <= across and across + OVER <= size.high + 1e-9
