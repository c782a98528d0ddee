"""Asks whether a finishing pass has enough to cut."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.operations.manners import SPRING
from jobsheet.review.mending.fixes import Mend, in_turn, set_field
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.plan.held import how
from jobsheet.review.plan.lengths import fine, round_up, rounded
from jobsheet.review.plan.rough_and_finish import Last, last_pass, length_text
from jobsheet.review.rule import View, remark, rule


@rule("finish-allowance-enough", "Finishing allowance enough", "rework")
def finish_allowance_enough(view: View) -> Iterator[Remark]:
    """A finishing pass is planned thinner than a tenth of a millimetre.

    Quiet for a spring pass: a second one at the same dial.

    Because: Too thin a layer is rubbed, not cut.
    Not so: finish 0.03 off
    So: finish 0.2 off
    From: common practice
    """
    least = view.reckoned.shop.least_finish
    plan = plan_of(view)
    for step in plan.steps:
        last = last_pass(plan, step)
        if last is None or last.rough is None or last.thick >= least - 1e-9:
            continue
        if how(step.operation, SPRING):
            continue
        message = f"Little left to cut: {fine(last.thick, view.job.units)} may rub; leave {rounded(least, view.job.units)} or more"
        wanted = round_up(2 * least, view.job.units)
        mend = _more(last, wanted, view.job.units)
        fix = Fix(f"Leave {fine(wanted, view.job.units)}", mend) if mend else None
        yield remark(view, "finish-allowance-enough", message, step.key, fix=fix, set_up=step.set_up.key)


def _more(last: Last, wanted: float, units: str) -> Mend | None:
    """The finishing pass thicker, and what roughs before it thinner by as much."""
    step, rough = last.step, last.rough
    if rough is step:
        return set_field(step.key, "leave", length_text(wanted, units))
    if rough is None or rough.kind != step.kind:
        return None
    name = "width" if step.roles.mills == "wall" else "depth"
    left = getattr(rough.fields, name).value - (wanted - getattr(step.fields, name).value)
    if left <= wanted:
        return set_field(step.key, name, length_text(wanted, units))
    return in_turn(
        set_field(rough.key, name, length_text(left, units)),
        set_field(step.key, name, length_text(wanted, units)),
    )
