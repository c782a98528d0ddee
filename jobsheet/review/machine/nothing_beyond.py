"""Asks whether anything is beyond what machine, cutter or holding gives."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.model.figures import Limit
from jobsheet.model.remark import Fix, Remark
from jobsheet.reckoning.what_if import tried, with_texts
from jobsheet.review.faces import Step, plan_of
from jobsheet.review.fixes import set_field
from jobsheet.review.passes import length_text
from jobsheet.review.rule import Needs, View, remark, rule

#: Limits that a rule of their own speaks of.
_ELSEWHERE = ("hand-pace", "travel", "marked-speed", "reverse")
#: What is made less where something is beyond: the layer first, else the depth of a face, else the cut's width.
_LESS = {
    "face": "layer",
    "fly-cut": "layer",
    "slot": "layer",
    "pocket": "layer",
    "keyway": "layer",
    "side-mill": "layer",
}
#: Into so many layers a depth is parted at most.
_MOST = 40


@rule("nothing-beyond", "Nothing beyond", "rework", needs=Needs.FIGURES)
def nothing_beyond(view: View) -> Iterator[Remark]:
    """The verdict of a limit is beyond; where it is the holding, it is a hazard.

    Quiet where it is tight, which is printed beside the step, and where nothing is known.

    Why: The frame usually gives up before the motor on a light mill.
    Wrong: 2.5 deep where the frame rang at 7.5 N/µm and this asks 9.9
    Right: 1.6 deep
    Source: a bench mill's manual; a home-shop blog
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
        lighter = _lighter(step, beyond, view.job.units)
        said = f": {worst.shown}" if worst.shown else ""
        end = f"; in layers of {lighter} it would go" if lighter else ""
        message = f"{worst.title} is beyond here{said}{end}"
        fix = Fix(f"Layers of {lighter}", set_field(step.key, "layer", lighter)) if lighter else None
        found = remark(view, "nothing-beyond", message, step.key, fix=fix, set_up=step.set_up.key)
        yield replace(found, severity="hazard") if worst.name == "holding" else found


def _lighter(step: Step, beyond: list[Limit], units: str) -> str:
    """The thickest even layer with which none of these is beyond; nothing where no layer mends it."""
    name = _LESS.get(step.kind)
    if name is None:
        return ""
    depth = step.fields.depth.value if step.fields.depth.value is not None else step.lie.size[2]
    now = round(step.figure("layers") or 1)
    names = {one.name for one in beyond}
    for count in range(now + 1, _MOST):
        text = length_text(depth / count + 5e-7, units)
        try:
            fields = with_texts(step.kind, step.fields, ((name, text),), units)
        except JobsheetError:
            return ""
        limits = tried(step.kind, fields, step.setting).limits
        if not any(one.verdict == "beyond" and one.name in names for one in limits):
            return text
        if depth / count < 0.1e-3:
            break
    return ""
