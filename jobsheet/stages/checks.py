"""What the solids say about a plan, as facts for the review: nothing here feeds a figure.

Each fact names the step it is about and what was found, in numbers; what it means is the review's business.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING, Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.lying import NORMALS, Lying
from jobsheet.model.not_checked import alone
from jobsheet.model.shape import Edge, Groove, Hole, Recess, Slab
from jobsheet.stages.bodies import MM
from jobsheet.stages.course import Cut, Sized, is_through, moved, takes_away

if TYPE_CHECKING:  # what only looks into solids is imported without the modeller: half of a review asks none
    from jobsheet.stages.solids import Stage

#: A step that takes no more than this cuts air: a cube of two tenths of a millimetre [m³].
AIR = 8e-12
#: Figures and solid may differ by so much: figures do not know of a hole that
#: was plunged before (common practice).
DIFFERS = 1 / 3
#: Work that is smaller than this is none [m³]: a cube of two tenths of a millimetre.
NOTHING = AIR
#: Metal that is left thinner than this beside a hole is thin [m] (common practice, no source).
THIN = 1e-3
#: So much of a face must still be there for it to hold or to be held on (common practice, no source).
CONTACT = 0.5


class Fact(Struct, frozen=True, kw_only=True):
    """One thing found: `kind` in words, the step's key, and two values [m, m³ or a
    share] whose meaning the kind says.

    `cuts-air`: found and passed-through volume. `off-the-work`: how far a centre lies outside. `breaks-into`:
    the share of the cutter's way that was air already, and the number of the step that left it. `thin-wall`:
    what is left, and the hole's diameter. `cuts-the-jaws`: depth, and height over the jaws. `lost-contact`:
    the share of the face that is there, and nothing. `volume-differs`: removed, and the figure's.
    `nothing-left`: what is left. `left-on`, `cut-away`: how thick a piece is that the finished part has not,
    or should have, and its volume. `not-checked`: a question that failed, `about` says why.
    """

    kind: str
    key: str
    found: float
    against: float = 0.0
    #: Of which face or step this is said, where there is one.
    about: str = ""
    #: Lines of the finished part, and further steps, that it is about.
    lines: tuple[int, ...] = ()
    steps: tuple[str, ...] = ()
    #: How long it is along each axis of the drawing [m].
    size: tuple[float, ...] = ()


def not_checked(key: str, why: str) -> Fact:
    """That a question about a step failed, or with an empty key one about all of them."""
    return Fact(kind="not-checked", key=key, found=0.0, about=why)


def _of_each(stages: Sequence[Stage], ask: Callable[[Stage, Cut], list[Fact]]) -> list[Fact]:
    """What is found of every step; where that fails for one it is said of that
    one, and the others are still asked.
    """
    facts: list[Fact] = []
    for stage in stages[1:]:
        if (cut := stage.cut) is not None:
            facts += alone(
                lambda stage=stage, cut=cut: ask(stage, cut),  # type: ignore[misc]
                lambda why, cut=cut: [not_checked(cut.key, why)],  # type: ignore[misc]
            )
    return facts


def made_facts(stages: Sequence[Stage]) -> list[Fact]:
    """Steps whose solid could not be made: the work goes on as if they had cut nothing."""
    return [
        not_checked(stage.cut.key, stage.failed) for stage in stages if stage.cut is not None and stage.failed
    ]


def volume_facts(stages: Sequence[Stage], figures: dict[str, float]) -> list[Fact]:
    """Steps that take another volume than their figures say [m³], all that is left,
    or nothing at all though they cut.
    """
    return _of_each(stages, lambda stage, cut: _volume_facts(stage, cut, figures.get(cut.key), stages[0]))


def _volume_facts(stage: Stage, cut: Cut, figure: float | None, stock: Stage) -> list[Fact]:
    if stage.tool is None or stage.before is None:
        return []
    if stage.before.volume <= NOTHING:
        return []  # said once, of the step that took it
    if stage.volume <= NOTHING:
        return [Fact(kind="nothing-left", key=cut.key, found=stage.volume)]
    passed = abs(float(stage.tool.volume())) / MM**3
    if passed > 0 and stage.removed <= AIR:
        return [Fact(kind="cuts-air", key=cut.key, found=stage.removed, against=passed)]
    if figure and not math.isclose(stage.removed, figure, rel_tol=DIFFERS):
        metal = figure * _share_of_metal(stage.tool, cut, stock)
        if not math.isclose(stage.removed, metal, rel_tol=DIFFERS):
            return [Fact(kind="volume-differs", key=cut.key, found=stage.removed, against=figure)]
    return []


def _share_of_metal(tool: Any, cut: Cut, stock: Stage) -> float:
    """How much of what the figures count lay in the stock as it was bought.

    Figures know the box round it alone: a flat on round stock is less than its width times its depth, and the
    run-out of a slot over an end that is open counts for the time, not for the metal.
    """
    import manifold3d as m3

    box = [list(span) for span in cut.before.box]
    if all(isinstance(sized.shape, Groove) for sized in cut.shapes):
        upright = next(index for index, part in enumerate(NORMALS[cut.before.up]) if part)
        far = max(abs(value) for sized in cut.shapes for at in sized.corners for value in at) + 1
        box = [span if axis == upright else [span[0] - far, span[1] + far] for axis, span in enumerate(box)]
    low, size = tuple(a * MM for a, _ in box), tuple((b - a) * MM for a, b in box)
    counted = tool ^ m3.Manifold.cube(size).translate(low)
    whole = float(counted.volume())
    return float((counted ^ stock.solid).volume()) / whole if whole > 0 else 1.0


def place_facts(stages: Sequence[Stage]) -> list[Fact]:
    """Holes that lie off the work, run into something else, or leave a thin wall beside them."""
    return _of_each(stages, _place_facts)


def _place_facts(stage: Stage, cut: Cut) -> list[Fact]:
    facts: list[Fact] = []
    for sized in cut.shapes:
        if isinstance(sized.shape, Hole) and takes_away(sized.shape):
            facts += _hole_facts(stage, sized, cut.before, cut.key)
        elif isinstance(sized.shape, Groove | Recess):
            off = max(_outside(at, cut.before) for at in sized.corners)
            if off > 0:
                facts.append(Fact(kind="off-the-work", key=cut.key, found=off))
    return facts


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
    """Whether a hole runs into a hole, slot or pocket of an earlier set-up that lies across it,
    or into a neighbour on its own face.
    """
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

    `held` gives for each set-up in jaws the face at the fixed jaw and how high
    the work stands over the jaws [m].
    """
    firsts: dict[str, str] = {}
    high: dict[str, float] = {}
    for stage in stages[1:]:
        if stage.cut is not None:
            firsts.setdefault(stage.cut.set_up, stage.cut.key)
            high.setdefault(stage.cut.set_up, stage.cut.before.size[2])
    first = frozenset(firsts.values())
    within = [stage for stage in stages if stage.cut is None or stage.cut.set_up in held]
    return [
        *_of_each(
            within, lambda stage, cut: _contact_facts(stage, cut, held[cut.set_up][0], first, stages[0])
        ),
        *_of_each(within, lambda _, cut: _jaw_facts(cut, *held[cut.set_up], high[cut.set_up])),
    ]


def _contact_facts(stage: Stage, cut: Cut, face: str, first: frozenset[str], stock: Stage) -> list[Fact]:
    """Round work touches in a line: what counts is what is left of what the stock had to hold it by."""
    if cut.key not in first or stage.before is None or stage.before.volume <= NOTHING:
        return []
    share = contact(stage.before, cut.before, face)
    if share >= CONTACT or share >= CONTACT * contact(stock, replace(cut.before, box=stock.box), face):
        return []
    return [Fact(kind="lost-contact", key=cut.key, found=share, about=face)]


def _jaw_facts(cut: Cut, face: str, above: float | None, high: float) -> list[Fact]:
    """Depths count from the top as it was when the set-up began, as what stands above the jaws does."""
    if above is None:
        return []
    jaw_side, lowered = cut.before.side(face), high - cut.before.size[2]
    depths = (_depth_at_jaws(sized, cut.before, jaw_side) for sized in cut.shapes)
    return [
        Fact(kind="cuts-the-jaws", key=cut.key, found=depth + lowered, against=above)
        for depth in depths
        if depth is not None and depth + lowered > above + 1e-6
    ]


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
