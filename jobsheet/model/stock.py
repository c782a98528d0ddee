"""The stock that a part is made of: its shape with its sizes, and the surface
of each face as it was bought.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.model.quantity import Places, Quantity

#: The faces of a piece of stock as it lies on the drawing.
FACES = ("top", "bottom", "front", "rear", "left", "right")
#: How a face comes from the merchant, the foundry or an earlier job.
BRIGHT, BLACK, CAST, SAWN, SHEARED, PICKLED, FINISHED = (
    "bright", "black", "cast", "sawn", "sheared", "pickled", "finished"
)  # fmt: skip
SURFACES = (BRIGHT, BLACK, CAST, SAWN, SHEARED, PICKLED, FINISHED)
#: What a place can be called beside a face of its own: across the longest size or the bar,
#: all others, all but the largest two.
ENDS, SIDES, EDGES = "ends", "sides", "edges"
GROUPS = (ENDS, SIDES, EDGES)
#: The two faces across each size, and the sizes in the order of the drawing's axes.
ACROSS = (("left", "right"), ("front", "rear"), ("top", "bottom"))
ALONG = ("length", "width", "height")
#: Names of shapes: `jobsheet/stock/shapes/` has a file for each.
BOX = "box"


class Surfaces(Struct, frozen=True):
    """Surfaces in the order they were written, each with where: nothing for all
    faces, a face, or one of `GROUPS`.
    """

    items: tuple[tuple[str, str], ...]
    text: str


class Faces(Struct, frozen=True):
    """Some faces, each by its name or as one of `GROUPS`."""

    items: tuple[str, ...]
    text: str


class Outline(Struct, frozen=True, kw_only=True):
    """The solid of a shape: a flat outline [m] drawn out along one axis of the drawing.

    `outer` and `inner` (the bore of a tube) go round in the two other axes, in their order; what is
    round is said by many short lines, so `area` [m²] is said beside them. `lean` is what the walls lean
    inwards as they rise, over the height.
    """

    axis: int
    long: float
    outer: tuple[tuple[float, float], ...]
    inner: tuple[tuple[float, float], ...] = ()
    area: float
    lean: float = 0.0
    #: Half of what is round, or half the size over the flats of a hexagon; 0 of any other.
    radius: float = 0.0
    is_round: bool = False


class Stock(Struct, frozen=True, kw_only=True):
    """A piece of metal. `length`, `width` and `height` are those of the box round
    it: left to right, front to rear, up.

    Which of the other sizes count is said by the shape; `stock.all_shapes.sized` makes the box follow them.
    """

    length: Quantity
    width: Quantity
    height: Quantity
    #: What words say beside the facts: `flat, from the rack`.
    condition: str = ""
    #: Faces that stay as they are bought.
    as_bought: Faces | None = None
    shape: str = BOX
    #: Along which of the drawing's sizes a bar lies.
    along: str = "length"
    bar_length: Quantity | None = None
    diameter: Quantity | None = None
    wall: Quantity | None = None
    across_flats: Quantity | None = None
    corner_radius: Quantity | None = None
    #: Of a casting: how thick its skin is, and how much its sides lean in from the bottom up.
    skin: Quantity | None = None
    draft: Quantity | None = None
    #: Corners of a plate that is cut out, seen from above.
    outline: Places | None = None
    surfaces: Surfaces | None = None
    #: Stress was taken out of it by heat, so that it does not bow as one side comes off.
    relieved: bool | None = None

    @property
    def sizes(self) -> tuple[float, float, float]:
        """The box round it in the drawing's axes [m]."""
        return self.length.value, self.width.value, self.height.value

    @property
    def axis(self) -> int:
        """The axis between its ends: that of a bar, else its longest size."""
        return ALONG.index(self.along) if self.shape in BARS else self.sizes.index(max(self.sizes))

    @property
    def is_round(self) -> bool:
        """Whether its side is round, so that it rolls."""
        return self.shape in ROUND

    def faces(self, where: str) -> tuple[str, ...]:
        """The faces that a place means; all for nothing."""
        if where in FACES:
            return (where,)
        if where == ENDS:
            return ACROSS[self.axis]
        if where == SIDES:
            return tuple(face for face in FACES if face not in ACROSS[self.axis])
        if where == EDGES:
            thin = ACROSS[self.sizes.index(min(self.sizes))]
            return tuple(face for face in FACES if face not in thin)
        return FACES

    def surface(self, face: str) -> str:
        """The surface of a face as it was bought; nothing where nobody says."""
        found = ""
        for where, surface in self.surfaces.items if self.surfaces is not None else ():
            if face in self.faces(where):
                found = surface
        return found

    @property
    def stays(self) -> frozenset[str]:
        """The faces that stay as they are bought."""
        items = self.as_bought.items if self.as_bought is not None else ()
        return frozenset(face for where in items for face in self.faces(where))

    def curved(self, face: str) -> bool:
        """Whether a face is a part of a round side, not flat."""
        return self.is_round and face not in ACROSS[self.axis]


#: Shapes that lie along one size of the drawing, and those of them whose side is round.
BARS = ("round bar", "tube", "hexagon")
ROUND = ("round bar", "tube")


#: Lines that stand for a circle lie so far inside it at most [m]: solids that differ by less agree.
SAGITTA = 0.01e-3


def sides_of(radius: float) -> int:
    """Lines to a full circle, so that none lies further inside than `SAGITTA`:
    cos(π / n) = 1 - s / r; 48 at least.

    A multiple of four, so that the circle fills its box.
    """
    if radius <= SAGITTA:
        return 48
    return max(48, 4 * math.ceil(math.pi / math.acos(1 - SAGITTA / radius) / 4))


def circle(radius: float) -> tuple[tuple[float, float], ...]:
    """Points on a circle whose middle lies `radius` from both axes [m], as the solids have it."""
    sides = sides_of(radius)
    return tuple(
        (
            radius + radius * math.cos(2 * math.pi * at / sides),
            radius + radius * math.sin(2 * math.pi * at / sides),
        )
        for at in range(sides)
    )
