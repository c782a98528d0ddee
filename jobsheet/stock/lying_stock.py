"""How a shape of stock lies in a set-up: what a layer off the face that is up, or a cut off a side, will be."""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.model.lying import NORMALS, Lying, lying
from jobsheet.model.profile import Points, Profile
from jobsheet.model.stock import BOX, Outline, Stock
from jobsheet.stock.all_shapes import outline_of


def profile_of(stock: Stock, set_up: SetUp, gone: float) -> Profile | None:
    """The profile of the stock under that face, from which so much has come off [m]; None for a box, which has none."""
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


def _axis(face: str) -> int:
    return next(index for index, part in enumerate(NORMALS[face]) if part)
