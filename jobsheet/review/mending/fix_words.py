"""A fix in words before it is pressed: what it changes, what it ends and what it leaves; or why none is offered."""

from __future__ import annotations

from collections.abc import Iterable

from jobsheet.model.job import Job
from jobsheet.model.remark import Remark
from jobsheet.review.engine import title_of
from jobsheet.review.mending.fix_tried import FixTried
from jobsheet.review.mending.same_place import place
from jobsheet.review.rule import RULES
from jobsheet.units.lazily import pattern

#: So many remarks are named, the rest is counted.
MOST = 4
_WHERE = pattern(r"(?:step|set-up) \d+|stock")


def by_hand(remark: Remark) -> str:
    """What a person can do where nothing is offered: said by the remark, else the right way that the rule's page shows."""
    said = remark.by_hand if isinstance(remark.by_hand, str) else remark.by_hand()
    if said:
        return said
    lines = RULES[remark.rule].explanation.splitlines() if remark.rule in RULES else []
    right = next((line.strip()[4:] for line in lines if line.strip().startswith("So: ")), "")
    return f"for example {right}" if right else ""


def refusal(remark: Remark, tried: FixTried) -> str:
    """Why no fix is offered and what a person could do, in one line."""
    hand = by_hand(remark)
    end = f". By hand: {hand}" if hand else ""
    return f"No fix is offered: {tried.why_not}{end}."


def outcome(remark: Remark, tried: FixTried, job: Job) -> tuple[str, str]:
    """Which remarks it ends and which stay; the first by the numbers of the plan as it is, the others as it would be."""
    others = [end for end in tried.ends if place(end) != place(remark)]
    ends = f"ends this and {_listed(others, job)}" if others else "ends this"
    return ends, f"leaves {_listed(tried.leaves, tried.job)}" if tried.leaves else "leaves no remark"


def together(lines: Iterable[str]) -> str:
    """Changes in one line, those of one step behind its number: `Changes step 50: depth per layer – → 1.3 mm`."""
    said: dict[str, list[str]] = {}
    for line in lines:
        where, comma, what = line.partition(", ")
        known = comma and _WHERE.fullmatch(where)
        said.setdefault(where if known else "", []).append(what.replace(": ", " ", 1) if known else line)
    return _sentence(
        "; ".join(
            f"changes {where}: {', '.join(what)}" if where else "; ".join(what)
            for where, what in said.items()
        )
    )


def ends_and_leaves(remark: Remark, tried: FixTried, job: Job) -> str:
    """The outcome in one line."""
    return _sentence("; ".join(outcome(remark, tried, job)))


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}."


def _listed(remarks: Iterable[Remark], job: Job) -> str:
    """Titles with their steps: `“Slots in layers” (step 90), “Deburr after the last cut” (step 80), and 2 more`."""
    numbers = {operation.key: operation.number for _, operation in job.operations()}
    steps: dict[str, list[str]] = {}
    for remark in remarks:
        number = numbers.get(remark.operations[0]) if remark.operations else None
        steps.setdefault(title_of(remark.rule), []).append("" if number is None else str(number))
    said = [f"“{title}”{_at(known)}" for title, known in steps.items()]
    if len(said) > MOST:
        said = [*said[:MOST], f"and {len(said) - MOST} more"]
    return ", ".join(said)


def _at(numbers: list[str]) -> str:
    known = sorted({number for number in numbers if number}, key=int)
    if not known:
        return ""
    return f" (step {known[0]})" if len(known) == 1 else f" (steps {', '.join(known)})"
