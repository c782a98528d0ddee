"""Asks whether a milling cutter is held in something that stands a side load."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.registry import roles
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import in_a_collet
from jobsheet.review.rule import View, remark, rule


@rule("no-milling-in-a-drill-chuck", "No milling in a drill chuck", "hazard")
def no_milling_in_a_drill_chuck(view: View) -> Iterator[Remark]:
    """A milling step whose cutter is held in a drill chuck.

    Because: Side load works chuck and taper loose.
    Not so: end mill 12 mm, in a drill chuck
    So: end mill 12 mm, in a collet
    From: The Shed, milling, part 3; common practice
    """
    for set_up, operation, _ in view.steps():
        cutter = getattr(operation.fields, "cutter", None)
        # A plunge is no such step: nothing pushes sideways.
        if cutter is None or cutter.holder != "drill chuck" or not roles(operation).mills:
            continue
        text = in_a_collet(cutter.text)
        yield remark(
            view, "no-milling-in-a-drill-chuck", "Collet or end-mill holder for milling, not a drill chuck", operation.key,
            set_up=set_up.key, fix=Fix("Hold it in a collet", set_field(operation.key, "cutter", text)),
        )  # fmt: skip
