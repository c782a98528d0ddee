"""A fix in words before it is pressed: what it changes, what it ends and what it leaves; or why none is offered."""

from __future__ import annotations

from collections.abc import Iterable

from jobsheet.model.job import Job
from jobsheet.model.remark import Remark
from jobsheet.review.engine import title_of
from jobsheet.review.mending.fix_tried import FixTried
from jobsheet.review.rule import RULES

#: So many remarks are named, the rest is counted.
MOST = 4


def by_hand(remark: Remark) -> str:
    """What a person can do where nothing is offered: said by the remark, else the right way that the rule's page shows."""
    said = remark.by_hand if isinstance(remark.by_hand, str) else remark.by_hand()
    if said:
        return said
    lines = RULES[remark.rule].explanation.splitlines() if remark.rule in RULES else []
    right = next((line.strip()[4:] for line in lines if line.strip().startswith("So: ")), "")
    return f"right is, for example: {right}" if right else ""


def refusal(remark: Remark, tried: FixTried) -> str:
    """Why no fix is offered and what a person could do, in one line."""
    hand = by_hand(remark)
    end = f". By hand, {hand}" if hand else ""
    return f"No fix is offered: {tried.why_not}{end}."


def outcome(tried: FixTried, job: Job) -> tuple[str, ...]:
    """Which remarks it ends and which stay, a line for each; the first by the numbers of the plan as it is, the others as it would be."""
    lines = [f"ends {_listed(tried.ends, job)}"]
    if tried.leaves:
        lines.append(f"leaves {_listed(tried.leaves, tried.job)}")
    else:
        lines.append("leaves no remark")
    return tuple(lines)


def _listed(remarks: Iterable[Remark], job: Job) -> str:
    """Titles with their steps: `“Slots in layers” (step 90), “Deburr after the last cut”, and 2 more`."""
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    said = []
    for one in remarks:
        number = numbers.get(one.operations[0]) if one.operations else None
        said.append(f"“{title_of(one.rule)}”" + (f" (step {number})" if number is not None else ""))
    said = list(dict.fromkeys(said))
    if len(said) > MOST:
        said = [*said[:MOST], f"and {len(said) - MOST} more"]
    return ", ".join(said)
