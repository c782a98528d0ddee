"""How a shape of stock lies in a set-up: what a layer off the face that is up will be."""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.model.lying import NORMALS, lying
from jobsheet.model.profile import Profile
from jobsheet.model.stock import BOX, Stock
from jobsheet.stock.all_shapes import outline_of


def profile_of(stock: Stock, set_up: SetUp, gone: float) -> Profile | None:
    """The profile of the stock under that face, from which so much has come off [m]; None for a box, which has none."""
    if stock.shape == BOX:
        return None
    outline = outline_of(stock)
    x, y, z = stock.sizes
    lie = lying(set_up, ((0.0, x), (0.0, y), (0.0, z)))
    up = _axis(lie.up)
    if up == outline.axis:
        return Profile(area=outline.area, gone=gone)
    plain = [axis for axis in range(3) if axis != outline.axis]
    down, across = plain.index(up), 1 - plain.index(up)
    plus, high = NORMALS[lie.up][up] > 0, stock.sizes[up]

    cross = 0 if _axis(lie.right) == plain[across] else 1
    if stock.is_round:
        assert stock.diameter is not None
        radius, wall = stock.diameter.value / 2, stock.wall.value if stock.wall is not None else None
        bore = radius - wall if wall is not None else 0.0
        return Profile(area=outline.area, long=outline.long, radius=radius, bore=bore, cross=cross, gone=gone)
    seen = tuple((one[across], high - one[down] if plus else one[down]) for one in outline.outer)
    return Profile(area=outline.area, long=outline.long, outer=seen, cross=cross, gone=gone)


def _axis(face: str) -> int:
    return next(index for index, part in enumerate(NORMALS[face]) if part)
