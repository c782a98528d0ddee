"""The work after each step of a job, as blocks for the strip: from the shapes
that the kinds say they sweep.
"""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import JobsheetError
from jobsheet.gui.strip.sketch import cut, sketch
from jobsheet.gui.strip.sketch_values import Block, Point, Sketch
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import NORMALS, Lying, lowered, lying, stock_box
from jobsheet.model.shape import Hole, Sweep
from jobsheet.stock.all_shapes import shape_of
from jobsheet.stock.lying_stock import silhouette

translate = QCoreApplication.translate
_AXIS = {"left": 0, "right": 0, "front": 1, "rear": 1, "top": 2, "bottom": 2}

Sweeps = Callable[[Operation], tuple[Sweep, ...]]


class Stage(Struct, frozen=True):
    """One drawing of the strip: the row it belongs to, its caption, the work before and after it."""

    key: str
    caption: str
    number: str
    spoken: str
    before: Block
    after: Block
    set_up: str = ""

    def picture(self) -> Sketch:
        """The strokes; made only for the stages that are shown."""
        return sketch(self.before, self.after, now=bool(self.key))


def held(job: Job, set_up: SetUp) -> tuple[float, float, float]:
    """The stock as it lies in a set-up: along x, along y and up [m]."""
    sizes = (job.stock.length.value, job.stock.width.value, job.stock.height.value)
    up, across = _AXIS[set_up.up], _AXIS[set_up.operator]
    if up == across:
        across = (up + 1) % 3
    along = 3 - up - across
    return sizes[along], sizes[across], sizes[up]


def _section(lie: Lying) -> tuple[tuple[tuple[Point, ...], ...], int]:
    """The outline of work that is no box, and along which of its directions it
    is drawn out; nothing of a box.
    """
    if lie.outline is None:
        return (), 2
    axes = [
        next(at for at, part in enumerate(NORMALS[face]) if part) for face in (lie.right, lie.far, lie.up)
    ]
    along = axes.index(lie.outline.axis)
    across, up = (at for at in range(3) if at != along)
    return silhouette(lie, across, up), along


def _placed(shape: Sweep, set_up: SetUp, block: Block) -> Sweep:
    """A hole in places from the left front corner, whichever corner and way the set-up counts from."""
    if not isinstance(shape, Hole):
        return shape
    zero = set_up.zero
    x0 = 0.0 if zero.x_from == "left" else block.length
    y0 = 0.0 if zero.y_from == "front" else block.width
    x = x0 + (shape.x if zero.x_counts == "right" else -shape.x)
    y = y0 + (shape.y if zero.y_counts == "away" else -shape.y)
    return Hole(x, y, shape.diameter, shape.depth, shape.point_angle, shape.threaded)


def stages(job: Job, sweeps: Sweeps, open_set_up: str) -> list[Stage]:
    """The strip: stock, work after each other set-up, and the open set-up's operations one by one."""
    shown: list[Stage] = []
    gone: dict[int, float] = {0: 0.0, 1: 0.0, 2: 0.0}
    holes: dict[str, tuple[Hole, ...]] = {}
    work, outline = stock_box(job), shape_of(job.stock)
    for index, set_up in enumerate(job.set_ups):
        sizes = held(job, set_up)
        up, across = _AXIS[set_up.up], _AXIS[set_up.operator]
        if up == across:
            across = (up + 1) % 3
        axes = (3 - up - across, across, up)
        sizes = tuple(max(size - gone[axis], size * 0.02) for size, axis in zip(sizes, axes, strict=True))  # type: ignore[assignment]
        block = Block(*sizes, holes.get(set_up.up, ()), *_section(lying(set_up, work, outline)))
        if index == 0:
            words = translate("Strip", "stock")
            shown.append(Stage("", "", words, words, block, block))
        first = block
        for operation in set_up.operations:
            before = block
            try:
                shapes = sweeps(operation)
            except (JobsheetError, ArithmeticError):
                shapes = ()
            block = cut(block, [_placed(shape, set_up, block) for shape in shapes])
            if set_up.key == open_set_up:
                spoken = translate("Strip", "The work after {number}").format(number=operation.number)
                caption = translate("Strip", "after")
                shown.append(
                    Stage(operation.key, caption, str(operation.number), spoken, before, block, set_up.key)
                )
        gone[up] += first.height - block.height
        work = lowered(work, set_up.up, first.height - block.height)
        holes[set_up.up] = block.holes
        if set_up.key != open_set_up:
            spoken = translate("Strip", "The work after set-up {number}").format(number=set_up.number)
            caption = translate("Strip", "set-up")
            shown.append(Stage(set_up.key, caption, str(set_up.number), spoken, first, block, set_up.key))
    return shown
