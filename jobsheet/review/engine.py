"""Reads a plan through: every rule of every folder, the worst remark first."""

from __future__ import annotations

import importlib
from functools import cache
from pathlib import Path

from jobsheet.model.job import Job
from jobsheet.model.remark import SEVERITIES, Remark
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.rule import RULES, Rule, View


@cache
def rules() -> tuple[Rule, ...]:
    """All rules: every module in a folder of this package is one; adding the file is the registration."""
    here = Path(__file__).parent
    for path in sorted(here.glob("*/*.py")):
        if path.stem != "__init__":
            importlib.import_module(f"jobsheet.review.{path.parent.name}.{path.stem}")
    return tuple(sorted(RULES.values(), key=lambda one: one.id))


def review(job: Job, reckoned: Reckoned) -> tuple[Remark, ...]:
    """All remarks on a plan: the worst first, those of one severity in cutting order."""
    view = View(job, reckoned)
    order = {operation.key: index for index, (_, operation) in enumerate(job.operations())}
    found = [remark for rule in rules() for remark in rule.check(view)]
    return tuple(
        sorted(
            found,
            key=lambda one: (
                SEVERITIES.index(one.severity),
                min((order.get(key, 0) for key in one.operations), default=-1),
            ),
        )
    )
