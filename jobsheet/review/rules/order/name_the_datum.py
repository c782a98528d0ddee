"""Asks whether a set-up with places says where they count from."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.plan.faces import finds_zero, plan_of, positions, zero_faces
from jobsheet.review.rule import View, remark, rule


@rule("name-the-datum", "Name the datum", "scrap")
def name_the_datum(view: View) -> Iterator[Remark]:
    """A place in X or Y means nothing until it is said which faces it counts from.

    Quiet where a set-up only faces, saws or deburrs, where its zero has a name or is found by a step or a finder.

    Because: Datum faces decide the set-ups, and the set-ups decide the order inside each.
    Not so: holes at 14, 12 in a set-up without a zero
    So: holes at 14, 12 from A and B
    From: IPROMS conference, paper 3138, planning of set-ups for prismatic parts
    """
    plan = plan_of(view)
    for set_up, steps in plan.groups():
        zero = set_up.zero
        placed = [step for step in steps if positions(step.fields)]
        if not placed or zero.named.strip() or zero.found.strip() or any(finds_zero(step) for step in steps):
            continue
        faces = zero_faces(placed[0])
        message = (
            "Name the zero and the faces it is found on: places are counted here, and nothing says from where"
        )
        letters = [next((letter for letter, of in plan.job.datums if of == face), face) for face in faces]
        named = (
            f"{letters[1]} and {letters[0]}" if letters[1] < letters[0] else f"{letters[0]} and {letters[1]}"
        )
        fix = Fix(f"Zero at {named}", set_field(f"zero:{set_up.key}", "named", named))
        yield remark(view, "name-the-datum", message, placed[0].key, fix=fix, set_up=set_up.key)
