"""How square or parallel a step has to leave its faces: by its own words, else by
what the finished part asks of them.
"""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.finished.finished_part import finished_part
from jobsheet.model.job import Job
from jobsheet.model.shape import Edge, Slab
from jobsheet.review.plan.faces import Step

_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}
#: Forms that depend on how the work was set; flatness does not.
_SET = ("square", "parallel")


def asked_of_step(step: Step) -> float | None:
    """The closer of squareness and parallelism that a step itself asks [m]."""
    asked = getattr(step.fields, "tolerances", None)
    found = [one for one in (getattr(asked, form, None) for form in _SET) if one is not None]
    return min(found, default=None)


def faces_cut(step: Step) -> tuple[str, ...]:
    """The faces of the part that a step mills, whole or in part: the one that is up, and sides."""
    found = []
    for sized in step.cut.shapes:
        if isinstance(sized.shape, Slab):
            found.append(step.lie.up)
        elif isinstance(sized.shape, Edge):
            found.append(getattr(step.lie, _SIDES[sized.shape.side]))
    return tuple(dict.fromkeys(found))


def asked_of_part(job: Job, step: Step) -> Iterator[tuple[str, float]]:
    """Each face that the step mills and the finished part wants square or parallel, with how close [m]."""
    if not job.finished:
        return
    shape = finished_part(job).shape
    faces = faces_cut(step)
    for form in shape.forms if shape is not None else ():
        if form.form in _SET and form.face in faces:
            yield form.face, form.within
