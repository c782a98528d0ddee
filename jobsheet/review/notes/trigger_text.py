"""The text of a trigger becomes what it asks; a slip is told with its place."""

from __future__ import annotations

import re
from functools import cache
from typing import Any

from jobsheet.errors import JobsheetError
from jobsheet.units.grammar import read, read_number

_TOKEN = re.compile(r"\(|\)|>=|<=|=|>|<|,|[^\s(),<>=]+")
_ENDS = {"and", "or", ")", ""}


class TriggerError(JobsheetError):
    """A trigger in our own data that cannot be read."""


class _Parser:
    def __init__(self, text: str) -> None:
        self._tokens = _TOKEN.findall(text)
        self._at = 0
        self.names: set[str] = set()

    def _peek(self) -> str:
        return self._tokens[self._at] if self._at < len(self._tokens) else ""

    def _next(self) -> str:
        piece = self._peek()
        self._at += 1
        return piece

    def whole(self) -> Any:
        found = self._either()
        if self._peek():
            raise TriggerError(f"“{self._peek()}” is left over")
        return found

    def _either(self) -> Any:
        parts = [self._both()]
        while self._peek() == "or":
            self._next()
            parts.append(self._both())
        return ("or", parts) if len(parts) > 1 else parts[0]

    def _both(self) -> Any:
        parts = [self._term()]
        while self._peek() == "and":
            self._next()
            parts.append(self._term())
        return ("and", parts) if len(parts) > 1 else parts[0]

    def _term(self) -> Any:
        piece = self._next()
        if piece == "not":
            return ("not", self._term())
        if piece == "(":
            found = self._either()
            if self._next() != ")":
                raise TriggerError("a bracket is not closed")
            return found
        if piece in _ENDS or piece in ("=", "in", ","):
            raise TriggerError(f"a term is missing before “{piece}”")
        self.names.add(piece)
        return self._comparison(piece)

    def _comparison(self, name: str) -> Any:
        mark = self._peek()
        if mark == "known":
            self._next()
            return ("known", name)
        if mark in ("=", "in"):
            self._next()
            return ("in", name, frozenset(self._words()))
        if mark in (">", ">=", "<", "<="):
            self._next()
            return (mark, name, self._number())
        return ("true", name)

    def _words(self) -> list[str]:
        words: list[list[str]] = [[]]
        while self._peek() not in _ENDS:
            piece = self._next()
            if piece == ",":
                words.append([])
            else:
                words[-1].append(piece)
        return [" ".join(word) for word in words if word]

    def _number(self) -> float | str:
        if self._peek()[:1].isalpha():
            name = self._next()
            self.names.add(name)
            return name
        text = []
        while self._peek() not in _ENDS:
            text.append(self._next())
        joined = " ".join(text)
        number, unit = read_number(joined)
        if not unit.strip():
            return number
        for measures in ("length", "mass"):
            try:
                return read(joined, measures)
            except JobsheetError:
                continue
        raise TriggerError(f"“{joined}” has no unit that a trigger knows")


@cache
def parsed(text: str) -> tuple[Any, frozenset[str]]:
    """A trigger taken apart, and the names of its terms.

    Raises
    ------
    TriggerError
        If it cannot be read.
    """
    parser = _Parser(text)
    tree = parser.whole()
    return tree, frozenset(parser.names)
