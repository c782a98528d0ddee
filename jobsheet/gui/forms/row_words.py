"""What stands beside and under one row of places: the dials, what was understood, or what is wrong."""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import QuantityError
from jobsheet.machine.dial_readings import stop
from jobsheet.model.machine import Machine
from jobsheet.model.quantity import Place
from jobsheet.operations.place_rows import Made, Pieces, Row, meaning
from jobsheet.units.show import plain, trimmed
from jobsheet.units.table import INCH

translate = QCoreApplication.translate


class RowWords(Struct, frozen=True):
    """The words of a row; `half` where its x or its y is still to come."""

    dials: tuple[str, str] = ("", "")
    understood: tuple[str, str] = ("", "")
    problem: QuantityError | None = None
    half: str = ""
    #: Which boxes cannot be read.
    wrong: str = ""

    def spoken(self, axis: str) -> str:
        """What a screen reader says of a box."""
        index = "xy".index(axis)
        if self.problem is not None:
            return self.half or str(self.problem)
        turns = self.dials[index]
        if not turns:
            return self.understood[index]
        return translate("Places", "{size}, {dial} on the dial").format(
            size=self.understood[index], dial=turns
        )


class Beside:
    """The dials of one machine for places; each is reckoned once."""

    def __init__(self, machine: Machine | None) -> None:
        self.machine = machine
        self._known: dict[tuple[float, float], tuple[str, str]] = {}

    def dials(self, place: Place) -> tuple[str, str]:
        """Turns and line of both handles; nothing for one that the machine has not."""
        where = (place.x.value, place.y.value)
        if where not in self._known:
            handles = [self.machine.handle(axis) if self.machine else None for axis in "xy"]
            x, y = (
                stop(handle, size).on_lines if handle else ""
                for handle, size in zip(handles, where, strict=True)
            )
            self._known[where] = (x, y)
        return self._known[where]


def said_of(row: Row, pieces: Pieces, units: str, beside: Beside) -> RowWords:
    """The words of a row."""
    piece = pieces[row.piece]
    if isinstance(piece, Made):
        return _of_place(piece.points[row.index], beside)
    if piece.blank:
        return RowWords()
    places, problem = meaning(piece.text, units)
    if problem is None:
        return _of_place(places[0], beside) if len(places) == 1 else _of_several(len(places))
    missing = "x" if not piece.x.strip() else "y" if not piece.y.strip() else ""
    half = (
        translate("Places", "{axis} is missing; write it.").format(axis=missing.upper())
        if missing and meaning(f"{piece.x or 0}, {piece.y or 0}", units)[1] is None
        else ""
    )
    wrong = "".join(
        axis for axis, text in (("x", piece.x), ("y", piece.y)) if meaning(f"{text}, 0", units)[1]
    )
    return RowWords(problem=QuantityError(half) if half else problem, half=half, wrong=wrong or "xy")


def _of_place(place: Place, beside: Beside) -> RowWords:
    return RowWords(beside.dials(place), (_size(place.x.value), _size(place.y.value)))


def _of_several(count: int) -> RowWords:
    words = translate("Places", "{count} places").format(count=count)
    return RowWords(understood=(words, words))


def _size(value: float) -> str:
    return f"{trimmed(value * 1e3, 3)} mm = {plain(value / INCH, 4)} in"
