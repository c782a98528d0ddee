"""Asks whether the zero is found again after the head has moved on a column that does not keep its line."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.machine.card_words import loses_zero
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import Mend, added_after
from jobsheet.review.mending.zero_step import usual_finder
from jobsheet.review.plan.held import does
from jobsheet.review.plan.hole_chains import places_of
from jobsheet.review.rule import View, remark, rule


@rule("refind-zero-after-a-head-move", "Zero again after the head moves", "scrap")
def refind_zero_after_a_head_move(view: View) -> Iterator[Remark]:
    """On a round column, a ram or a turret a step moves the head, and places follow with nothing found again.

    Because: A round column turns as the head slides, a ram and a turret go aside: x and y are lost.
    Not so: find A and B, spot, raise the head, drill
    So: find A and B, spot, raise the head, find A and B, drill
    From: from memory of trade teaching
    """
    for set_up in view.job.set_ups:
        moved: Operation | None = None
        for operation in set_up.operations:
            machine = view.reckoned.settings[operation.key].machine
            if not loses_zero(machine):
                break
            found_again = does(operation, "find zero")
            if found_again:
                moved = None
            if places_of(operation) and moved is not None:
                message = f"The head was moved in step {moved.number}, and on this column x and y go with it: find the zero again first"
                yield remark(
                    view, "refind-zero-after-a-head-move", message, operation.key, moved.key, set_up=set_up.key,
                    fix=Fix(f"Add finding the edges behind {moved.number}", _again(set_up, moved, view.job.units)),
                )  # fmt: skip
                break
            if does(operation, "move head", "tilt head") and not found_again:
                moved = operation


def _again(set_up: SetUp, moved: Operation, units: str) -> Mend:
    """The finding step of the set-up once more, or a new one."""
    known = next(
        (operation.fields for operation in set_up.operations if roles(operation).beside == "find"), None
    )
    texts = {"cutter": usual_finder(units), "edges": set_up.zero.named or "both edges"}
    if known is not None:
        texts = {"cutter": known.cutter.text, "edges": known.edges}
        if known.tip is not None:
            texts["tip"] = known.tip.text
        if known.inside is not None:
            texts["inside"] = known.inside.text
    return added_after(moved.key, written.FIND, texts)
