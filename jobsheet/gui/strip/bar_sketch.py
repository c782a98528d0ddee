"""The quick sketch of work that is no box: its section drawn out along one direction,
the end and the sides that one sees.
"""

from __future__ import annotations

from itertools import pairwise

from jobsheet.gui.strip.sketch_values import Block, Point, Stroke, seen

#: An outline with more corners is round: only its silhouette is drawn.
MANY = 24
#: What of a side must be turned to the eye.
NEAR = 1e-9


def of_block(block: Block, *, heavy: bool) -> list[Stroke]:
    """The strokes of such work, back to front; with `heavy` the face that is up was cut by this step."""
    outer = block.section[0]
    strokes = [Stroke(_silhouette(block), closed=True, filled=True)]
    if len(outer) <= MANY:
        strokes += [Stroke(side, closed=True, filled=True) for side in _sides(block)]
    end = tuple(_at(block, one, _seen_end(block)) for one in outer)
    up = heavy and block.along == 2
    strokes.append(Stroke(end, "heavy" if up else "thin", closed=True, filled=True, hatched=up))
    strokes += [
        Stroke(tuple(_at(block, one, _seen_end(block)) for one in ring), closed=True)
        for ring in block.section[1:]
    ]
    if heavy and block.along != 2:
        strokes += _flat(block)
    return strokes


def dashed(block: Block) -> list[Stroke]:
    """The outline of the work as it was before a layer came off."""
    return [Stroke(_silhouette(block), "dashed", closed=True)]


def _flat(block: Block) -> list[Stroke]:
    """The face that a layer off a bar leaves."""
    across = [one[0] for one in block.section[0] if abs(one[1] - block.height) < 1e-6]
    if len(across) < 2 or max(across) - min(across) < 1e-6:
        return []
    low, high, far = min(across), max(across), (block.length, block.width)[block.along]
    corners = ((low, 0.0), (high, 0.0), (high, far), (low, far))
    face = tuple(_at(block, (place, block.height), along) for place, along in corners)
    return [Stroke(face, "heavy", closed=True, filled=True, hatched=True)]


def _long(block: Block) -> float:
    return (block.length, block.width, block.height)[block.along]


def _seen_end(block: Block) -> float:
    """Of the two ends the right one, the near one, or the upper one is seen."""
    return 0.0 if block.along == 1 else _long(block)


def _at(block: Block, one: Point, along: float) -> Point:
    """Where a corner of the section is seen, so far along the work."""
    if block.along == 0:
        return seen(along, one[0], one[1])
    if block.along == 1:
        return seen(one[0], along, one[1])
    return seen(one[0], one[1], along)


def _sides(block: Block) -> list[tuple[Point, ...]]:
    """The sides that are turned to the eye, those further away first."""
    outer = block.section[0]
    turned = _turns(outer)
    # The eye is at the right, near and above: in the two directions of the section so far to its plus side.
    eye = {0: (-1, 1), 1: (1, 1), 2: (1, -1)}[block.along]
    found = []
    for one, other in pairwise((*outer, outer[0])):
        outward = ((other[1] - one[1]) * turned, (one[0] - other[0]) * turned)
        toward = outward[0] * eye[0] + outward[1] * eye[1]
        if toward > NEAR:
            near = (one[0] + other[0]) * eye[0] + (one[1] + other[1]) * eye[1]
            corners = ((one, 0.0), (other, 0.0), (other, _long(block)), (one, _long(block)))
            found.append((near, tuple(_at(block, corner, along) for corner, along in corners)))
    return [side for _, side in sorted(found, key=lambda each: each[0])]


def _turns(points: tuple[Point, ...]) -> int:
    """1 where an outline goes round against the clock, -1 with it."""
    area = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise((*points, points[0])))
    return 1 if area > 0 else -1


def _silhouette(block: Block) -> tuple[Point, ...]:
    """What both ends and all between them cover: the hull of both ends (Andrew's monotone chain, 1979)."""
    points = sorted({_at(block, one, along) for one in block.section[0] for along in (0.0, _long(block))})
    half: list[list[Point]] = []
    for way in (points, points[::-1]):
        made: list[Point] = []
        for one in way:
            while len(made) > 1 and _left(made[-2], made[-1], one) <= 0:
                made.pop()
            made.append(one)
        half.append(made[:-1])
    return (*half[0], *half[1])


def _left(a: Point, b: Point, c: Point) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
