"""Asks whether straps, studs or screws stand where the cutter goes."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.holdings.placed import bodies_of
from jobsheet.model.held_work import Body
from jobsheet.model.job import SetUp
from jobsheet.model.quantity import Quantity
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import changed_by, does, fact, holding_roles, on_straps
from jobsheet.review.plan.met import as_now, radius_of, stick_out_of
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.clash import clashes

_ABOVE = ("strap", "stud", "packing", "screw")


@rule("clamps-out-of-the-path", "Clamps out of the path", "hazard")
def clamps_out_of_the_path(view: View) -> Iterator[Remark]:
    """A cutter or its holder goes where a strap, its stud or its packing stands, or the head of a screw, and no step moves them before.

    Straps that press on a step of the work count from there; where it is not said how deep that lies, they count as low as they can
    be. Where a whole side is milled and it is not said where the straps press, that is asked; so is what a step takes off that only changes
    the holding.

    Because: Cutter or holder runs into the clamp.
    Not so: straps on top, face the top
    So: straps, then a step that changes them one at a time, then the cut
    From: United States Army, TM 1-1500-204-23-8, page 2-3
    """
    for set_up, steps in plan_of(view).groups():
        if not (on_straps(set_up) or holding_roles(set_up).screwed):
            continue
        name, off = ("straps", "straps") if on_straps(set_up) else ("screws", "screws")
        if fact(set_up, "press_on") == "sides":
            continue
        bodies = _bodies(set_up, steps[0])
        for step in steps:
            if off in changed_by(step.operation).off:
                break
            message = _message(set_up, step, bodies, steps[0])
            if not message:
                continue
            asked = next(
                (other for other in steps if other.index < step.index and _says_nothing(other)), None
            )
            if asked is not None:
                yield remark(
                    view, "clamps-out-of-the-path",
                    f"What comes off in step {asked.number}? Nothing says so, and the {name} may stand in the way of this cut",
                    step.key, asked.key, set_up=set_up.key, by_hand="enter there what comes off and what goes on holding",
                )  # fmt: skip
                break
            texts = {
                "does": "change holding", "removes": off, "stays": off, "one_at_a_time": "yes",
                "with_what": f"{name}, spanner",
            }  # fmt: skip
            yield remark(
                view, "clamps-out-of-the-path", message, step.key, set_up=set_up.key,
                fix=Fix(f"Add moving the {name} before {step.number}", added_before(step.key, written.BENCH, texts)),
                by_hand="move the clamps out of its way, and enter where they press",
            )  # fmt: skip
            break


def _bodies(set_up: SetUp, first: Step) -> tuple[Body, ...]:
    """What stands above the work; of a strap whose width nobody says only its middle, of what its place hangs on nothing."""
    if _on_a_step(set_up) and fact(set_up, "nose_below") is None:
        deepest = Quantity(first.lie.size[2], "")
        set_up = replace(set_up, holding=replace(set_up.holding, nose_below=deepest))
    bodies = [body for body in bodies_of(set_up, first.lie, first.setting.machine) if body.part in _ABOVE]
    if not on_straps(set_up):
        return tuple(bodies)
    if fact(set_up, "bolt_to_nose") is None:
        bodies = [body for body in bodies if body.part == "strap"]
    return tuple(bodies if fact(set_up, "strap_width") is not None else (_middle(body) for body in bodies))


def _middle(body: Body) -> Body:
    """The strap along its middle."""
    if body.part != "strap":
        return body
    across = 0 if body.size[0] < body.size[1] else 1
    at = (body.low[across] + body.high[across]) / 2
    low, high = list(body.low), list(body.high)
    low[across], high[across] = at - 1e-3, at + 1e-3
    return replace(body, low=tuple(low), high=tuple(high))


def _says_nothing(step: Step) -> bool:
    """Whether a step changes the holding, and does not say what."""
    changed = changed_by(step.operation)
    return does(step.operation, "change holding") and not changed.off and not changed.on


def _message(set_up: SetUp, step: Step, bodies: tuple[Body, ...], first: Step) -> str:
    if not step.cuts:
        return ""
    met = clashes(step.cut, as_now(bodies, first, step), radius_of(step), stick_out_of(step))
    if met:
        part = {"packing": "The packing of a strap", "screw": "A screw", "stud": "The stud of a clamp"}.get(
            met[0].part, "A clamp"
        )
        of = "the holder in" if met[0].by == "holder" else ""
        return f"{part} is in the way of {f'{of} ' if of else ''}this cut: move it, or change clamps one at a time in a step before it"
    if _on_a_step(set_up):
        return ""
    all_round = step.roles.mills == "edge" and getattr(step.fields, "edges", "") != "one edge"
    if step.roles.mills == "flat" or (all_round and fact(set_up, "at") is not None):
        return (
            "A clamp is in the way of this cut: move it, or change clamps one at a time in a step before it"
            if on_straps(set_up)
            else ""
        )
    if fact(set_up, "at") is not None or not on_straps(set_up):
        return ""
    if step.roles.mills in ("wall", "edge") and getattr(step.fields, "path", None) is None:
        return "Where do the straps press? This cut goes along a whole side: enter their places, or move them in a step before it"
    return ""


def _on_a_step(set_up: SetUp) -> bool:
    return bool(fact(set_up, "press_on") == "a step")
