"""If it rings: the ordered way back from a milling cut that chatters, with this
machine's and this step's own numbers.
"""

from __future__ import annotations

from jobsheet.machine.spindle import steps
from jobsheet.model.job import Operation
from jobsheet.operations.registry import kind as kind_of
from jobsheet.report.plan import Plan
from jobsheet.units.show import plain

#: A speed counts as another one where it differs by more than this share.
OTHER = 0.01


def rings(plan: Plan, operation: Operation) -> str:
    """One line for a milling step, the mildest measure first (common practice); empty for any other step."""
    figures = plan.reckoned.operations[operation.key].figures
    if figures is None or "milling" not in kind_of(operation.kind).groups:
        return ""
    words = ["lock the slides"]
    speed = figures.value("spindle_speed")
    slower = [step.speed for step in steps(plan.card) if speed and step.speed < speed * (1 - OTHER)]
    if slower:
        words.append(f"next speed down, {plain(max(slower) * 60, 0)}")
    elif speed:
        words.append("slower, if the speeds go by a knob" if not steps(plan.card) else "no slower speed here")
    return f"If it rings: {' · '.join(words)} · half the width · half the depth"
