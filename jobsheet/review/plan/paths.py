"""Where a cutter goes in a step, as boxes round the work as it lay when its set-up began: what stands there is hit."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.holding import Body
from jobsheet.model.lying import Lying
from jobsheet.model.shape import Bevel, Edge, Groove, Hole, Recess, Slab
from jobsheet.review.plan.faces import Step
from jobsheet.stages.course import Sized, moved

#: A touch is no clash [m].
TOUCH = 1e-6


class Path(Struct, frozen=True):
    """From above: left to right and near to far; `level` is the lowest that the cutter comes [m], over the bottom of the work."""

    x: tuple[float, float]
    y: tuple[float, float]
    level: float

    def meets(self, body: Body) -> bool:
        """Whether the cutter, or what is above it, goes through that body."""
        return (
            self.x[0] < body.high[0] - TOUCH
            and body.low[0] < self.x[1] - TOUCH
            and self.y[0] < body.high[1] - TOUCH
            and body.low[1] < self.y[1] - TOUCH
            and self.level < body.high[2] - TOUCH
        )


def paths_of(step: Step, first: Lying) -> tuple[Path, ...]:
    """The ways of a step's cutter; `first` is how the work lay as the set-up began."""
    left, near = moved(first, step.lie)
    diameter = getattr(getattr(step.fields, "cutter", None), "diameter", None) or 0.0
    return tuple(
        Path((one.x[0] + left, one.x[1] + left), (one.y[0] + near, one.y[1] + near), one.level)
        for sized in step.cut.shapes
        for one in _ways(sized, step.lie.size, diameter)
    )


def _ways(sized: Sized, size: tuple[float, float, float], diameter: float) -> tuple[Path, ...]:
    shape, (long, wide, high), half = sized.shape, size, diameter / 2
    level = high - sized.depth if sized.depth is not None else 0.0
    if isinstance(shape, Slab):
        return (Path((-half, long + half), (-half, wide + half), high - shape.depth),)
    if isinstance(shape, Edge):
        return (_edge(shape.side, shape.width, long, wide, diameter, high - shape.depth),)
    if isinstance(shape, Bevel):
        return tuple(
            _edge(side, shape.size, long, wide, diameter, high - shape.size)
            for side in ("left", "right", "front", "rear")
        )
    if not sized.corners:
        return ()
    xs, ys = [at[0] for at in sized.corners], [at[1] for at in sized.corners]
    if isinstance(shape, Hole):
        out = up = shape.diameter / 2
    elif isinstance(shape, Groove):
        out = up = shape.width / 2
    elif isinstance(shape, Recess):
        out, up = shape.length / 2, shape.width / 2
    return (Path((min(xs) - out, max(xs) + out), (min(ys) - up, max(ys) + up), level),)


def _edge(side: str, width: float, long: float, wide: float, diameter: float, level: float) -> Path:
    """Along a side: as far in as it cuts, and a cutter outside; it runs in and out by half of itself."""
    half, out = diameter / 2, max(diameter - width, 0.0)
    across = {"left": (-out, width), "right": (long - width, long + out), "front": (-out, width), "rear": (wide - width, wide + out)}[side]  # fmt: skip
    if side in ("left", "right"):
        return Path(across, (-half, wide + half), level)
    return Path((-half, long + half), across, level)
