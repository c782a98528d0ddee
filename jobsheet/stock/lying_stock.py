"""How a shape of stock lies in a set-up: what a layer off the face that is up will be."""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.model.lying import NORMALS, lying
from jobsheet.model.profile import Points, Profile
from jobsheet.model.stock import BOX, Stock, circle
from jobsheet.stock.all_shapes import outline_of

#: Points of a circle by which layers are reckoned: one of a fortieth of its radius is right within two parts in a thousand.
FINE = 480


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

    def seen(points: Points) -> Points:
        round_ = _finer(points) if stock.is_round else points
        return tuple((one[across], high - one[down] if plus else one[down]) for one in round_)

    return Profile(
        area=outline.area, long=outline.long, outer=seen(outline.outer), inner=seen(outline.inner),
        cross=0 if _axis(lie.right) == plain[across] else 1, gone=gone,
    )  # fmt: skip


def _finer(points: Points) -> Points:
    """The same circle by many more points: a thin layer off a bar is a matter of its top few."""
    if not points:
        return points
    low, high = min(u for u, _ in points), max(u for u, _ in points)
    return tuple((low + u, low + v) for u, v in circle((high - low) / 2, FINE))


def _axis(face: str) -> int:
    return next(index for index, part in enumerate(NORMALS[face]) if part)
