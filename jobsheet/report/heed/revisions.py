"""The revisions of the plan as a block: number, when, what changed as typed, who; and the
remarks that were set aside, with reason.
"""

from __future__ import annotations

from jobsheet.model.job import Dismissed
from jobsheet.report.blocks import Cell, Column, Gap, Heading, NoteLine, NoteLines, Rule, Table
from jobsheet.report.plan import Plan
from jobsheet.review.engine import severity_of, title_of
from jobsheet.storage.plan_mark import plan_mark

#: So many of the last revisions; older ones are in the file.
LAST = 4


def revision_blocks(plan: Plan) -> tuple[object, ...]:
    """The last revisions, newest first, a blank row for the next, and what was set aside."""
    blocks: list[object] = []
    if plan.job.revisions:
        rows = [
            tuple(
                Cell(text)
                for text in (
                    plan_mark(revision.number),
                    plan.short(revision.when, 20, "revision, date"),
                    plan.short(revision.changed, 300, f"plan {plan_mark(revision.number)}, what changed"),
                    plan.short(revision.who, 30, "revision, by"),
                )
            )
            for revision in reversed(plan.job.revisions[-LAST:])
        ]
        columns = (
            Column(caption="plan", style="number"),
            Column(caption="date"),
            Column(caption="what changed", wide=True),
            Column(caption="by"),
        )
        blank = tuple(Cell() for _ in columns)
        blocks += [Gap(2), Rule(), Heading("Revisions"), Table(columns=columns, rows=(*rows, blank))]
    if plan.job.dismissed:
        lines = tuple(
            NoteLine(_where(plan, dismissed) + aside_words(plan, dismissed), _sign(dismissed))
            for dismissed in plan.job.dismissed
        )
        blocks += [
            Gap(2),
            Rule(),
            Heading("Set aside for this job", "remarks of the review, with the reason"),
        ]
        blocks.append(NoteLines(lines, "label"))
    return tuple(blocks)


def _where(plan: Plan, dismissed: Dismissed) -> str:
    numbers = {operation.key: f"Step {operation.number}, " for _, operation in plan.job.operations()}
    numbers |= {set_up.key: f"Set-up {set_up.number}, " for set_up in plan.job.set_ups}
    return numbers.get(dismissed.about, "")


def aside_words(plan: Plan, dismissed: Dismissed) -> str:
    """What was set aside, why and by whom; where a hazard has nobody's initials, a line for them."""
    title = title_of(dismissed.rule)
    reason = plan.short(dismissed.reason, 300, f"set aside, {title.lower()}").rstrip(".")
    by = dismissed.initials or ("initials ________" if severity_of(dismissed.rule) == "hazard" else "")
    return f"{title}: {reason}{f' ({by})' if by else ''}."


def _sign(dismissed: Dismissed) -> str:
    return severity_of(dismissed.rule)


def set_aside_at(plan: Plan, operation: str) -> tuple[NoteLine, ...]:
    """Hazards that were set aside at a step, or at the set-up that it is the first
    step of, with reason and initials.
    """
    about = {operation} | {
        set_up.key
        for set_up in plan.job.set_ups
        if set_up.operations and set_up.operations[0].key == operation
    }
    return tuple(
        NoteLine(f"Set aside: {aside_words(plan, dismissed)}", "hazard", True)
        for dismissed in plan.job.dismissed
        if dismissed.about in about and severity_of(dismissed.rule) == "hazard"
    )


def hazards_aside(plan: Plan) -> tuple[NoteLine, ...]:
    """Every hazard that was set aside, for a cover that has no room for the rest of what was."""
    return tuple(
        NoteLine(f"Set aside: {_where(plan, dismissed)}{aside_words(plan, dismissed)}", "hazard", True)
        for dismissed in plan.job.dismissed
        if severity_of(dismissed.rule) == "hazard"
    )
