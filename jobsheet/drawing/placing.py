"""Labels beside lines: the first place of several that nothing else stands in."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from jobsheet.drawing.drawn import Point, Text

#: Sizes of the styles that labels have [points], as sheet and window paint them.
SIZES = {"caption": 8.0, "small": 7.0, "strong": 8.0, "label": 9.0, "label bold": 9.0}
#: How wide a letter is of the type's size: DejaVu Sans, taken a little too wide so that nothing touches.
LETTER, BOLD_LETTER = 0.6, 0.69
Box = tuple[float, float, float, float]


def text_width(words: str, style: str) -> float:
    """About how wide words are [points], without asking the font."""
    narrow = sum(character in " .,:il1'|" for character in words)
    letter = BOLD_LETTER if style in ("strong", "label bold") else LETTER
    return SIZES.get(style, 9.0) * letter * (len(words) - 0.42 * narrow)


def box_of(texts: Iterable[Text]) -> Box:
    """Left, top, right, bottom of some words."""
    edges = []
    for text in texts:
        wide, size = text_width(text.words, text.style), SIZES.get(text.style, 9.0)
        left = text.x - {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor] * wide
        edges.append((left, text.y - size * 0.85, left + wide, text.y + size * 0.3))
    return (
        min(edge[0] for edge in edges),
        min(edge[1] for edge in edges),
        max(edge[2] for edge in edges),
        max(edge[3] for edge in edges),
    )


class Placer:
    """Keeps what stands in a picture already; asks of each label whether it would cover any of it."""

    def __init__(self, frame: Box) -> None:
        self.frame = frame
        self._boxes: list[Box] = []
        self._points: list[Point] = []
        self._faint: list[Point] = []

    def line(self, points: Sequence[Point], *, faint: bool = False) -> None:
        """A line that labels keep off, a faint one only where there is room elsewhere."""
        kept = self._faint if faint else self._points
        for (x1, y1), (x2, y2) in pairwise(points):
            steps = max(1, int(max(abs(x2 - x1), abs(y2 - y1)) / 3))
            kept += [(x1 + (x2 - x1) * at / steps, y1 + (y2 - y1) * at / steps) for at in range(steps + 1)]

    def box(self, box: Box) -> None:
        """A place that is taken."""
        self._boxes.append(box)

    def free(self, box: Box, room: float = 2.0, *, faint: bool = True) -> bool:
        """Whether a box lies inside the frame and off everything; without `faint` a faint line may cross it."""
        left, top, right, bottom = box[0] - room, box[1] - room, box[2] + room, box[3] + room
        lines = [*self._points, *self._faint] if faint else self._points
        inside = (
            box[0] >= self.frame[0]
            and box[1] >= self.frame[1]
            and box[2] <= self.frame[2]
            and box[3] <= self.frame[3]
        )
        return (
            inside
            and not any(left < b[2] and b[0] < right and top < b[3] and b[1] < bottom for b in self._boxes)
            and not any(left < x < right and top < y < bottom for x, y in lines)
        )

    def put(self, choices: Iterable[tuple[Text, ...]]) -> tuple[Text, ...]:
        """The first of the choices that is free, and it is taken then; nothing where none is."""
        listed = list(choices)
        for faint in (True, False):
            for texts in listed:
                box = box_of(texts)
                if self.free(box, faint=faint):
                    self.box(box)
                    return texts
        return ()
