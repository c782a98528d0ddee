"""Asks whether cutter and holder stay clear of plate, centres, jack and jaws."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.holdings.placed import bodies_of
from jobsheet.model.held_work import Body
from jobsheet.model.job import SetUp
from jobsheet.model.remark import Remark
from jobsheet.review.plan.chucked import free_end
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.held import fact, holding_roles
from jobsheet.review.plan.met import as_now, radius_of, stick_out_of
from jobsheet.review.rule import View, remark, rule
from jobsheet.stages.clash import clashes

_NAMES = {
    "plate": "the angle plate", "tail": "the centre", "jack": "the jack",
    "dog": "the dog", "fixed jaw": "the fixed jaw", "moving jaw": "the moving jaw",
}  # fmt: skip
_JAWS = ("fixed jaw", "moving jaw")


@rule("clear-of-plate-and-centres", "Clear of plate and centres", "hazard")
def clear_of_plate_and_centres(view: View) -> Iterator[Remark]:
    """A cutter goes where the angle plate, a centre, its dog or a jack stands, or the holder above it meets one of them or a jaw.

    How far work stands over an angle plate is asked where a cut would meet the plate if both were level.

    Because: Cutter or holder runs into it.
    Not so: an end milled whose centre holds it
    So: the end milled in the chuck, without the tailstock
    From: common practice
    """
    for set_up, steps in plan_of(view).groups():
        bodies = _bodies(set_up, steps[0])
        if not bodies:
            continue
        for step in steps:
            message = _message(set_up, step, steps[0], bodies) if step.cuts else ""
            if message:
                yield remark(
                    view, "clear-of-plate-and-centres", message, step.key, set_up=set_up.key,
                    by_hand="hold the work another way for this cut, or let it stand further over, and enter it",
                )  # fmt: skip
                break


def _bodies(set_up: SetUp, first: Step) -> tuple[Body, ...]:
    """What a cutter can meet beside it; a centre at either end where it is not said at which the chuck is."""
    plays = holding_roles(set_up)
    bodies = [
        body
        for body in bodies_of(set_up, first.lie, first.setting.machine)
        if body.part in ("tail", "jack", "dog")
        or (body.part == "plate" and plays.upright)
        or (body.part in _JAWS and body.sure)
    ]
    long = first.lie.size[0]
    if plays.between:
        return tuple(
            _at_its_end(body, set_up, long)
            for body in bodies
            if body.part != "dog" or free_end(set_up) is not None
        )
    for body in tuple(bodies):
        if body.part == "tail" and plays.chuck:
            (x0, y0, z0), (x1, y1, z1) = body.low, body.high
            bodies.append(replace(body, low=(long - x1, y0, z0), high=(long - x0, y1, z1)))
    return tuple(bodies)


def _at_its_end(body: Body, set_up: SetUp, long: float) -> Body:
    """The dog is drawn at the left; it sits at the other end than the one that places count from."""
    if body.part != "dog" or free_end(set_up) == 0:
        return body
    (x0, y0, z0), (x1, y1, z1) = body.low, body.high
    return replace(body, low=(long - x1, y0, z0), high=(long - x0, y1, z1))


def _message(set_up: SetUp, step: Step, first: Step, bodies: tuple[Body, ...]) -> str:
    met = clashes(step.cut, as_now(bodies, first, step), radius_of(step), stick_out_of(step))
    one = next((clash for clash in met if clash.by == "holder" or clash.part not in _JAWS), None)
    if one is None:
        return ""
    if one.part == "plate" and fact(set_up, "above_plate") is None:
        return "How far does it stand over the angle plate? This cut would meet a plate as high as the work"
    what = "The holder" if one.by == "holder" else "The drill" if one.by == "drill" else "The cutter"
    return f"{what} meets {_NAMES[one.part]} in this cut"
