"""Asks whether the work is free between two ways of holding it."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Operation, SetUp
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import Mend, in_turn, moved_before, set_field
from jobsheet.review.plan.held import changed_before, changed_by, does, holding_roles
from jobsheet.review.rule import View, remark, rule


@rule("one-clamp-at-a-time", "One clamp at a time", "hazard")
def one_clamp_at_a_time(view: View) -> Iterator[Remark]:
    """All that holds the work comes off before what is to hold it instead is on.

    A step that takes the straps off and names what goes on holding is left alone, unless it says that they come off all at once
    and nothing else held the work before.

    Because: The work is free between these two steps: its place is lost, and thin sheet flies.
    Not so: take the straps off, then screw it down
    So: screw it down, one at a time, then take the straps off
    From: Brown & Sharpe, Practical Treatise on Milling and Milling Machines, page 117; common practice
    """
    for set_up in view.job.set_ups:
        holds = _holds(set_up)
        for index, operation in enumerate(set_up.operations):
            changed = changed_by(operation)
            before = changed_before(set_up, operation.key)
            held = (holds | before.on) - before.off
            if not held or not held <= changed.off:
                continue
            if operation.fields.one_at_a_time or (changed.on and operation.fields.one_at_a_time is None):
                continue
            other = _next_hold(set_up.operations[index + 1 :]) if not changed.on else None
            if not changed.on and does(operation, "take out"):
                continue
            keys = (operation.key,) if other is None else (operation.key, other.key)
            yield remark(
                view, "one-clamp-at-a-time", "The work is free between these two steps: new hold on first, one at a time",
                *keys, fix=_fix(operation, other, on=bool(changed.on)), set_up=set_up.key,
                by_hand="name what goes on holding the work while these come off, and put it on first",
            )  # fmt: skip
            break


def _holds(set_up: SetUp) -> frozenset[str]:
    """What holds it as the set-up begins, by the words of a step that changes it."""
    plays = holding_roles(set_up)
    found = {
        "straps": plays.straps or plays.on_top,
        "screws": plays.screwed,
        "jaws": plays.jaws or plays.turns,
    }
    return frozenset(name for name, there in found.items() if there)


def _next_hold(behind: tuple[Operation, ...]) -> Operation | None:
    return next(
        (operation for operation in behind if changed_by(operation).on or does(operation, "clamp")), None
    )


def _fix(operation: Operation, other: Operation | None, *, on: bool) -> Fix | None:
    if other is not None:
        mends: list[Mend] = [moved_before(other.key, operation.key)]
        on_it = getattr(other.fields, "stays", None)
        if on_it is not None:
            mends.append(set_field(operation.key, "stays", on_it.text))
        return Fix(f"Move {other.number} before {operation.number}", in_turn(*mends))
    return Fix("One at a time", set_field(operation.key, "one_at_a_time", "yes")) if on else None
