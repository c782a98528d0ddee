"""Words in a drawing of a part of the work: each where it belongs, or beside it with a line; none over another."""

from __future__ import annotations

from jobsheet.drawing.drawn import Item, Line, Text
from jobsheet.drawing.making import box
from jobsheet.report.pictured.cut_off import Frame, Spot
from jobsheet.report.pictured.numbered import ASIDE, LEAST, TALL, WIDE, Room


class Names:
    """The words of one picture, and the room that they have taken."""

    __slots__ = ("_frame", "_taken")

    def __init__(self, frame: Frame) -> None:
        self._frame = frame
        self._taken: list[Room] = []

    def put(self, spot: Spot, words: str, *, aside: bool = False) -> list[Item]:
        """Words on a white ground in the middle of a place [m], or `aside`, with a line to it; nothing where
        the place lies outside or nothing near it is free.
        """
        x, y = self._frame.at(spot)
        if not (0.0 < x < self._frame.wide and 0.0 < y < self._frame.high):
            return []
        for dx, dy in ASIDE if aside else ((0.0, 0.0), *ASIDE):
            room = self._room(x + dx, y + dy, words)
            if room is not None:
                self._taken.append(room)
                left, top, right, foot = room
                line = [Line(((x, y), (x + dx, y + dy)), "dim")] if dx or dy else []
                ground = Line(box(left, top, right - left, foot - top), 0.0, closed=True, fill="paper")
                base = y + dy + TALL * LEAST / 2
                return [*line, ground, Text(x + dx, base, words, "mark", "middle", LEAST)]
        return []

    def _room(self, x: float, y: float, words: str) -> Room | None:
        """The room of words round a place on the picture; None where it is not free."""
        wide, tall = (WIDE * LEAST * len(words) + 1.0) / 2, (TALL * LEAST + 1.0) / 2
        room = x - wide, y - tall, x + wide, y + tall
        if (
            room[0] < 1.0
            or room[1] < 1.0
            or room[2] > self._frame.wide - 1.0
            or room[3] > self._frame.high - 1.0
        ):
            return None
        free = all(
            room[2] <= other[0] or other[2] <= room[0] or room[3] <= other[1] or other[3] <= room[1]
            for other in self._taken
        )
        return room if free else None
