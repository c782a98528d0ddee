"""What the adviser answers: a complete changed step with its figures, what stays
wrong with it, and the other way.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.model.figure import Limit
from jobsheet.operations.shared.advice import Advice
from jobsheet.reckoning.adviser.burden import Burden, burden_of, heavy, over
from jobsheet.reckoning.what_if import Tried


class Candidate(Struct, frozen=True, kw_only=True):
    """One way of cutting it, as texts in fields, reckoned; speed [rev/s], feed per tooth or per turn [m]."""

    fields: Any
    texts: tuple[tuple[str, str], ...]
    found: Tried
    burden: Burden
    speed: float
    feed: float
    passes: int
    seconds: float


class Advised(Struct, frozen=True, kw_only=True):
    """The best cut of a kind here: every value with its reason, the step as it would be, reckoned.

    `values` are all that the adviser chooses, empty texts for what the program then chooses to the same end;
    `fields` hold them. `rivals` are other cuts that go, in words.
    """

    values: tuple[Advice, ...]
    fields: Any
    found: Tried
    passes: int
    seconds: float
    rivals: tuple[str, ...] = ()
    other_way: str = ""

    @property
    def clears(self) -> bool:
        """Whether no limit is beyond."""
        return self.found.carried

    @property
    def easy(self) -> bool:
        """Whether every limit is as expected, and none is unknown at such a load."""
        return burden_of(self.found, 0) == (0, 0, 0)

    @property
    def stays(self) -> tuple[Limit, ...]:
        """The limits that no cut of this kind clears here: beyond, or else at their edge."""
        return tuple(limit for limit in self.found.limits if over(limit)) or tuple(
            limit for limit in self.found.limits if heavy(limit)
        )


class Changed(Struct, frozen=True, kw_only=True):
    """What to write into a step as it stands, only what makes it better; the step as it is then, reckoned."""

    advised: Advised
    values: tuple[Advice, ...]
    fields: Any
    found: Tried

    @property
    def edits(self) -> tuple[tuple[str, str], ...]:
        """What to type; nothing where the step is as good as the best."""
        return tuple((advice.name, advice.text) for advice in self.values)
