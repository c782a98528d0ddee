"""Asks whether the vice opens wide enough."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import fact, size
from jobsheet.review.plan.jaws import sits
from jobsheet.review.plan.lengths import length
from jobsheet.review.rule import View, remark, rule


@rule("wider-than-the-vice-opens", "As wide as the vice opens", "rework")
def wider_than_the_vice_opens(view: View) -> Iterator[Remark]:
    """The work, and the bar beside it, is wider between the jaws than the vice opens.

    Quiet where the card does not know how far it opens.

    Because: It does not go in; found at the machine it stops the job.
    Not so: work 80 wide in a vice that opens 75
    So: the same work with its 50 mm side between the jaws, or strapped down
    From: the sizes on the card
    """
    for set_up, steps in plan_of(view).groups():
        found = sits(set_up, steps[0])
        if found is None or found.vice is None or found.vice.opening is None:
            continue
        bar = (size(set_up, "bar_size") or 0.0) if fact(set_up, "bar") else 0.0
        if found.wide + bar <= found.vice.opening + 1e-9:
            continue
        units = view.job.units
        more = f" and a bar of {length(bar, units)}" if bar else ""
        message = f"{length(found.wide, units)} of work{more} between the jaws, and the {found.vice.name} opens {length(found.vice.opening, units)}"
        yield remark(
            view, "wider-than-the-vice-opens", message, steps[0].key, set_up=set_up.key,
            by_hand="put a narrower side between the jaws, take a larger vice, or strap it down",
        )  # fmt: skip
