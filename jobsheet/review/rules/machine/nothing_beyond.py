"""Asks whether anything is beyond what machine, cutter or holding gives."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.lighter import lighter
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import Needs, View, remark, rule

#: Limits that a rule of their own speaks of.
_ELSEWHERE = ("hand-pace", "travel", "marked-speed", "cutting-speed", "reverse")


@rule("nothing-beyond", "Nothing beyond", "rework", needs=Needs.FIGURES)
def nothing_beyond(view: View) -> Iterator[Remark]:
    """The verdict of a limit is beyond; where it is the holding, it is a hazard.

    Quiet where it is tight, which is printed beside the step, and where nothing is known.

    Because: The frame usually gives up before the motor on a light mill.
    Not so: 2.5 deep where the frame rang at 7.5 N/µm and this asks 9.9
    So: 1.6 deep
    From: common practice
    """
    for step in plan_of(view).steps:
        beyond = [
            one for one in step.outcome.limits if one.verdict == "beyond" and one.name not in _ELSEWHERE
        ]
        if any(one.name == "headroom" for one in beyond) and step.lie.size[2] > max(step.lie.size[:2]):
            beyond = [one for one in beyond if one.name != "headroom"]  # lay-tall-work-flat speaks
        if not beyond:
            continue
        worst = max(beyond, key=lambda one: (one.name == "holding", one.share))
        layer = lighter(step, view.job.units, names=tuple(one.name for one in beyond))
        said = f": {worst.shown}" if worst.shown else ""
        end = f"; in layers of {layer} it would go" if layer else ""
        message = f"{worst.title} is beyond here{said}{end}"
        fix = Fix(f"Layers of {layer}", set_field(step.key, "layer", layer)) if layer else None
        found = remark(view, "nothing-beyond", message, step.key, fix=fix, set_up=step.set_up.key)
        yield replace(found, severity="hazard") if worst.name == "holding" else found
