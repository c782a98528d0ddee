"""What the solids say about a plan, as facts for the review: nothing here feeds a figure.

Each fact names the step it is about and what was found, in numbers; what it means is the review's business.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from msgspec import Struct

from jobsheet.model.lying import Lying
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.stages.course import Sized, is_through, moved, takes_away
from jobsheet.stages.solids import MM, Stage

#: A step that takes no more than this cuts air: a cube of two tenths of a millimetre [m³].
AIR = 8e-12
#: Figures and solid may differ by so much: figures do not know of a hole that was plunged before (common practice).
DIFFERS = 1 / 3
#: Metal that is left thinner than this beside a hole is thin [m] (common practice, no source).
THIN = 1e-3
#: So much of a face must still be there for it to hold or to be held on (common practice, no source).
CONTACT = 0.5


class Fact(Struct, frozen=True, kw_only=True):
    """One thing found: `kind` in words, the step's key, and two values [m, m³ or a share] whose meaning the kind says.

    `cuts-air`: found and passed-through volume. `off-the-work`: how far a centre lies outside. `breaks-into`: the
    share of the cutter's way that was air already, and the number of the step that left it. `thin-wall`: what is
    left, and the hole's diameter. `cuts-the-jaws`: depth, and height over the jaws. `lost-contact`: the share of
    the face that is there, and nothing. `volume-differs`: removed, and the figure's.
    """

    kind: str
    key: str
    found: float
    against: float = 0.0
    #: Of which face or step this is said, where there is one.
    about: str = ""


def volume_facts(stages: Sequence[Stage], figures: dict[str, float]) -> list[Fact]:
    """Steps that take another volume than their figures say [m³], or nothing at all though they cut."""
    found = []
    for stage in stages[1:]:
        cut = stage.cut
        if cut is None or stage.tool is None:
            continue
        passed = abs(float(stage.tool.volume())) / MM**3
        if passed > 0 and stage.removed <= AIR:
            found.append(Fact(kind="cuts-air", key=cut.key, found=stage.removed, against=passed))
            continue
        figure = figures.get(cut.key)
        if figure and not math.isclose(stage.removed, figure, rel_tol=DIFFERS):
            found.append(Fact(kind="volume-differs", key=cut.key, found=stage.removed, against=figure))
    return found


def place_facts(stages: Sequence[Stage]) -> list[Fact]:
    """Holes that lie off the work, run into something else, or leave a thin wall beside them."""
    found: list[Fact] = []
    for stage in stages[1:]:
        cut = stage.cut
        if cut is None:
            continue
        for sized in cut.shapes:
            if isinstance(sized.shape, Hole) and takes_away(sized.shape):
                found += _hole_facts(stage, sized, cut.before, cut.key)
            elif isinstance(sized.shape, Groove | Recess):
                off = max(_outside(at, cut.before) for at in sized.corners)
                if off > 0:
                    found.append(Fact(kind="off-the-work", key=cut.key, found=off))
    return found


def _hole_facts(stage: Stage, sized: Sized, lie: Lying, key: str) -> list[Fact]:
    shape, at = sized.shape, sized.corners[0]
    off = _outside(at, lie)
    if off > 0:
        return [Fact(kind="off-the-work", key=key, found=off)]
    if not isinstance(shape, Hole):
        return []
    along, across, _ = lie.size
    wall = min(at[0], at[1], along - at[0], across - at[1]) - shape.diameter / 2
    if 0 < wall < THIN:
        return [Fact(kind="thin-wall", key=key, found=wall, against=shape.diameter)]
    return _meets(stage, sized, lie, key)


def _meets(stage: Stage, sized: Sized, lie: Lying, key: str) -> list[Fact]:
    """Whether a hole runs into a hole, slot or pocket of an earlier set-up that lies across it, or into a neighbour on its own face."""
    earlier = stage.before
    shape = sized.shape
    while earlier is not None and earlier.cut is not None:
        cut = earlier.cut
        for other in cut.shapes:
            if cut.before.up != lie.up or not isinstance(other.shape, Hole) or not isinstance(shape, Hole):
                continue
            if cut.before.near != lie.near or other.shape.threaded:
                continue
            apart = math.dist(_from_corner(other, cut.before, lie), sized.corners[0])
            together = (other.shape.diameter + shape.diameter) / 2
            if 1e-6 < apart < together - 1e-6 and apart > abs(other.shape.diameter - shape.diameter) / 2:
                return [Fact(kind="breaks-into", key=key, found=together - apart, about=cut.key)]
        earlier = earlier.before
    return []


def _from_corner(other: Sized, before: Lying, now: Lying) -> tuple[float, float]:
    """A place of an earlier step from the corner of the work as it is now; both lie the same way."""
    x, y = other.corners[0]
    left, near = moved(before, now)
    return x - left, y - near


def _outside(at: tuple[float, float], lie: Lying) -> float:
    """How far a place lies beside the work [m]; 0 on it."""
    along, across, _ = lie.size
    x, y = at
    return max(-x, -y, x - along, y - across, 0.0)


def holding_facts(stages: Sequence[Stage], held: dict[str, tuple[str, float | None]]) -> list[Fact]:
    """Steps that run into the jaws, and set-ups that hold on a face of which little is left.

    `held` gives for each set-up in jaws the face at the fixed jaw and how high the work stands over the jaws [m].
    """
    found: list[Fact] = []
    seen: set[str] = set()
    for stage in stages[1:]:
        cut = stage.cut
        if cut is None or cut.set_up not in held:
            continue
        face, above = held[cut.set_up]
        if cut.set_up not in seen and stage.before is not None:
            seen.add(cut.set_up)
            share = contact(stage.before, cut.before, face)
            if share < CONTACT:
                found.append(Fact(kind="lost-contact", key=cut.key, found=share, about=face))
        if above is None:
            continue
        jaw_side = cut.before.side(face)
        for sized in cut.shapes:
            depth = _depth_at_jaws(sized, cut.before, jaw_side)
            if depth is not None and depth > above + 1e-6:
                found.append(Fact(kind="cuts-the-jaws", key=cut.key, found=depth, against=above))
    return found


def _depth_at_jaws(sized: Sized, lie: Lying, jaw_side: str) -> float | None:
    """How deep a shape goes where the jaws stand; None where it keeps clear of them."""
    names = {
        "near": ("front", "rear"),
        "far": ("front", "rear"),
        "left": ("left", "right"),
        "right": ("left", "right"),
    }
    shape, high = sized.shape, lie.size[2]
    if isinstance(shape, Slab):
        return shape.depth
    if isinstance(shape, Edge):
        return shape.depth if shape.side in names.get(jaw_side, ()) else None
    if isinstance(shape, Groove):
        across = 1 if jaw_side in ("near", "far") else 0
        size = lie.size[across]
        reach = [at[across] for at in sized.corners]
        if min(reach) - shape.width / 2 <= 0 or max(reach) + shape.width / 2 >= size:
            return high if is_through(sized, high) else sized.depth
    return None


def contact(stage: Stage, lie: Lying, face: str) -> float:
    """How much of a face of the work's box is there [share]: the metal just under it."""
    from jobsheet.model.lying import NORMALS

    normal = NORMALS[face]
    axis = next(index for index, part in enumerate(normal) if part)
    low, high = lie.box[axis]
    depth = min(0.05e-3, (high - low) / 10)
    box = [list(span) for span in lie.box]
    box[axis] = [high - depth, high] if normal[axis] > 0 else [low, low + depth]
    import manifold3d as m3

    size = tuple((b - a) * MM for a, b in box)
    layer = m3.Manifold.cube(size).translate(tuple(a * MM for a, _ in box))
    whole = float(layer.volume())
    return float((layer ^ stage.solid).volume()) / whole if whole > 0 else 0.0


def masses(stages: Sequence[Stage], density: float) -> tuple[float, float, float]:
    """Stock, finished part and chips [kg], from a density [kg/m³]."""
    stock, part = stages[0].volume * density, stages[-1].volume * density
    return stock, part, stock - part
