"""The language of triggers, term by term: what is read, what is refused, and
each comparison right at its limit.
"""

from __future__ import annotations

import pytest

from jobsheet.review.notes.trigger_text import TriggerError, parsed
from jobsheet.review.notes.triggers import holds


@pytest.mark.parametrize(
    ("trigger", "tree"),
    [
        ("a", ("true", "a")),
        ("a known", ("known", "a")),
        ("a = x", ("in", "a", frozenset({"x"}))),
        ("a in x, two words", ("in", "a", frozenset({"x", "two words"}))),
        ("a > 3", (">", "a", 3)),
        ("a <= 5 mm", ("<=", "a", 0.005)),
        ("a >= 2 kg", (">=", "a", 2)),
        ("a < b", ("<", "a", "b")),
        ("not a", ("not", ("true", "a"))),
        ("a and b", ("and", [("true", "a"), ("true", "b")])),
        ("a or b or c", ("or", [("true", "a"), ("true", "b"), ("true", "c")])),
        ("a or b and c", ("or", [("true", "a"), ("and", [("true", "b"), ("true", "c")])])),
        ("(a or b) and c", ("and", [("or", [("true", "a"), ("true", "b")]), ("true", "c")])),
    ],
)
def test_a_trigger_is_taken_apart(trigger, tree):
    assert parsed(trigger)[0] == tree


def test_the_names_of_its_terms_are_kept():
    assert parsed("a = x or (b > c and not d known)")[1] == {"a", "b", "c", "d"}


@pytest.mark.parametrize(
    ("trigger", "said"),
    [
        ("a b", "“b” is left over"),
        ("(a", "a bracket is not closed"),
        ("a and", "a term is missing before"),
        ("= x", "a term is missing before “=”"),
        (", x", "a term is missing before “,”"),
        ("a > 3 days", "“3 days” has no unit that a trigger knows"),
    ],
)
def test_what_cannot_be_read_is_said(trigger, said):
    with pytest.raises(TriggerError, match=said.replace("(", "\\(")):
        parsed(trigger)


@pytest.mark.parametrize(
    ("mark", "below", "at", "above"),
    [(">", 0, 0, 1), (">=", 0, 1, 1), ("<", 1, 0, 0), ("<=", 1, 1, 0)],
)
def test_a_comparison_right_at_its_limit(mark, below, at, above):
    assert [holds(f"a {mark} 3", {"a": value}) for value in (2.9, 3, 3.1)] == [
        bool(below),
        bool(at),
        bool(above),
    ]
    assert [holds(f"a {mark} b", {"a": value, "b": 3}) for value in (2.9, 3, 3.1)] == [
        bool(below),
        bool(at),
        bool(above),
    ]
    assert not holds(f"a {mark} 3", {})
    assert not holds(f"a {mark} 3", {"a": "many"})
    assert not holds(f"a {mark} b", {"a": 3})


def test_words_sets_and_truth_values():
    assert holds("a = yes", {"a": True})
    assert holds("a = no", {"a": False})
    assert not holds("a = yes", {"a": False})
    assert holds("a in x, y", {"a": "y"})
    assert holds("a in x, y", {"a": frozenset({"y", "z"})})
    assert not holds("a in x, y", {"a": frozenset({"z"})})
    assert [holds("a known", {"a": value}) for value in (None, "", frozenset(), "x", 0)] == [
        False,
        False,
        False,
        True,
        True,
    ]
    assert holds("not a", {"a": 0})
    assert not holds("a and b", {"a": True})
    assert holds("a or b", {"a": True})
