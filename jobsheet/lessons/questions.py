"""A question with a figure for its answer: what is asked, how it is worked, what is right, and the slips that are often made."""

from __future__ import annotations

from msgspec import Struct


class Slipped(Struct, frozen=True, kw_only=True):
    """A wrong figure with a name: what it comes to, and what was done."""

    low: float
    high: float
    what: str


class Question(Struct, frozen=True, kw_only=True):
    """One figure to work out. `low` and `high` are what a bench takes for right, in the unit that is asked."""

    kind: str
    ask: str
    unit: str
    working: tuple[str, ...]
    answer: str
    low: float
    high: float
    tolerance: str
    source: str
    slips: tuple[Slipped, ...] = ()
