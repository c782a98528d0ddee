"""A stage of the work as lines: a block seen from front, right and above, with what was cut from it.

Neutral: points [m on the picture plane] and words for how a line is drawn, no painter. Simple on purpose:
layers off the top and round holes in it; true hidden-line pictures take its place later.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from jobsheet.gui.strip import bar_sketch
from jobsheet.gui.strip.sketch_values import COS30, SIN30, Block, Point, Size, Sketch, Stroke, seen
from jobsheet.model.profile import clipped
from jobsheet.model.shape import Hole, Slab, Sweep

ROUND = 28
_CIRCLE = tuple((math.cos(2 * math.pi * i / ROUND), math.sin(2 * math.pi * i / ROUND)) for i in range(ROUND))


def cut(block: Block, shapes: Iterable[Sweep]) -> Block:
    """The block after these shapes are taken away; holes in places from the corner."""
    height, holes = block.height, list(block.holes)
    for shape in shapes:
        if isinstance(shape, Slab):
            height = max(height - shape.depth, block.height * 0.02)
        elif isinstance(shape, Hole):
            holes.append(shape)
    section = block.section
    if section and block.along != 2 and height != block.height:
        section = tuple(clipped(ring, 1, (0.0, height)) for ring in section)
    return Block(block.length, block.width, height, tuple(holes), tuple(filter(None, section)), block.along)


def _ring(x: float, y: float, z: float, diameter: float) -> tuple[Point, ...]:
    """A level circle."""
    radius = diameter / 2
    return tuple(seen(x + radius * cos, y + radius * sin, z) for cos, sin in _CIRCLE)


def _top(block: Block, z: float) -> tuple[Point, ...]:
    """The corners of a level face, from the left front one."""
    length, width = block.length, block.width
    return seen(0, 0, z), seen(length, 0, z), seen(length, width, z), seen(0, width, z)


def sketch(before: Block, after: Block, *, now: bool = True) -> Sketch:
    """The work after a step; with `now` what this step cut is heavy and what it removed is dashed."""
    strokes: list[Stroke] = []
    z, length, width = after.height, after.length, after.width
    lowered = now and after.height < before.height
    if after.section:
        strokes += bar_sketch.dashed(before) if lowered else []
        strokes += bar_sketch.of_block(after, heavy=lowered)
    else:
        strokes += _removed(before, z) if lowered else []
        strokes += _box(after, z, lowered=lowered)
    old = set(before.holes) if now else set(after.holes)
    largest: dict[tuple[float, float], float] = {}
    for hole in after.holes:
        place = (round(hole.x, 7), round(hole.y, 7))
        largest[place] = max(largest.get(place, 0.0), hole.diameter)
    for hole in after.holes:
        place = (round(hole.x, 7), round(hole.y, 7))
        new = hole not in old
        if new or hole.diameter >= largest[place]:
            line = "heavy" if new else "thin"
            strokes.append(Stroke(_ring(hole.x, hole.y, z, hole.diameter), line, closed=True))
    high = max(before.height, after.height)
    box = (0.0, -width * SIN30 - high, (length + width) * COS30, length * SIN30)
    return Sketch(tuple(strokes), box, _sizes(before, after) if now else ())


def _box(block: Block, z: float, *, lowered: bool) -> list[Stroke]:
    """Front, right and top of a box."""
    length, width = block.length, block.width
    front = (seen(0, 0, 0), seen(length, 0, 0), seen(length, 0, z), seen(0, 0, z))
    right = (seen(length, 0, 0), seen(length, width, 0), seen(length, width, z), seen(length, 0, z))
    line = "heavy" if lowered else "thin"
    return [
        Stroke(front, closed=True, filled=True),
        Stroke(right, closed=True, filled=True),
        Stroke(_top(block, z), closed=True, filled=True, hatched=lowered, line=line),
    ]


def _sizes(before: Block, after: Block) -> tuple[Size, ...]:
    """The layer's depth at the right corner, and the diameter of the first hole of each size."""
    sizes: list[Size] = []
    z = after.height
    if z < before.height:
        sizes.append(Size(seen(after.length, after.width, (z + before.height) / 2), before.height - z))
    done: set[float] = set()
    for hole in sorted(
        set(after.holes) - set(before.holes), key=lambda hole: (-hole.x - hole.y, hole.diameter)
    ):
        if hole.diameter not in done:
            done.add(hole.diameter)
            edge = seen(hole.x + hole.diameter * 0.35, hole.y + hole.diameter * 0.35, z)
            sizes.append(Size(edge, hole.diameter, round=True))
    return tuple(sizes)


def _removed(before: Block, z: float) -> list[Stroke]:
    """The outline of the layer that is gone; dashed, and only what is not hidden by the work."""
    length, width, old = before.length, before.width, before.height
    upper = _top(before, old)
    posts = [(seen(x, y, z), seen(x, y, old)) for x, y in ((0, 0), (length, 0), (length, width))]
    return [
        Stroke(upper, "dashed", closed=True),
        *(Stroke(post, "dashed") for post in posts),
    ]
