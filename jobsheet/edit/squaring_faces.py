"""Which faces of a block are squared in which order, and how much comes off each."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.catalog.trade.general_limits import NAME, general_limit
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import CommandError, JobsheetError, QuantityError
from jobsheet.model.job import Job
from jobsheet.model.lying import NORMALS, OPPOSITE
from jobsheet.model.quantity import Size
from jobsheet.model.stock import FACES
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

AXES = ("length", "width", "height")


class Faces(Struct, frozen=True):
    """The reference, the first side and the first end; the others lie opposite."""

    first: str
    side: str
    end: str


class Sizes(Struct, frozen=True):
    """By axis of the drawing: the size to finish, and what comes off in all [m];
    what had to be assumed, in words.
    """

    units: str
    stock: tuple[float, float, float]
    size: tuple[Size, ...]
    assumed: tuple[str, ...]

    def off(self, face: str) -> tuple[float, float]:
        """What comes off a face first, and off the one opposite it afterwards [m]."""
        axis = axis_of(face)
        whole = self.stock[axis] - self.size[axis].nominal
        step = 0.01e-3 if self.units == "mm" else INCH / 1000
        half = round(whole / 2 / step) * step
        return (half, whole - half) if 0 < half < whole else (whole / 2, whole / 2)

    def text(self, metres: float) -> str:
        """A length as it is typed, with its unit."""
        unit, decimals = (1e-3, 3) if self.units == "mm" else (INCH, 4)
        return f"{trimmed(metres / unit, decimals)} {self.units}"


def axis_of(face: str) -> int:
    """Which of length, width and height a face ends."""
    return next(index for index, part in enumerate(NORMALS[face]) if part)


def faces_of(job: Job) -> Faces:
    """The largest face first, the ends of the longest size last; a datum of the
    drawing before the face opposite it.
    """
    stock = (job.stock.length.value, job.stock.width.value, job.stock.height.value)
    by_size = sorted(range(3), key=lambda axis: (stock[axis], -axis))
    datums = [face for _, face in job.datums]
    usual = ("left", "front", "top")

    def of(axis: int) -> str:
        pair = (usual[axis], OPPOSITE[usual[axis]])
        return next((face for face in datums if face in pair), pair[0])

    first, side, end = (of(axis) for axis in by_size)
    assert {first, side, end} <= set(FACES)
    return Faces(first, side, end)


def sizes_of(job: Job, typed: dict[str, str]) -> Sizes:
    """The finished sizes as typed, with general limits where none are written.

    Raises
    ------
    CommandError
        With the axis and what to write.
    """
    stock = (job.stock.length, job.stock.width, job.stock.height)
    measured, assumed = [], []
    for name, of_stock in zip(AXES, stock, strict=True):
        size = _read(name, typed[name], job.units)
        if size.nominal >= of_stock.value - 1e-9:
            raise CommandError(
                f"The finished {name} is {size.text} and the stock has {of_stock.text}: nothing is left to come off;"
                " write a smaller size or take larger stock."
            )
        if size.high <= size.low:
            size = _with_limits(size, job.units)
            assumed.append(name)
        measured.append(size)
    words = (f"general limits {NAME} for {', '.join(assumed)}",) if assumed else ()
    return Sizes(job.units, tuple(quantity.value for quantity in stock), tuple(measured), words)  # type: ignore[arg-type]


def _read(name: str, text: str, units: str) -> Size:
    if not text.strip():
        raise CommandError(f"Write the finished {name}, such as 40 ±0.1.")
    try:
        return read_size(text, units)
    except QuantityError as error:
        raise CommandError(f"Finished {name}: {error}") from None


def _with_limits(size: Size, units: str) -> Size:
    """A size with the general limits that stand for it."""
    unit, decimals = (1e-3, 2) if units == "mm" else (INCH, 4)
    try:
        return read_size(
            f"{size.text} ±{trimmed(general_limit(size.nominal) / unit, decimals)} {units}", units
        )
    except JobsheetError as error:
        raise CommandError(f"Finished size {size.text}: {error}") from None
