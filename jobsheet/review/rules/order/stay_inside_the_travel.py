"""Asks whether the slides go far enough for a cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.rule import Needs, View, remark, rule


@rule("stay-inside-the-travel", "Stay inside the travel", "rework", needs=Needs.FIGURES)
def stay_inside_the_travel(view: View) -> Iterator[Remark]:
    """Run-in, cut and run-out together are longer than the slide goes on this machine.

    Quiet where the card does not know the travel.

    Because: Found at the machine it stops the job.
    Not so: a face 290 long with a 50 mm cutter on a table that goes 300
    So: the part turned, or faced in two set-ups
    From: common practice
    """
    for set_up, operation, outcome in view.steps():
        for limit in outcome.limits:
            if limit.name == "travel" and limit.verdict == "beyond":
                message = f"Travel is too short: {limit.shown or limit.sentence}; turn the part or plan another set-up"
                yield remark(view, "stay-inside-the-travel", message, operation.key, set_up=set_up.key)
