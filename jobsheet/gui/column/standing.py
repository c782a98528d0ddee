"""How the lines of the column stand one under the other: values and arithmetic, no widgets.

A line is a row, a heading, or one that asks something and is a widget of its own
(a notice, advice to an empty job).
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Container, Iterable, Iterator
from operator import attrgetter

from jobsheet.gui.column.line import Line


class Standing:
    """All lines in their order."""

    def __init__(self) -> None:
        self.lines: list[Line] = []

    def place(self, high: Callable[[Line], int], top: int = 0) -> tuple[int, bool]:
        """Put each under the one before it; where the last one ends, and whether any stands elsewhere now."""
        moved = False
        for line in self.lines:
            wanted = high(line)
            if line.top != top or line.high != wanted:
                line.top, line.high, moved = top, wanted, True
            top += wanted
        return top, moved

    def at(self, y: int) -> Line | None:
        """The line at a height."""
        index = bisect_right(self.lines, y, key=attrgetter("top")) - 1
        return self.lines[index] if index >= 0 and y < self.lines[index].bottom else None

    def between(self, top: int, bottom: int) -> Iterator[Line]:
        """The lines of which something stands between two heights."""
        first = max(0, bisect_right(self.lines, top, key=attrgetter("top")) - 1)
        for line in self.lines[first:]:
            if line.top > bottom:
                return
            if line.bottom > top:
                yield line

    def headings_around(self, y: int) -> tuple[Line | None, Line | None]:
        """The last heading that begins above a height, and the first one from there on."""
        above: Line | None = None
        for line in self.lines:
            if line.is_heading:
                if line.top >= y:
                    return above, line
                above = line
        return above, None

    def step(self, here: str, by: int, *, rows_only: bool = False) -> str:
        """The key of the line that many lines further on, within the ends."""
        keys = [line.key for line in self.lines if (line.is_row if rows_only else line.is_painted)]
        if not keys:
            return ""
        if here in keys:
            return keys[min(max(keys.index(here) + by, 0), len(keys) - 1)]
        every = [line.key for line in self.lines]
        if here in every:
            at = every.index(here)
            beyond = [key for key in keys if (every.index(key) > at) == (by > 0)]
            if beyond:
                return beyond[0] if by > 0 else beyond[-1]
        return keys[0]

    def drop_place(self, dragged: Container[str], y: int) -> tuple[str, int, int]:
        """Where rows let go at a height would stand: set-up, index in it without them, y of the mark."""
        set_up, index, mark = "", 0, 0
        for line in self.lines:
            middle = line.top + line.high // 2
            if line.is_heading:
                if set_up and y < middle:
                    break
                set_up, index, mark = line.key, 0, line.bottom
            elif line.is_row:
                if y < middle:
                    break
                mark = line.bottom
                if line.key not in dragged:
                    index += 1
        return set_up, index, mark


def same_order(lines: Iterable[Line], other: Iterable[Line]) -> bool:
    """Whether rows and headings stand in the same order; what asks something is passed over."""
    return [line.key for line in lines if line.is_painted] == [line.key for line in other if line.is_painted]
