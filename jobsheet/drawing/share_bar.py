"""The share bar as a drawing: how much of a capacity a cut asks for, drawn towards one fence.

Nought stands at the left, the fence (the capacity) at 0.74 of the width and 1.35 of it at the right end,
in every bar alike. Pattern and outline say the verdict again, so that it reads in grey.
"""

from __future__ import annotations

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Text
from jobsheet.drawing.making import box, hatched

FENCE = 0.74
END = 1.35
#: Verdict -> (angles of the lines, thickness, distance between them).
_PATTERNS: dict[str, tuple[tuple[float, ...], float, float]] = {
    "expected": ((45.0,), 1.1, 7.0),
    "tight": ((90.0,), 2.0, 4.0),
    "beyond": ((45.0, 135.0), 1.7, 6.0),
}
_INKS = {"cut before": "ink", "expected": "pencil", "tight": "purplemark", "beyond": "vermmark"}


def share_bar(
    share: float,
    verdict: str,
    low_share: float,
    high_share: float,
    known: bool,
    learned: bool,
    width: float,
    height: float,
    evidence: tuple[tuple[float, bool], ...] = (),
) -> Drawing:
    """One bar in a box of that size.

    Parameters
    ----------
    share : float
        Demand for one of capacity
    verdict : str
        `cut before`, `expected`, `tight`, `beyond`; `not tried` has a dashed outline and no pattern
    low_share, high_share : float
        The ends of the capacity's nine-in-ten band, for one of capacity
    known : bool
        Whether anything is known of the capacity; else no fence and no band are drawn
    learned : bool
        Whether trials have moved the capacity, or it is simply known: the fence is solid then
    width, height : float
        The box; the bar itself is what is left above the base line and below the fence's top
    evidence : tuple of (share, clean), optional
        Trials under the base line: a dot for a clean one, a cross for a bad one
    """
    out = min(6.0, height / 4)
    top, base = out, height - out
    ground = Line(((0.0, base), (width, base)), 1.0, ink="edge")
    if not known:
        empty = Line(box(0.5, top, width * 0.55, base - top), 1.3, "pencil", closed=True, ink="pencil")
        words = Text(width * 0.55 + 6, (top + base) / 2 + 3, "not tried: lowest feed first", "caption")
        return Drawing(width, height, (ground, empty, words))
    fence = FENCE * width
    items: list[Item] = [*_band(low_share, high_share, fence, width, top, base), ground]
    right = max(min(share, END) * fence, 2.0)
    items += _bar(right, verdict, top, base, torn=share > END)
    items = [*_evidence(evidence, fence, base), *items]
    solid = learned or low_share == high_share
    items.append(
        Line(((fence, top - out), (fence, base + out)), 2.6 if solid else 1.6, "" if solid else "fence")
    )
    return Drawing(width, height, tuple(items))


def _evidence(evidence: tuple[tuple[float, bool], ...], fence: float, base: float) -> list[Item]:
    """What was tried, at the share that it asked; what lies over the end of the bar is left out."""
    items: list[Item] = []
    y, far = base + 3.5, 1.8
    for share, clean in evidence:
        x = share * fence
        if share > END:
            continue
        if clean:
            items.append(Ellipse(x, y, far, far, weight=0.0, fill="ink"))
        else:
            items += [Line(((x - far, y - way * far), (x + far, y + way * far)), 1.2) for way in (1, -1)]
    return items


def _band(low: float, high: float, fence: float, width: float, top: float, base: float) -> list[Item]:
    """Where the capacity lies nine times in ten, with its two edges; the right one only where it is inside."""
    left, right = low * fence, min(high * fence, width)
    if right - left < 1:
        return []
    upper, lower = top - 3, base + 3
    items: list[Item] = [Line(box(left, upper, right - left, lower - upper), 0.0, closed=True, fill="band")]
    edges = [left, *([right] if high * fence <= width else [])]
    return items + [Line(((x, upper), (x, lower)), 1.0, ink="bluemark") for x in edges]


def _bar(right: float, verdict: str, top: float, base: float, *, torn: bool) -> list[Item]:
    """The demand: white ground, the verdict's pattern, its outline; cut off it has a torn end."""
    ink = _INKS.get(verdict, "pencil")
    corners = box(0.0, top, right, base - top)
    if torn:
        third = (base - top) / 3
        corners = (
            (0.0, top),
            (right, top),
            (right - 3, top + third),
            (right, base - third),
            (right - 3, base),
            (0.0, base),
        )
    if verdict == "cut before":
        return [Line(corners, 1.3, closed=True, fill=ink, ink=ink)]
    angles, thick, apart = _PATTERNS.get(verdict, ((), 0.0, 1.0))
    lines = [
        one for angle in angles for one in hatched(corners, angle=angle, apart=apart, weight=thick, ink=ink)
    ]
    ground = Line(corners, 0.0, closed=True, fill="paper")
    dash = "pencil" if verdict == "not tried" else ""
    return [ground, *lines, Line(corners, 1.3, dash, closed=True, ink=ink)]
