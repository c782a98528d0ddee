"""Asks whether a hand vice does more than it can hold."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.holdings.kinds.hand_vice import ARM, HAND
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.units.show import trimmed

#: So many times what the drill turns with must be held (holding-and-more-kinds: SF 2.5).
FACTOR = 2.5
#: What is thinner than this is sheet (from memory of EN 10131, cold-rolled flat
#: products: sheet is under 3 mm) [m].
SHEET = 3e-3


@rule("hand-vice-for-small-drills", "A hand vice for small drills", "hazard", needs=Needs.FIGURES)
def hand_vice_for_small_drills(view: View) -> Iterator[Remark]:
    """In a hand vice something is milled, reamed, tapped or sawn, sheet is drilled, or a drill turns harder than a hand holds.

    A hand gives 30 N at the end of the handle, and two and a half times what the drill turns with must be held.

    Because: It is torn out of the hand and comes round with the spindle.
    Not so: an 8 mm drill, or any milling, in a hand vice
    So: a 3 mm drill in a hand vice on a support; anything else in the machine vice
    From: GTZ, course in metalworking, drilling and clamping; common practice
    """
    for set_up, steps in plan_of(view).groups():
        if not holding_roles(set_up).drills_only:
            continue
        arm = size(set_up, "arm") or ARM
        for step in steps:
            message = _message(step, arm)
            if not message:
                continue
            fix = Fix("In the machine vice", set_field(f"holding:{set_up.key}", "kind", "vice"))
            yield remark(view, "hand-vice-for-small-drills", message, step.key, fix=fix, set_up=set_up.key)
            break


def _message(step: Step, arm: float) -> str:
    if step.roles.mills or step.roles.beside == "saw":
        return (
            "A hand vice holds for drilling small holes only: hold this in the machine vice or under straps"
        )
    if not step.roles.hole:
        return ""
    if step.roles.hole not in ("drill", "spot", "countersink"):
        return "No reaming, tapping or boring in a hand vice: hold this in the machine vice or under straps"
    if fact(step.set_up, "stop") is False:
        return "Nothing stops the handle here: set it against a stop, so that it cannot come round as the drill catches"
    if step.lie.size[2] < SHEET - 1e-9:
        return (
            "No sheet in a hand vice: it lifts as the drill breaks through and spins; clamp it on a backing"
        )
    if fact(step.set_up, "support") is None:
        return "On what does it lie? In a hand vice the work wants a support under it, the table, wood or a block"
    torque = step.figure("torque")
    if torque is None or FACTOR * torque <= HAND * arm + 1e-9:
        return ""
    return f"This drill turns with {trimmed(torque, 2)} N·m, {FACTOR:g} times that is to be held, and a hand holds {trimmed(HAND * arm, 1)}: hold it in the machine vice"
