"""Asks whether a clamp bolt goes into the slots of the table."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.card_words import slot_width
from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("bolt-fits-the-slot", "Bolts that fit the slots", "rework")
def bolt_fits_the_slot(view: View) -> Iterator[Remark]:
    """The bolts of clamps on the table are as thick as its slots are wide, or thicker.

    Because: A bolt goes through the throat with a millimetre or two to spare; this one does not go in at all.
    Not so: M12 in slots of 10 mm
    So: M8 in slots of 10 mm
    From: ASME B5.1M, T-slots: bolt 8 for a throat of 10, 12 for 14; the card of the machine
    """
    for set_up, steps in plan_of(view).groups():
        bolt, width = fact(set_up, "bolt"), slot_width(steps[0].setting.machine)
        if bolt is None or width is None or not holding_roles(set_up).on_top or bolt.major < width - 1e-9:
            continue
        message = f"{bolt.text} does not go into the slots of this table: they are {length(width, view.job.units)} wide"
        yield remark(
            view, "bolt-fits-the-slot", message, steps[0].key, set_up=set_up.key,
            by_hand="take bolts that fit the slots, and tighten them as their size allows",
        )  # fmt: skip
