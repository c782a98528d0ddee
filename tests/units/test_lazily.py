"""Patterns that are made when they are first used do what `re.compile` does."""

from __future__ import annotations

import re

from jobsheet.units.lazily import pattern


def test_it_finds_what_a_compiled_one_finds():
    lazy, made = pattern(r"(?P<n>\d+)\s*mm", re.IGNORECASE), re.compile(r"(?P<n>\d+)\s*mm", re.IGNORECASE)
    for text in ("12 MM", "mm", "7mm, 8 mm"):
        assert [one.groups() for one in lazy.finditer(text)] == [one.groups() for one in made.finditer(text)]
    assert (lazy.pattern, lazy.flags) == (made.pattern, made.flags)


def test_nothing_is_compiled_before_it_is_asked(monkeypatch):
    made = []
    compiled = re.compile
    monkeypatch.setattr(re, "compile", lambda *given: made.append(given) or compiled(*given))
    lazy = pattern("a+")
    assert made == []
    assert lazy.match("aa")
    assert lazy.match("a")
    assert made == [("a+", 0)]
