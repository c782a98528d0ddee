"""How the stock lies in a set-up: which face is where for the person at the
machine, and where its points are.

Along is to the operator's right, across is away from them, up is up. `Lying` turns places of a set-up,
counted from its zero, into places from the left front corner as it lies, and those into places in the stock.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.job import Job, SetUp
from jobsheet.model.stock import Outline

Vector = tuple[int, int, int]
Box = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]

#: Outward direction of each face, in the drawing's axes: right, rear, top are plus.
NORMALS: dict[str, Vector] = {
    "left": (-1, 0, 0), "right": (1, 0, 0), "front": (0, -1, 0), "rear": (0, 1, 0), "bottom": (0, 0, -1), "top": (0, 0, 1),
}  # fmt: skip
_FACES = {normal: face for face, normal in NORMALS.items()}
OPPOSITE = {
    "left": "right", "right": "left", "front": "rear", "rear": "front", "bottom": "top", "top": "bottom",
}  # fmt: skip


#: Along which of the drawing's axes each face looks.
_AXIS = {face: next(index for index, part in enumerate(normal) if part) for face, normal in NORMALS.items()}


def _cross(a: Vector, b: Vector) -> Vector:
    return a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]


class Lying(Struct, frozen=True, kw_only=True):
    """The stock as held: the faces around it and its box in the drawing's axes [m]."""

    near: str
    far: str
    left: str
    right: str
    up: str
    down: str
    box: Box
    #: The shape of the stock where it is no box, in the drawing's axes.
    outline: Outline | None = None

    @property
    def size(self) -> tuple[float, float, float]:
        """Along, across and up [m]."""
        box = self.box  # asked half a million times by a review of forty steps and its fixes
        along, across, up = box[_AXIS[self.right]], box[_AXIS[self.far]], box[_AXIS[self.up]]
        return along[1] - along[0], across[1] - across[0], up[1] - up[0]

    def side(self, face: str) -> str:
        """Where a face of the stock is now: `near`, `far`, `left`, `right`, `up` or `down`."""
        return next(
            name for name in ("near", "far", "left", "right", "up", "down") if getattr(self, name) == face
        )

    @property
    def bar(self) -> int | None:
        """Along which of its own directions (0 right, 1 away, 2 up) a round or
        six-sided bar lies; None where it is none.
        """
        if self.outline is None or not self.outline.radius:
            return None
        return next(
            at for at, face in enumerate((self.right, self.far, self.up)) if _AXIS[face] == self.outline.axis
        )

    def is_curved(self, face: str) -> bool:
        """Whether a face of the stock is a part of a round side: it is touched along a
        line, and nothing can lie flat on it.
        """
        outline = self.outline
        return outline is not None and outline.is_round and _AXIS[face] != outline.axis

    def from_corner(self, set_up: SetUp, x: float, y: float) -> tuple[float, float]:
        """A place of the set-up as distances from the left and from the near side [m]."""
        zero = set_up.zero
        x0, y0 = self.zero(set_up)
        return x0 + (x if zero.x_counts == "right" else -x), y0 + (y if zero.y_counts == "away" else -y)

    def zero(self, set_up: SetUp) -> tuple[float, float]:
        """The zero's distances from the left and from the near side [m]."""
        along, across, _ = self.size
        return (
            along if set_up.zero.x_from == "right" else 0.0,
            across if set_up.zero.y_from == "rear" else 0.0,
        )

    def in_stock(self, along: float, across: float) -> tuple[float, float, float]:
        """A place on the upper face in the drawing's axes [m]."""
        point = [0.0, 0.0, 0.0]
        for face, distance in ((self.right, along), (self.far, across), (self.up, None)):
            axis = _AXIS[face]
            low, high = self.box[axis]
            plus = NORMALS[face][axis] > 0
            if distance is None:
                point[axis] = high if plus else low
            else:
                point[axis] = low + distance if plus else high - distance
        return point[0], point[1], point[2]


def beside(up: str) -> tuple[str, ...]:
    """The four faces that can be towards the person, or on a jaw, while that one is up."""
    return tuple(face for face in NORMALS if face not in (up, OPPOSITE[up]))


def laid(set_up: SetUp) -> SetUp:
    """The set-up with the faces that can be where they are: what does not go
    with the face that is up gives way.

    Towards the person comes then what `lying` would take, and the far face on the fixed jaw.
    """
    sides = beside(set_up.up)
    operator = set_up.operator if set_up.operator in sides else lying(set_up, ((0, 1), (0, 1), (0, 1))).near
    jaw = set_up.fixed_jaw if set_up.fixed_jaw in sides else OPPOSITE[operator]
    if (operator, jaw) == (set_up.operator, set_up.fixed_jaw):
        return set_up
    return replace(set_up, operator=operator, fixed_jaw=jaw)


def stock_box(job: Job) -> Box:
    """The stock as it is bought, its left front lower corner at nought [m]."""
    return (0.0, job.stock.length.value), (0.0, job.stock.width.value), (0.0, job.stock.height.value)


def lying(set_up: SetUp, box: Box, outline: Outline | None = None) -> Lying:
    """The stock of that box, and of that shape where it is no box, as it lies in a set-up.

    Where `operator` names the face that is up or down (a plan not yet finished), a face that can be
    in front is taken in its place.
    """
    up = NORMALS[set_up.up]
    operator = set_up.operator
    if _AXIS[operator] == _AXIS[set_up.up]:
        operator = "left" if _AXIS[set_up.up] == 1 else "front"
    near = NORMALS[operator]
    away: Vector = (-near[0], -near[1], -near[2])
    right = _FACES[_cross(away, up)]
    return Lying(
        near=operator, far=OPPOSITE[operator], left=OPPOSITE[right], right=right, up=set_up.up, down=OPPOSITE[set_up.up], box=box,
        outline=outline,
    )  # fmt: skip


def lowered(box: Box, face: str, amount: float) -> Box:
    """The box after a layer came off a face; a hair of it always stays."""
    axis = _AXIS[face]
    low, high = box[axis]
    amount = min(amount, 0.98 * (high - low))
    changed = (low, high - amount) if NORMALS[face][axis] > 0 else (low + amount, high)
    one, two, three = (changed if index == axis else span for index, span in enumerate(box))
    return one, two, three
