"""The small language in which safety notes say when they apply: data, not code.

    trigger = term, joined by and, or, not and brackets
    term    = name | name known | name (= | in) word [, word …] | name (> | >= | < | <=) (number [unit] | name)

A term whose datum is missing is false; `not x known` is for where the missing thing is the danger.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jobsheet.review.notes.trigger_text import parsed

Facts = Mapping[str, Any]


def holds(text: str, facts: Facts) -> bool:
    """Whether the trigger is true of these facts; values are words, sets of
    words, numbers in SI or booleans.
    """
    return _holds(parsed(text)[0], facts)


def _holds(node: Any, facts: Facts) -> bool:
    what = node[0]
    if what == "and":
        return all(_holds(part, facts) for part in node[1])
    if what == "or":
        return any(_holds(part, facts) for part in node[1])
    if what == "not":
        return not _holds(node[1], facts)
    value = facts.get(node[1])
    if what == "known":
        return value not in (None, "", frozenset())
    if what == "true":
        return bool(value)
    if what == "in":
        have = value if isinstance(value, (set, frozenset)) else {_word(value)}
        return bool(have & node[2])
    limit = facts.get(node[2]) if isinstance(node[2], str) else node[2]
    if not isinstance(value, (int, float)) or not isinstance(limit, (int, float)):
        return False
    return {">": value > limit, ">=": value >= limit, "<": value < limit, "<=": value <= limit}[what]


def _word(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return str(value)
