"""A rule: one question about a plan; the docstring is the explanation that the user reads."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from enum import Enum
from typing import Any

from msgspec import Struct

from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.remark import SEVERITIES, Fix, Remark
from jobsheet.reckoning.reckoner import Outcome, Reckoned


class Needs(Enum):
    """What a rule reads; those that need stages wait for the solids, all others run right after the paint."""

    ORDER = "order"
    FIGURES = "figures"
    STAGES = "stages"


class View(Struct, frozen=True):
    """A plan as rules see it: frozen, and nothing in it can change the plan."""

    job: Job
    reckoned: Reckoned
    #: What the solids say; empty while there are none. Only rules that need stages read it.
    facts: tuple[Any, ...] = ()

    def facts_of(self, kind: str) -> Iterator[Any]:
        """The facts of a kind, as `stages.checks` names them."""
        return (fact for fact in self.facts if fact.kind == kind)

    def steps(self) -> Iterator[tuple[SetUp, Operation, Outcome]]:
        """Every operation in cutting order with its set-up and what was reckoned of it."""
        for set_up in self.job.set_ups:
            for operation in set_up.operations:
                yield set_up, operation, self.reckoned.operations[operation.key]


Check = Callable[[View], Iterator[Remark]]


class Rule(Struct, frozen=True, kw_only=True):
    """A rule bound to its id, title, severity and needs."""

    id: str
    title: str
    severity: str
    needs: Needs
    check: Check

    @property
    def explanation(self) -> str:
        """The docstring: why, wrong, right, source."""
        return self.check.__doc__ or ""


RULES: dict[str, Rule] = {}


def rule(rule_id: str, title: str, severity: str, needs: Needs = Needs.ORDER) -> Callable[[Check], Check]:
    """Register a check under its id.

    Raises
    ------
    ValueError
        If another rule has this id already, or the severity is none of ours.
    """
    if severity not in SEVERITIES:
        raise ValueError(f"{severity} is not a severity")

    def register(check: Check) -> Check:
        if rule_id in RULES:
            raise ValueError(f"two rules are called {rule_id}")
        RULES[rule_id] = Rule(id=rule_id, title=title, severity=severity, needs=needs, check=check)
        return check

    return register


def remark(
    view: View,
    rule_id: str,
    message: str,
    *operations: str,
    fix: Fix | None = None,
    set_up: str = "",
    others: tuple[Fix, ...] = (),
    by_hand: str | Callable[[], str] = "",
    line: int | None = None,
) -> Remark:
    """A remark of that rule about these operations (keys); the reason is the rule's own `Why:` line."""
    del view
    found = RULES[rule_id]
    why = next(
        (line.strip()[9:] for line in found.explanation.splitlines() if line.strip().startswith("Because: ")),
        "",
    )
    return Remark(
        rule=rule_id, severity=found.severity, message=message, why=why, operations=operations, set_up=set_up, fix=fix,
        others=others, by_hand=by_hand, line=line,
    )  # fmt: skip
