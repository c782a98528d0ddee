"""Asks whether a drill is larger than the machine's noted one."""

from __future__ import annotations

import re
from collections.abc import Iterator

from jobsheet.errors import JobsheetError
from jobsheet.model.remark import Fix, Remark
from jobsheet.operations import written
from jobsheet.review.mending.fixes import added_before
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.rule import Needs, View, remark, rule
from jobsheet.units.grammar import read
from jobsheet.units.show import trimmed


@rule("drill-within-the-noted-size", "Drill within the noted size", "rework", needs=Needs.FIGURES)
def drill_within_the_noted_size(view: View) -> Iterator[Remark]:
    """A drill goes into solid steel that is larger than the largest noted on the card.

    Quiet where it is piloted, and where as much was cut before.

    Because: One owner strips the same plastic gear with 25 mm drills every few years: the drive gives up before the motor.
    Not so: 13 mm from solid on a machine whose card notes 10
    So: a pilot first
    From: common practice
    """
    for step in plan_of(view).steps:
        if (
            step.roles.hole != "drill"
            or step.roles.opens
            or step.fields.cutter.kind not in ("drill", "core drill")
        ):
            continue
        diameter = step.fields.cutter.diameter
        noted = _noted(step.setting.machine.largest_drill)
        if not diameter or noted is None or step.setting.material.family not in ("steel", "stainless"):
            continue
        if step.setting.pilot or diameter <= noted + 1e-9:
            continue
        if step.outcome.governing is not None and step.outcome.governing.verdict == "cut before":
            continue
        message = f"Larger than this machine's noted drill, {trimmed(noted * 1e3, 2)} mm: mind the drive, not only the motor"
        yield remark(
            view, "drill-within-the-noted-size", message, step.key, fix=_pilot(step), set_up=step.set_up.key
        )


def _noted(text: str) -> float | None:
    found = re.match(r"\s*([\d.,/]+\s*(?:mm|in\b|\")?)", text)
    try:
        return read(found[1], "length", "mm") if found else None
    except JobsheetError:
        return None


def _pilot(step: Step) -> Fix | None:
    size = round(step.fields.cutter.diameter * 0.4e3 * 2) / 2
    texts = {
        "cutter": f"drill {trimmed(size, 1)} mm", "at": step.fields.at.text, "depth": step.fields.depth.text, "feed": "0.08 mm",
        "what": "Pilot",
    }  # fmt: skip
    return Fix(
        f"Pilot {trimmed(size, 1)} mm before {step.number}", added_before(step.key, written.DRILL, texts)
    )
