"""The right orders of some slips as lanes: an arrow means before, what lies
beside each other may be mixed.
"""

from __future__ import annotations

import textwrap

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Text
from jobsheet.drawing.making import arrow
from jobsheet.lessons.precedence import Precedence
from jobsheet.lessons.slips import Slip

#: Width of the drawing, how high a lane is, and the ring of a letter [points].
WIDE, LANE, RING = 505.0, 47.0, 9.5
#: Letters of a line of words under a ring for each point of room, lines at most.
LETTERS, LINES = 0.235, 3


def lanes(order: Precedence, slips: tuple[Slip, ...]) -> Drawing:
    """One ring a slip, from left to right by what must stand before it."""
    by_key = {slip.key: slip for slip in slips}
    level = {key: _level(order, key) for key in order.items}
    columns = max(level.values(), default=0) + 1
    lane = _lanes(order, level)
    count = max(lane.values(), default=0) + 1
    room = WIDE / columns
    alone = {
        key
        for key in order.items
        if all(order.before(key, item) or order.before(item, key) for item in order.items if item != key)
    }
    at = {
        key: (
            room * (level[key] + 0.5),
            8 + RING + ((count - 1) / 2 if key in alone else lane[key]) * LANE,
        )
        for key in order.items
    }
    items: list[Item] = []
    for first, then in order.needed():
        (x1, y1), (x2, y2) = at[first], at[then]
        far = ((x2 - x1) ** 2 + (y2 - y1) ** 2) ** 0.5
        dx, dy = (x2 - x1) / far * (RING + 2), (y2 - y1) / far * (RING + 2)
        items += arrow((x1 + dx, y1 + dy), (x2 - dx, y2 - dy))
    for key, (x, y) in at.items():
        items += [
            Ellipse(x, y, RING, RING, fill="paper"),
            Text(x, y + 3.8, by_key[key].letter, "number", "middle"),
        ]
        lines = textwrap.wrap(by_key[key].words, max(8, int(room * LETTERS)))
        for number, words in enumerate(lines[:LINES]):
            more = "…" if number == LINES - 1 and len(lines) > LINES else ""
            items.append(Text(x, y + RING + 8.5 + number * 8.6, f"{words}{more}", "caption", "middle", 7.5))
    return Drawing(WIDE, count * LANE + 8, tuple(items))


def _level(order: Precedence, key: str) -> int:
    """How many steps must stand before it one after the other."""
    ahead = [item for item in order.items if order.before(item, key)]
    return max((_level(order, one) + 1 for one in ahead), default=0)


def _lanes(order: Precedence, level: dict[str, int]) -> dict[str, int]:
    """A lane for each: that of a forerunner whose lane is still free at that
    place, else the first one that is.
    """
    lane: dict[str, int] = {}
    taken: set[tuple[int, int]] = set()
    needed = order.needed()
    for key in sorted(order.items, key=lambda item: level[item]):
        wanted = [lane[first] for first, then in needed if then == key]
        free = (one for one in (*sorted(wanted), *range(len(order.items))) if (one, level[key]) not in taken)
        lane[key] = next(free)
        taken.add((lane[key], level[key]))
    return lane
