"""The finished part as a solid, and how the work after the last step differs from it: what is
left too much, what was cut too much.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

import manifold3d as m3
from msgspec import Struct
from msgspec.structs import replace

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.model.finished import Feature
from jobsheet.model.lying import Box
from jobsheet.remembered import remembered
from jobsheet.stages.as_cut import all_as_drawn
from jobsheet.stages.as_drawn import Drawn, drawn, part_box
from jobsheet.stages.bodies import MM
from jobsheet.stages.course import Sized
from jobsheet.stages.solids import Stage, _box, _frame, _parts

#: Solids agree where nothing between them is thicker than this [m].
AGREES = 0.01e-3
#: Faces that are as near as this are one [m]: a tenth of a micrometre.
HAIR = 0.1e-6
#: Volumes below this are the modeller's rounding [mm³].
NOTHING = 1e-6
#: Of a box.
TRIANGLES = 12
#: A way along no face that there is [mm].
ASIDE = (1.1e-3, 1.3e-3, 0.7e-3)
#: So much earlier an edge may end where it is laid over itself [mm].
CUSP = 0.05


class Difference(Struct, frozen=True, kw_only=True):
    """One piece that is there and should not be (`left`), or should be there and is not: `cut away`, or
    `never there` in the stock, as the corners of a square that is made of round bar.

    `volume` [m³]; `thick` is how thick it is in the mean, twice its volume over its surface [m]. `lines` are
    the features in whose region metal is left, by the number of their line; `steps` the keys of the steps
    that cut into what should stay, or that cut in the region of these features.
    """

    what: str
    volume: float
    thick: float
    box: Box
    lines: tuple[int, ...] = ()
    steps: tuple[str, ...] = ()


def part_solid(part: FinishedPart, box: Box) -> Any:
    """The solid of the finished part [mm]: a box of its sizes less its features."""
    return _box(box) - _together([_solid(sized, one) for one in drawn(part, box) for sized in one.gone])


def differences(
    stages: Sequence[Stage], part: FinishedPart, *, within_limits: bool = False
) -> tuple[Difference, ...]:
    """How the work after the last step differs from the finished part, the thickest piece first.

    What a drawing leaves open is no difference: the flanks of a thread, the point of a drill, a
    broken edge; with `within_limits` neither is what lies between the limits of a feature: its least
    must be gone, and no more than its most.
    """
    last = stages[-1]
    box = part_box(last.box, part)
    features, of_least, wanted, open_ = _asked(part, box, within_limits)
    stock = stages[0].solid
    whole = _grown(box, HAIR)
    joined: dict[tuple[int, ...], Any] = {}
    # What does not stick out of the part's box can be too much only where a feature should be.
    left = _outside(
        last.solid ^ of_least if _inside(last.box, whole) else last.solid - (_box(whole) - of_least),
        open_,
        joined,
    )
    # A part that lies in a plain block was there, all of it: the modeller need not be asked.
    in_block = _is_block(stages[0]) and _inside(box, stages[0].box)
    cut = _outside((wanted if in_block else wanted ^ stock) - last.solid, open_, joined)
    lacking = [] if in_block else _outside(wanted - stock, open_, joined)
    found = [_piece("left", piece, features, stages) for piece in left]
    found += [_piece("cut away", piece, (), stages) for piece in cut]
    found += [_piece("never there", piece, (), ()) for piece in lacking]
    return tuple(
        sorted(
            (difference for difference in found if difference.thick > AGREES),
            key=lambda difference: -difference.thick,
        )
    )


def as_cut(stages: Sequence[Stage], part: FinishedPart) -> bool:
    """Whether it is certain without a solid of the part that `differences` within its limits finds nothing left and
    nothing cut away.
    """
    last = stages[-1]
    box = part_box(last.box, part)
    if not _inside(last.box, _grown(box, HAIR)):
        return False
    cuts = [stage.cut for stage in stages if stage.cut is not None and stage.tool is not None]
    features = tuple(drawn(part, box))
    limits = [tuple(drawn(_at_limits(part, end), box)) for end in (0, 1)]
    return all_as_drawn(cuts, last.box, box, features, limits, part)


@remembered(4)
def _asked(
    part: FinishedPart, box: Box, within_limits: bool
) -> tuple[tuple[Drawn, ...], Any, Any, tuple[Any, ...]]:
    """What a drawing asks of the work in that box: its features, what must be gone, the part with all
    gone that may be, what is left open.

    Made once for a part: every edit of a step asks for it again, and no edit of a step changes it.
    """
    features = tuple(drawn(part, box))
    least = most = [(sized, drawn) for drawn in features for sized in drawn.gone]
    if within_limits:
        least, most = (
            [(sized, one) for one in drawn(_at_limits(part, end), box) for sized in one.gone]
            for end in (0, 1)
        )
    of_most = _together([_solid(*one) for one in most])
    # Where no feature has limits of its own both ends are one, and so are their solids.
    of_least = of_most if least == most else _together([_solid(*one) for one in least])
    wanted = _box(_grown(box, -HAIR)) - of_most
    open_ = [_solid(sized, drawn) for drawn in features for sized in drawn.may] + _edges(box, part)
    wanted.num_tri()  # made now, for all who ask
    return features, of_least, wanted, tuple(open_)


#: Sizes of a feature with which more is cut away where they are larger.
_OF_THE_CUT = ("size", "other", "depth")


def _at_limits(part: FinishedPart, end: int) -> FinishedPart:
    """The part with every feature at its lower limits (0), or at its upper ones (1);
    where nobody says any as it is drawn.
    """
    features = []
    for line, feature in part.features:
        sizes = {name: size for name in _OF_THE_CUT if (size := getattr(feature, name)) is not None}
        at = {name: limits[end] for name, size in sizes.items() if (limits := part.limits(size)) is not None}
        changed = {name: replace(sizes[name], nominal=value) for name, value in at.items()}
        features.append((line, replace(feature, **changed)))
    return replace(part, features=tuple(features))


def _grown(box: Box, by: float) -> Box:
    """A box that is larger by so much on every side [m]: faces that are the same
    must leave no film between them.
    """
    one, two, three = ((low - by, high + by) for low, high in box)
    return one, two, three


def _inside(one: Box, other: Box) -> bool:
    """Whether a box lies in another."""
    return all(low <= a and b <= high for (a, b), (low, high) in zip(one, other, strict=True))


def _solid(sized: Sized, one: Drawn) -> Any:
    parts = _parts(sized, one.lie)
    tool = parts[0] if len(parts) == 1 else m3.Manifold.batch_boolean(parts, m3.OpType.Add)
    return tool.transform(_frame(one.lie))


def _together(tools: list[Any]) -> Any:
    """All of them as one solid, made now: what is asked of it twice is not made twice."""
    if not tools:
        return m3.Manifold()
    whole = m3.Manifold.batch_boolean(tools, m3.OpType.Add)
    whole.num_tri()
    return whole


def _is_block(stock: Stage) -> bool:
    """Whether the stock is its own box: twelve triangles, and its volume."""
    sizes = [high - low for low, high in stock.box]
    return int(stock.solid.num_tri()) == TRIANGLES and math.isclose(
        stock.volume, math.prod(sizes), rel_tol=1e-12
    )


def _outside(solid: Any, open_: Sequence[Any], joined: dict[tuple[int, ...], Any]) -> list[Any]:
    """The pieces of a solid that lie outside of what a drawing leaves open; none where
    all of it is the modeller's rounding.

    Only what is near is taken off: most of what is open lies elsewhere, and putting it together costs more than
    all the rest. What was put together once for a part is in `joined`, by its places in `open_`.
    """
    if float(solid.volume()) <= NOTHING:
        return []
    whole = solid.bounding_box()
    near = tuple(at for at, tool in enumerate(open_) if _may_touch(whole, tool.bounding_box()))
    if near and near not in joined:
        joined[near] = _together([open_[at] for at in near])
    pieces: list[Any] = (solid - joined[near] if near else solid).decompose()
    return pieces


def _may_touch(one: Sequence[float], other: Sequence[float]) -> bool:
    """Whether two boxes, each three low ends and three high ones, have a point in common."""
    return all(one[axis] <= other[axis + 3] and other[axis] <= one[axis + 3] for axis in range(3))


def _edges(box: Box, part: FinishedPart) -> list[Any]:
    """Along every edge of the box what a chamfer may take: the largest that any line says."""
    legs = [_leg(feature) for _, feature in part.features if feature.what == "chamfer"]
    if not legs:
        return []
    leg = max(legs) * MM
    spans = [(low * MM, high * MM) for low, high in box]
    edges = []
    for along in range(3):
        one, two = (axis for axis in range(3) if axis != along)
        for first in spans[one]:
            for second in spans[two]:
                low, size = [0.0] * 3, [0.0] * 3
                low[along], size[along] = spans[along][0] - leg, spans[along][1] - spans[along][0] + 2 * leg
                low[one], size[one] = first - leg, 2 * leg
                low[two], size[two] = second - leg, 2 * leg
                edges.append(m3.Manifold.cube(tuple(size)).translate(tuple(low)))
    return edges


def _leg(feature: Feature) -> float:
    return feature.size.nominal if feature.size is not None else 0.0


def _piece(what: str, piece: Any, features: Sequence[Drawn], stages: Sequence[Stage]) -> Difference:
    """One piece in words that a rule can use."""
    volume, thick = float(piece.volume()) / MM**3, _thick(piece)
    if thick <= AGREES:
        return Difference(what=what, volume=volume, thick=thick, box=_bounds(piece))
    each = [(drawn, [_solid(sized, drawn) for sized in drawn.gone]) for drawn in features]
    there = [(drawn, tools) for drawn, tools in each if any(_meets(piece, tool) for tool in tools)]
    regions = [tool for _, tools in there for tool in tools] if features else [piece]
    steps = tuple(
        stage.cut.key
        for stage in stages
        if stage.cut and stage.tool is not None and any(_meets(region, stage.tool) for region in regions)
    )
    return Difference(
        what=what, volume=volume, thick=thick, box=_bounds(piece, sheets=what == "left"), lines=tuple(drawn.line for drawn, _ in there), steps=steps,
    )  # fmt: skip


def _thick(piece: Any) -> float:
    """How thick a piece is in the mean [m]."""
    volume, surface = float(piece.volume()), float(piece.surface_area())
    return 2 * volume / surface / MM if surface > 0 and volume > NOTHING else 0.0


def _bounds(piece: Any, *, sheets: bool = False) -> Box:
    """The box around a piece [m]; with `sheets` only as far as it has any thickness.

    Where two faces are one, the modeller may leave a sheet between them on a piece. What is left of a piece that
    is laid over itself, moved by less than anybody measures, has no sheets; its edges may end a little earlier.
    """
    low, high = list(piece.bounding_box()[:3]), list(piece.bounding_box()[3:])
    whole = piece ^ piece.translate(ASIDE) if sheets else None
    every = [part.bounding_box() for part in whole.decompose() if _thick(part) > AGREES] if whole else []
    for axis in range(3) if every else ():
        within = min(box[axis] for box in every), max(box[axis + 3] for box in every)
        low[axis] = within[0] if within[0] - low[axis] > CUSP else low[axis]
        high[axis] = within[1] if high[axis] - within[1] > CUSP else high[axis]
    x, y, z = ((least / MM, most / MM) for least, most in zip(low, high, strict=True))
    return x, y, z


def _meets(piece: Any, tool: Any) -> bool:
    return float((piece ^ tool).volume()) > NOTHING
