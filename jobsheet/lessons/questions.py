"""A question with a figure for its answer: what is asked, how it is worked, what a bench takes for right, and slips that are often made."""

from __future__ import annotations

from math import nan

from msgspec import Struct

from jobsheet.lessons.slips import WrongAnswer

#: Between a typed figure and a named slip [-]: rounding on the way.
NEAR = 0.02


class Slipped(Struct, frozen=True, kw_only=True):
    """A wrong figure with a name: what it comes to in the unit that is asked, and what was done."""

    value: float
    what: str


class Question(Struct, frozen=True, kw_only=True):
    """One figure to work out. `low` and `high` bound what is right, in the unit that is asked.

    On a dial `turns` are whole turns, and the bounds are lines; else it is -1.
    """

    kind: str
    ask: str
    unit: str
    working: tuple[str, ...]
    answer: str
    low: float
    high: float
    tolerance: str
    source: str
    turns: int = -1
    slips: tuple[Slipped, ...] = ()


class Checked(Struct, frozen=True, kw_only=True):
    """What is said of one typed figure; `slip` names what was done where that fits."""

    question: Question
    typed: str
    right: bool
    slip: str = ""


def checked(question: Question, typed: str) -> Checked:
    """A figure as it was typed: `398`, `14.2`, and on a dial `2+191`. Raises WrongAnswer where it is no figure."""
    turns, value = _read(question, typed)
    if question.turns >= 0:
        right = turns == question.turns and question.low <= value <= question.high
        whole = "a whole turn out: that is scrap" if not right and turns != question.turns else ""
        named = next(
            (one.what for one in question.slips if not right and _same(one.value, turns * 1000 + value)),
            whole,
        )
        return Checked(question=question, typed=typed, right=right, slip=named)
    right = question.low <= value <= question.high
    named = next((one.what for one in question.slips if not right and _same(one.value, value)), "")
    return Checked(question=question, typed=typed, right=right, slip=named)


def _same(one: float, other: float) -> bool:
    return abs(one - other) <= NEAR * abs(one)


def _read(question: Question, typed: str) -> tuple[int, float]:
    text = typed.strip().replace(",", ".")
    try:
        if question.turns < 0:
            return -1, float(text)
        turns, plus, line = text.partition("+")
        return int(turns), float(line) if plus else nan
    except ValueError:
        how = (
            "whole turns and line, such as 2+191"
            if question.turns >= 0
            else f"the number alone, in {question.unit}"
        )
        raise WrongAnswer(f"“{typed}” is no figure: write {how}") from None
