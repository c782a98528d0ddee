"""Asks whether long thin work between centres is held up in its middle."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.metals.stiffness import modulus
from jobsheet.cutting.deflection import bar_between_points
from jobsheet.model.remark import Fix, Remark
from jobsheet.model.shape import Edge, Slab
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import Step, plan_of, width_of_limits
from jobsheet.review.plan.held import fact, holding_roles, size
from jobsheet.review.plan.lengths import apart, length
from jobsheet.review.rule import Needs, View, remark, rule

#: From so many diameters on it wants a jack: a bar held at both ends is as stiff in its middle as one of 3
#: diameters out of a chuck (holding-and-more-kinds A1) at its end where 48 / L³ is 3 / (3 d)³.
FROM = 3 * 16 ** (1 / 3)
#: So far it may give way under the cut: holding-and-more-kinds A2 calls for a jack at 15 µm [m]; of limits a
#: quarter (common practice, no source).
MOST, OF_LIMITS = 15e-6, 0.25


@rule("jack-under-thin-work", "Jack under thin work", "scrap", needs=Needs.FIGURES)
def jack_under_thin_work(view: View) -> Iterator[Remark]:
    """Work between centres is seven and a half diameters long or longer, or bends under its cut, and no jack stands under its middle.

    It bends too far by 15 µm, or by a quarter of the limits of the step.

    Because: It bends away in the middle, and the cut is shallower there.
    Not so: Ø20 × 200 between centres, nothing under it
    So: Ø20 × 200 between centres, a jack under its middle
    From: Shigley's Mechanical Engineering Design, 8th edition, bending of a bar between two points; common practice
    """
    for set_up, steps in plan_of(view).groups():
        long, diameter = size(set_up, "length"), size(set_up, "diameter")
        if not holding_roles(set_up).between or not long or not diameter or fact(set_up, "jack"):
            continue
        cutting = [step for step in steps if step.cuts]
        units = view.job.units
        fix = Fix("A jack under its middle", set_field(f"holding:{set_up.key}", "jack", "yes"))
        if long >= FROM * diameter - 1e-9 and cutting:
            message = f"{length(long, units)} between the centres on {length(diameter, units)}: a jack under its middle"
            yield remark(view, "jack-under-thin-work", message, steps[0].key, fix=fix, set_up=set_up.key)
            continue
        step = next((step for step in cutting if _way(step, long, diameter) > _most(step)), None)
        if step is not None:
            way, most = apart(_way(step, long, diameter), _most(step), units)
            message = (
                f"It gives way by {way} under step {step.number}, more than {most}: a jack under its middle"
            )
            yield remark(view, "jack-under-thin-work", message, step.key, fix=fix, set_up=set_up.key)


def _way(step: Step, long: float, diameter: float) -> float:
    """How far the bar gives way under the peak of the cut, where it goes nearest to the middle [m]."""
    push, stiff = step.figure("in_plane_peak"), modulus(step.setting.material.family)
    if push is None or stiff is None:
        return 0.0
    place = min(_places(step, long), key=lambda at: abs(at - long / 2), default=0.0)
    return bar_between_points(force=push, place=place, length=long, modulus=stiff, diameter=diameter)


def _places(step: Step, long: float) -> Iterator[float]:
    """Where along the bar a cut passes, nearest to its middle [m]."""
    for sized in step.cut.shapes:
        if isinstance(sized.shape, Slab) or (
            isinstance(sized.shape, Edge) and sized.shape.side in ("front", "rear")
        ):
            yield long / 2
        elif sized.corners:
            along = [at[0] for at in sized.corners]
            yield min(max(min(max(long / 2, min(along)), max(along)), 0.0), long)


def _most(step: Step) -> float:
    limits = width_of_limits(step)
    return min(MOST, OF_LIMITS * limits) if limits else MOST
