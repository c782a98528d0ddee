"""Asks whether jaws that hold at one end are held apart at the other."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.words import holding_words, says
from jobsheet.review.rule import View, remark, rule

_ONE_END = (
    r"(?:at|in|to) (?:the |one )?(?:left|right|one|near|far)?\s*(?:end|half|side) of the (?:jaws?|vise|vice)"
)


@rule("spacer-at-the-other-end", "Spacer at the other end", "hazard")
def spacer_at_the_other_end(view: View) -> Iterator[Remark]:
    """Words put the work in one half of the jaws, and no spacer is named for the other.

    Because: The moving jaw twists and grips badly.
    Not so: at the left end of the jaws
    So: at the left end of the jaws, same-size spacer at the other end
    From: common practice
    """
    for set_up in view.job.set_ups:
        words = (*holding_words(set_up), set_up.title)
        if (
            not set_up.operations
            or not says(_ONE_END, *words)
            or says("spacers?|same[- ]size|other end|jack screw", *words)
        ):
            continue
        text = f"{set_up.holding.packing}, same-size spacer at the other end".lstrip(", ")
        yield remark(
            view, "spacer-at-the-other-end", "The work lies in one half of the jaws: same-size spacer at the other end",
            set_up.operations[0].key, set_up=set_up.key, fix=Fix("Add a spacer", set_field(f"holding:{set_up.key}", "packing", text)),
        )  # fmt: skip
