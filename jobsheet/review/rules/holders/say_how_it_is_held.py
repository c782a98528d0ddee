"""Asks how work is held of which only words say it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Remark
from jobsheet.operations.registry import roles
from jobsheet.review.plan.held import holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("say-how-it-is-held", "Say how it is held", "hazard")
def say_how_it_is_held(view: View) -> Iterator[Remark]:
    """Something is cut, and only words say what holds it: nothing of it is checked.

    Because: A hand, tape or a magnet holds no work that is cut here; and what words mean nobody has looked at.
    Not so: held in other words
    So: held in a vice, under straps, on an angle plate, with its facts
    From: common practice
    """
    for set_up in view.job.set_ups:
        first = next(
            (operation for operation in set_up.operations if roles(operation).mills or roles(operation).hole),
            None,
        )
        if first is None or not holding_roles(set_up).in_words:
            continue
        yield remark(
            view, "say-how-it-is-held", "Only words say what holds it, and nothing of it is checked: choose under Held by how it is held",
            first.key, set_up=set_up.key, by_hand="choose a kind under Held by; what it cannot say goes into its note",
        )  # fmt: skip
