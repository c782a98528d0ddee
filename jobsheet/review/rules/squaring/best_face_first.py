"""Asks whether squaring begins with the best face."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import all_moved_before
from jobsheet.review.plan.faces import AS_BOUGHT, plan_of
from jobsheet.review.rule import View, remark, rule


@rule("best-face-first", "Best face first", "scrap")
def best_face_first(view: View) -> Iterator[Remark]:
    """Three or more raw faces are to be machined, and the first one milled is of the smallest kind though one of over twice its area waits.

    Quiet where the large faces stay as bought.

    Because: Everything else is judged from it, and it gives the steadiest grip.
    Not so: mill an end of the bar, then its wide face
    So: mill the wide face first and measure the rest from it
    From: common practice
    """
    plan = plan_of(view)
    faces = [face for face in plan.made if plan.state(face, 0) != AS_BOUGHT]
    if len(faces) < 3:
        return
    firsts = {face: step for face in faces if (step := plan.first_cut(face)) is not None}
    first = min(faces, key=lambda face: firsts[face].index)
    largest = max(faces, key=plan.area)
    if plan.area(first) > min(plan.area(face) for face in faces) * 1.0001:
        return
    if plan.area(largest) <= 2 * plan.area(first) or firsts[largest].index == firsts[first].index:
        return
    step, other = firsts[largest], firsts[first]
    message = (
        f"Face the largest or flattest face first and measure the rest from it: step {other.number} begins with"
        f" {plan.named(first)}, {plan.named(largest)} is {plan.area(largest) / plan.area(first):.1f} times as large"
    )
    making = tuple(one.key for one in plan.of(step.set_up.key) if largest in one.makes)
    same = step.set_up.key == other.set_up.key
    mend = all_moved_before(making, other.key if same else plan.of(other.set_up.key)[0].key)
    fix = Fix(f"Begin with step {step.number}", mend)
    yield remark(view, "best-face-first", message, other.key, step.key, fix=fix, set_up=other.set_up.key)
