"""Outlines of the work on a picture that shows a part of it: what lies outside is cut off at the frame."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.drawing.drawn import Line

Spot = tuple[float, float]


class Frame(Struct, frozen=True, kw_only=True):
    """What a picture shows: its left near corner on the work [m], its size [points], its scale [points a metre]."""

    left: float
    low: float
    wide: float
    high: float
    scale: float

    @property
    def begins(self) -> Spot:
        """The left near corner of what is shown [m]."""
        return self.left, self.low

    @property
    def ends(self) -> Spot:
        """Its right far corner [m]."""
        return self.left + self.wide / self.scale, self.low + self.high / self.scale

    def at(self, spot: Spot) -> Spot:
        """A place of the work [m] on the picture, which counts down the page [points]."""
        return (spot[0] - self.left) * self.scale, self.high - (spot[1] - self.low) * self.scale


def cut_off(frame: Frame, outline: tuple[Spot, ...]) -> Iterator[Line]:
    """The lines of a closed outline [m] that lie on the picture, joined where they go on."""
    run: list[Spot] = []
    for start, end in zip(outline, (*outline[1:], outline[0]), strict=True):
        part = _inside(frame, frame.at(start), frame.at(end))
        if part is None:
            continue
        if run and run[-1] != part[0]:
            yield Line(tuple(run))
            run = []
        run += [part[1]] if run else list(part)
    if len(run) > 1:
        yield Line(tuple(run))


def _inside(frame: Frame, start: Spot, end: Spot) -> tuple[Spot, Spot] | None:
    """The part of a line that lies on the picture; None where none does.

    Source: Liang and Barsky, "A New Concept and Method for Line Clipping", ACM Transactions on Graphics 3 (1984).
    """
    first, last = 0.0, 1.0
    for axis, most in ((0, frame.wide), (1, frame.high)):
        along = end[axis] - start[axis]
        if not along:
            if not 0.0 <= start[axis] <= most:
                return None
            continue
        low, high = sorted((-start[axis] / along, (most - start[axis]) / along))
        first, last = max(first, low), min(last, high)
    if first >= last:
        return None
    x, y = end[0] - start[0], end[1] - start[1]
    return (
        start if first == 0.0 else (start[0] + first * x, start[1] + first * y),
        end if last == 1.0 else (start[0] + last * x, start[1] + last * y),
    )
