"""Reads a plan through: every rule of every folder, the worst remark first; what was
set aside for this job stands apart.
"""

from __future__ import annotations

import importlib
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.model.job import Dismissed, Job
from jobsheet.model.not_checked import NotChecked, alone
from jobsheet.model.remark import SEVERITIES, Remark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.plan.not_compared import lines_not_compared
from jobsheet.review.rule import RULES, Needs, Rule, View


@cache
def rules() -> tuple[Rule, ...]:
    """All rules: every module in a folder of `rules/` is one; adding the file is the registration."""
    here = Path(__file__).parent / "rules"
    for path in sorted(here.glob("*/*.py")):
        if path.stem != "__init__":
            importlib.import_module(f"jobsheet.review.rules.{path.parent.name}.{path.stem}")
    return tuple(sorted(RULES.values(), key=lambda rule: rule.id))


def title_of(rule_id: str) -> str:
    """What a rule is called by people; the id itself where it is no longer there."""
    return next((rule.title for rule in rules() if rule.id == rule_id), rule_id)


def severity_of(rule_id: str) -> str:
    """How bad what a rule finds is; `habit` where it is no longer there."""
    return next((rule.severity for rule in rules() if rule.id == rule_id), "habit")


class Reviewed(Struct, frozen=True):
    """What is open on a plan, what was set aside with its reason, and what could not be checked.

    `not_checked` is to be said wherever the remarks are: without it a rule that failed
    looks like one that found nothing.
    """

    open: tuple[Remark, ...]
    aside: tuple[tuple[Remark, Dismissed], ...]
    not_checked: tuple[NotChecked, ...] = ()


def about(remark: Remark) -> str:
    """What a remark is about, as a dismissal names it: its first step, else its set-up, else its
    line of the drawing, else nothing.
    """
    line = f"line {remark.line}" if remark.line is not None else ""
    return remark.operations[0] if remark.operations else remark.set_up or line


def counts(dismissed: Dismissed, remark: Remark, job: Job) -> bool:
    """Whether a dismissal holds: it needs a reason, and for a hazard in a trainee's job
    the initials of the person in charge.
    """
    if not dismissed.reason.strip():
        return False
    return not (remark.severity == "hazard" and job.trainee) or bool(dismissed.initials.strip())


def reviewed(job: Job, reckoned: Reckoned, facts: Sequence[Any] | None = None) -> Reviewed:
    """All remarks on a plan: the worst first, those of one severity in cutting order.

    Parameters
    ----------
    facts : sequence of `stages.checks.Fact`, optional
        What the solids say; without them the rules that need stages are not asked
    """
    view = View(reckoned.job, reckoned, tuple(facts or ()))
    order = {operation.key: index for index, (_, operation) in enumerate(job.operations())}
    asked = [rule for rule in rules() if facts is not None or rule.needs is not Needs.STAGES]
    failed = [
        NotChecked(what="solids", why=fact.about, operation=fact.key) for fact in view.facts_of("not-checked")
    ]
    failed += alone(
        lambda: list(lines_not_compared(view)), lambda why: [NotChecked(what="finished part", why=why)]
    )
    remarks = sorted(
        (remark for rule in asked for remark in _asked(rule, view, failed)),
        key=lambda remark: (
            SEVERITIES.index(remark.severity),
            min((order.get(key, 0) for key in remark.operations), default=-1),
        ),
    )
    said = {(dismissed.rule, dismissed.about): dismissed for dismissed in job.dismissed}
    open_: list[Remark] = []
    aside: list[tuple[Remark, Dismissed]] = []
    for remark in remarks:
        dismissal = said.get((remark.rule, about(remark)))
        if dismissal is not None and counts(dismissal, remark, job):
            aside.append((remark, dismissal))
        else:
            open_.append(remark)
    return Reviewed(tuple(open_), tuple(aside), tuple(dict.fromkeys(failed)))


def _asked(rule: Rule, view: View, failed: list[NotChecked]) -> tuple[Remark, ...]:
    """What one rule finds; a rule that fails finds nothing, and that is kept."""

    def keep(why: str) -> tuple[Remark, ...]:
        failed.append(NotChecked(what=f"“{rule.title}”", why=why))
        return ()

    return alone(lambda: tuple(rule.check(view)), keep)


def review(job: Job, reckoned: Reckoned, facts: Sequence[Any] | None = None) -> tuple[Remark, ...]:
    """The remarks that are open, as `reviewed` finds them."""
    return reviewed(job, reckoned, facts).open
