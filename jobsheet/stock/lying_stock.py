"""How a shape of stock lies in a set-up: what a layer off the face that is
up, or a cut off a side, will be.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from jobsheet.model.job import SetUp
from jobsheet.model.lying import NORMALS, Lying, lying
from jobsheet.model.profile import Points, Profile, clipped
from jobsheet.model.stock import BOX, Outline, Stock
from jobsheet.stock.all_shapes import outline_of

#: Edges of an outline with more corners are those of a radius, and are not drawn.
MANY = 24
#: What lies nearer than this is the same [m].
NEAR = 1e-6


def profile_of(stock: Stock, set_up: SetUp, gone: float) -> Profile | None:
    """The profile of the stock under that face, from which so much has come
    off [m]; None for a box, which has none.
    """
    if stock.shape == BOX:
        return None
    outline = outline_of(stock)
    x, y, z = stock.sizes
    lie = lying(set_up, ((0.0, x), (0.0, y), (0.0, z)))
    if outline.lean > 0:
        return _leaning(outline, lie, gone)
    above = _axis(lie.up) == outline.axis
    # What the two places of the section count from: the left or near side, and the top or the near side.
    begins = (lie.left, lie.near if above else lie.up)
    cross = 0
    if not above and _axis(lie.left) == outline.axis:
        begins, cross = (lie.near, lie.up), 1
    if stock.is_round:
        assert stock.diameter is not None
        radius, wall = stock.diameter.value / 2, stock.wall.value if stock.wall is not None else None
        return Profile(
            area=outline.area, long=outline.long, radius=radius, bore=radius - wall if wall is not None else 0.0,
            cross=cross, above=above, gone=gone,
        )  # fmt: skip
    seen = _seen(outline, stock, begins)
    return Profile(area=outline.area, long=outline.long, outer=seen, cross=cross, above=above, gone=gone)


def _seen(outline: Outline, stock: Stock, begins: tuple[str, str]) -> Points:
    """The corners of the outline, each by how far it lies from those two faces."""
    plain = [axis for axis in range(3) if axis != outline.axis]

    def off(corner: tuple[float, float], face: str) -> float:
        axis = _axis(face)
        place = corner[plain.index(axis)]
        return stock.sizes[axis] - place if NORMALS[face][axis] > 0 else place

    return tuple((off(corner, begins[0]), off(corner, begins[1])) for corner in outline.outer)


def _leaning(outline: Outline, lie: Lying, gone: float) -> Profile:
    """A casting whose sides lean in from its bottom to its top."""
    along, across, down = lie.size
    faces = (lie.left, lie.near, lie.up)
    rises = next(at for at, face in enumerate(faces) if _axis(face) == outline.axis)
    return Profile(
        area=outline.area, gone=gone, block=(along, across, down), lean=outline.lean, rises=rises,
        turned=NORMALS[faces[rises]][outline.axis] > 0,
    )  # fmt: skip


def silhouette(lie: Lying, across: int, up: int) -> tuple[Points, ...]:
    """The work as it is seen along the third of its directions (0 right, 1 away, 2 up): its outline
    first, then rings inside it and edges.

    Places [m] count from the left near lower corner of the work. A bore that one
    looks across is hidden and left out.
    """
    wide, high = lie.size[across], lie.size[up]
    whole: Points = ((0.0, high), (wide, high), (wide, 0.0), (0.0, 0.0))
    outline = lie.outline
    if outline is None:
        return (whole,)
    faces = (lie.right, lie.far, lie.up)
    axes = _axis(faces[across]), _axis(faces[up])
    plain = tuple(axis for axis in range(3) if axis != outline.axis)

    def place(axis: int, value: float, face: str) -> float:
        low, top = lie.box[axis]
        return value - low if NORMALS[face][axis] > 0 else top - value

    if outline.axis not in axes:
        rings = (outline.outer, outline.inner) if outline.inner else (outline.outer,)
        seen = []
        for ring in rings:
            points = tuple(
                (
                    place(axes[0], one[plain.index(axes[0])], faces[across]),
                    place(axes[1], one[plain.index(axes[1])], faces[up]),
                )
                for one in ring
            )
            seen.append(clipped(clipped(points, 0, (0.0, wide)), 1, (0.0, high)))
        return tuple(ring for ring in seen if ring) or (whole,)
    if outline.lean > 0:
        return (_frustum(outline, lie, (across, up), place),)
    if outline.is_round:
        return (whole,)
    return (whole, *_edges(outline, lie, (across, up), place))


def _edges(
    outline: Outline, lie: Lying, ways: tuple[int, int], place: Callable[[int, float, str], float]
) -> Iterator[Points]:
    """The edges along a bar or plate that one sees from its side, nearest to the
    eye; soft ones of a radius are none.
    """
    faces = (lie.right, lie.far, lie.up)
    at = next(way for way in ways if _axis(faces[way]) == outline.axis)
    other = ways[1] if at == ways[0] else ways[0]
    axis, eye = _axis(faces[other]), _axis(faces[3 - sum(ways)])
    plain = tuple(one for one in range(3) if one != outline.axis)
    # One looks from the near side, or down from above, or from the right.
    toward = -1 if 3 - sum(ways) == 1 else 1
    toward *= 1 if NORMALS[faces[3 - sum(ways)]][eye] > 0 else -1
    corners = outline.outer
    for index, corner in enumerate(corners):
        before, after = corners[index - 1], corners[(index + 1) % len(corners)]
        if len(corners) > MANY or not _faces_the_eye(before, corner, after, plain.index(eye), toward):
            continue
        level = place(axis, corner[plain.index(axis)], faces[other])
        if NEAR < level < lie.size[other] - NEAR:
            ends = ((0.0, level), (lie.size[at], level))
            yield ends if at == ways[0] else tuple((y, x) for x, y in ends)


def _faces_the_eye(
    before: tuple[float, float],
    corner: tuple[float, float],
    after: tuple[float, float],
    eye: int,
    toward: int,
) -> bool:
    """Whether one of the two sides that meet in a corner is turned to the eye; the
    outline goes round against the clock.
    """
    for one, two in ((before, corner), (corner, after)):
        outward = (two[1] - one[1], one[0] - two[0])[eye]
        if outward * toward > NEAR:
            return True
    return False


def _frustum(
    outline: Outline, lie: Lying, ways: tuple[int, int], place: Callable[[int, float, str], float]
) -> Points:
    """A casting from the side: its sides lean in."""
    faces = (lie.right, lie.far, lie.up)
    axes = tuple(_axis(faces[way]) for way in ways)
    rises = axes.index(outline.axis)
    axis = axes[1 - rises]
    full = max(one[axis] for one in outline.outer)
    corners = ((0.0, 0.0), (full, 0.0), (full - outline.lean, outline.long), (outline.lean, outline.long))
    points = []
    for along, level in corners:
        spot = {axis: along, outline.axis: level}
        points.append(tuple(place(one, spot[one], faces[way]) for one, way in zip(axes, ways, strict=True)))
    made = clipped(tuple(points), 0, (0.0, lie.size[ways[0]]))  # type: ignore[arg-type]
    return clipped(made, 1, (0.0, lie.size[ways[1]]))


def _axis(face: str) -> int:
    return next(index for index, part in enumerate(NORMALS[face]) if part)
