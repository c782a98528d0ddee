"""Asks whether squareness that the drawing asks is made and measured."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.settled import AXIS
from jobsheet.model.finished import FaceForm
from jobsheet.model.remark import Remark
from jobsheet.model.stock import FINISHED
from jobsheet.review.plan.as_asked import AsAsked, as_asked, left_raw
from jobsheet.review.plan.asked_limits import measures_all
from jobsheet.review.plan.faces import Step
from jobsheet.review.plan.lengths import fine
from jobsheet.review.rule import View, remark, rule

#: A trammed head and a checked vice leave a face square within this share of its
#: way (common practice, no source).
GIVEN = 2e-3


@rule("squareness-is-measured", "Squareness is measured", "scrap")
def squareness_is_measured(view: View) -> Iterator[Remark]:
    """The drawing wants a face square to another, and no step measures that, or no step cuts the face at all.

    A step measures it that has `square` in its tolerances or in what it measures, or that measures without saying what. Quiet where
    no more is asked than 0.2 per 100 mm: that much a mill and a vice that were checked give without being measured.

    Because: A block can be to size on all six faces and lean.
    Not so: front square to bottom 0.03, six faces milled, sizes measured
    So: the same, and square 0.03 asked in the step that mills the front
    From: common practice
    """
    asked = as_asked(view)
    if asked is None or asked.part.shape is None:
        return
    forms = [form for form in asked.part.shape.forms if form.form == "square"]
    raw = {face_found.face for face_found in left_raw(asked)}
    bought = [form for form in forms if _bought(asked, form.face) and form.face not in raw]
    if bought:
        face, within = bought[0].face, fine(bought[0].within, view.job.units)
        message = (
            f"The {face} face is to be square within {within} and is never cut: it stays as it was bought"
        )
        yield remark(view, "squareness-is-measured", message, line=0, by_hand="put in the step that cuts it")
    made = [form for form in forms if asked.face(form.face).steps and not _wide(asked, form)]
    if made and not any(_measures(step) for step in asked.plan.steps):
        last = max(
            (step for face_form in made for step in asked.steps(asked.face(face_form.face).steps)),
            key=lambda step: step.index,
        )
        message = f"Nothing measures squareness, and {_faces(made)} to be square within {fine(min(face_form.within for face_form in made), view.job.units)}"
        yield remark(
            view, "squareness-is-measured", message, last.key, set_up=last.set_up.key, line=0,
            by_hand="write it under Tolerances of the step that mills the face, or put in a step at the bench that measures",
        )  # fmt: skip


def _wide(asked: AsAsked, face_form: FaceForm) -> bool:
    """Whether no more is asked than machine and vice give: over the way in which the face can lean to each face it is square to."""
    box = asked.plan.steps[-1].cut.after.box
    ways = [high - low for face in face_form.to for low, high in (box[AXIS[face]],)]
    return bool(ways) and face_form.within > GIVEN * max(ways) + 1e-9


def _bought(asked: AsAsked, face: str) -> bool:
    return not asked.face(face).steps and asked.plan.job.stock.surface(face) != FINISHED


def _faces(forms: list[FaceForm]) -> str:
    names = list(dict.fromkeys(form.face for form in forms))
    return f"the {names[0]} face is" if len(names) == 1 else f"{len(names)} faces are"


def _measures(step: Step) -> bool:
    tolerances, size = getattr(step.fields, "tolerances", None), getattr(step.fields, "measure", None)
    if tolerances is not None and tolerances.square is not None:
        return True
    if any(name == "square" for name, *_ in getattr(size, "asks", ())):
        return True
    if getattr(step.fields, "instrument", None) == "square" or getattr(size, "instrument", "") == "square":
        return True
    return measures_all(step)
