"""A pair of steps that must stand in order, and why: in the words of the rule that reads a plan through."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.lessons.reasons import REASONS
from jobsheet.review.engine import rules, severity_of, title_of


class Pair(Struct, frozen=True):
    """One step before another, by their keys, and the rule that asks for it."""

    first: str
    then: str
    rule: str

    @property
    def title(self) -> str:
        """The rule, as people call it."""
        return REASONS[self.rule].title if self.rule in REASONS else title_of(self.rule)

    @property
    def because(self) -> str:
        """What goes wrong the other way round, in the rule's words."""
        return REASONS[self.rule].because if self.rule in REASONS else _line(self.rule, "Because: ")

    @property
    def source(self) -> str:
        """Where the rule is from, as it says itself."""
        return REASONS[self.rule].source if self.rule in REASONS else _line(self.rule, "From: ")

    @property
    def severity(self) -> str:
        """What it costs: hazard, scrap, rework or habit."""
        return REASONS[self.rule].severity if self.rule in REASONS else severity_of(self.rule)


def _line(rule_id: str, start: str) -> str:
    """A line of a rule's explanation, and what goes on under it."""
    explained = next((rule.explanation for rule in rules() if rule.id == rule_id), "")
    found: list[str] = []
    for line in map(str.strip, explained.splitlines()):
        if found and (not line or line.split(":")[0] in ("Not so", "So", "From", "Because")):
            break
        if found or line.startswith(start):
            found.append(line.removeprefix(start))
    return " ".join(found)
