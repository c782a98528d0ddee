"""Asks whether the zero stands on the faces that the drawing measures from."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.lying import OPPOSITE
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import Mend, in_turn, set_field
from jobsheet.review.plan.hole_chains import places_of
from jobsheet.review.plan.zero_faces import zero_faces
from jobsheet.review.rule import View, remark, rule

_OTHER = {
    "left": "right",
    "right": "left",
    "front": "rear",
    "rear": "front",
    "away": "towards",
    "towards": "away",
}


@rule("zero-on-the-datum-faces", "Zero on the datum faces", "scrap")
def zero_on_the_datum_faces(view: View) -> Iterator[Remark]:
    """The zero of places stands on the face opposite a datum.

    Nothing is said where the datum faces are still to be cut and the zero stands inside the edge by a typed amount.

    Because: Otherwise the error of the stock's size comes into every place.
    Not so: datum B is the left end, zero on the right end
    So: datum B is the left end, zero on the left end
    From: common practice
    """
    datums = {face: letter for letter, face in view.job.datums}
    if not datums:
        return
    for set_up in view.job.set_ups:
        placed = [operation for operation in set_up.operations if places_of(operation)]
        finders = [operation for operation in set_up.operations if roles(operation).beside == "find"]
        if not placed or set_up.zero.stands_on not in ("", "edges"):
            continue
        if any(operation.fields.inside is not None for operation in finders):
            continue
        wrong = [
            (axis, face)
            for axis, face in zip("xy", zero_faces(view, set_up), strict=True)
            if face not in datums and OPPOSITE[face] in datums
        ]
        if not wrong:
            continue
        mends: list[Mend] = []
        for axis, _ in wrong:
            for name in (f"{axis}_from", f"{axis}_counts"):
                now = getattr(set_up.zero, name)
                mends.append(set_field(f"zero:{set_up.key}", name, _OTHER[now]))
        right = " and ".join(f"{datums[OPPOSITE[face]]} ({OPPOSITE[face]})" for _, face in wrong)
        faces = " and ".join(face for _, face in wrong)
        message = f"The zero stands on the {faces}: find {right}, from which the drawing measures"
        yield remark(
            view, "zero-on-the-datum-faces", message, placed[0].key, set_up=set_up.key,
            fix=Fix(f"Zero on {right}, counting into the work", in_turn(*mends), tuple(operation.key for operation in set_up.operations)),
        )  # fmt: skip
