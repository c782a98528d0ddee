"""The places of a step as rows: what is typed as one text, taken apart into pieces and put together again.

A piece is one place with the texts of its x and y, or a generator in words with the places it
makes. Nothing is lost on the way: a text that cannot be read keeps its own row, and the
pieces of a text make that text again.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Place
from jobsheet.operations.entry import read_place
from jobsheet.operations.patterns import is_pattern, read_pattern
from jobsheet.remembered import remembered
from jobsheet.units.lazily import pattern

#: Between x and y; unlike where places are read, y may still be missing.
_GAP = pattern(r"\s*(?:,(?:\s+|$)|\|)\s*")
_PARTS = pattern(r"[;\n]")


class Single(Struct, frozen=True):
    """One place as its two boxes hold it; `x` may hold more than a number while somebody types there."""

    x: str = ""
    y: str = ""

    @property
    def text(self) -> str:
        """As it stands in the list: what is typed beyond x in its box comes with
        it, and then y counts no more.
        """
        first, *more = _PARTS.split(self.x)
        if not (is_pattern(first) or _GAP.search(first)):
            first = f"{first.strip()}, {self.y.strip()}" if (first + self.y).strip() else ""
        return ";".join([first, *more])

    @property
    def blank(self) -> bool:
        """Whether nothing is written."""
        return not (self.x + self.y).strip()


class Made(Struct, frozen=True):
    """A generator in words, with the places it makes; none where it cannot be read."""

    text: str
    points: tuple[Place, ...] = ()
    problem: QuantityError | None = None

    @property
    def name(self) -> str:
        """What it is called in a sentence: `circle of 6`."""
        return self.text.partition(" on ")[0].partition(" from ")[0].strip()

    def singles(self) -> tuple[Single, ...]:
        """Its places written out, each to the thousandth of a millimetre that
        generated ones are worded to.
        """
        return tuple(Single(place.x.text, place.y.text) for place in self.points)


Pieces = tuple[Single | Made, ...]
#: A row in which nothing stands yet.
BLANK: Pieces = (Single(),)


class Row(Struct, frozen=True):
    """One row: its texts, the piece it stands in and its place there; `made` where a generator wrote it."""

    x: str
    y: str
    piece: int
    index: int = 0
    made: bool = False


@remembered(64)
def _made(text: str, units: str) -> Made:
    try:
        return Made(text, read_pattern(text, units).points)
    except QuantityError as error:
        return Made(text, (), error.kept())


def made_of(text: str, units: str) -> Made:
    """What is being typed as the words of a generator; the beginning of another
    text may stand there for a while.
    """
    return _made(text, units) if is_pattern(text) else Made(text, *meaning(text, units))


def pieces_of(text: str, units: str) -> Pieces:
    """The pieces of a list as it is typed or stored."""
    found: list[Single | Made] = []
    for part in _PARTS.split(text):
        piece = part.strip()
        if not piece:
            continue
        if is_pattern(piece):
            found.append(_made(piece, units))
            continue
        gap = _GAP.search(piece)
        found.append(Single(piece[: gap.start()], piece[gap.end() :]) if gap else Single(piece))
    return tuple(found)


def text_of(pieces: Pieces) -> str:
    """The list that these pieces are; blank ones are not in it."""
    return "; ".join(text for piece in pieces if (text := piece.text).strip(" ;"))


def rows_of(pieces: Pieces) -> tuple[Row, ...]:
    """Every place in the order of walking, generators spread out."""
    rows: list[Row] = []
    for number, piece in enumerate(pieces):
        if isinstance(piece, Single):
            rows.append(Row(piece.x, piece.y, number))
            continue
        rows += [
            Row(place.x.text, place.y.text, number, index, made=True)
            for index, place in enumerate(piece.points)
        ]
    return tuple(rows)


def written_out(pieces: Pieces, rows: tuple[Row, ...], row: int) -> tuple[Pieces, str]:
    """The pieces with the generator of a row turned into plain places, and its
    name; the very same where none made it.
    """
    if not 0 <= row < len(rows) or not rows[row].made:
        return pieces, ""
    number = rows[row].piece
    made = pieces[number]
    assert isinstance(made, Made)
    return (*pieces[:number], *made.singles(), *pieces[number + 1 :]), made.name


def opened(pieces: Pieces, row: int) -> tuple[Pieces, int, str]:
    """Pieces in which a row stands alone, where it stands in them, and which
    generator had to be written out for that.
    """
    rows = rows_of(pieces)
    pieces, name = written_out(pieces, rows, row)
    rows = rows_of(pieces)
    return pieces, rows[row].piece if row < len(rows) else len(pieces), name


def with_cell(pieces: Pieces, row: int, axis: str, text: str) -> tuple[Pieces, str]:
    """The pieces after a text is typed into one box; and the generator that became plain places for it."""
    pieces, at, name = opened(pieces, row)
    before = pieces[at] if at < len(pieces) else Single()
    assert isinstance(before, Single)
    after = Single(text, before.y) if axis == "x" else Single(before.x, text)
    return (*pieces[:at], after, *pieces[at + 1 :]), name


def taken_out(pieces: Pieces, row: int) -> tuple[Pieces, str]:
    """The pieces without a row."""
    pieces, at, name = opened(pieces, row)
    return (*pieces[:at], *pieces[at + 1 :]), name


def inserted(pieces: Pieces, row: int, new: Pieces = BLANK) -> tuple[Pieces, str]:
    """The pieces with others before a row; at the beginning of a generator it need not be written out."""
    rows = rows_of(pieces)
    if row < len(rows) and rows[row].made and not rows[row].index:
        at, name = rows[row].piece, ""
    else:
        pieces, at, name = opened(pieces, row)
    return (*pieces[:at], *new, *pieces[at:]), name


def moved(pieces: Pieces, row: int, by: int) -> tuple[Pieces, tuple[str, ...]]:
    """The pieces with a row one place further up or down in the walk; the very same at the ends."""
    rows = rows_of(pieces)
    other = row + by
    if not (0 <= row < len(rows) and 0 <= other < len(rows)):
        return pieces, ()
    pieces, one = written_out(pieces, rows, row)
    pieces, two = written_out(pieces, rows_of(pieces), other)
    rows = rows_of(pieces)
    changed = list(pieces)
    a, b = rows[row].piece, rows[other].piece
    changed[a], changed[b] = changed[b], changed[a]
    return tuple(changed), tuple(name for name in (one, two) if name)


def put_in(pieces: Pieces, text: str, replacing: str, units: str) -> Pieces:
    """The pieces with a generator: in the place of the one that stood as
    `replacing`, else behind all others.
    """
    made = _made(text, units)
    for at, piece in enumerate(pieces):
        if isinstance(piece, Made) and piece.text == replacing:
            return (*pieces[:at], made, *pieces[at + 1 :])
    return (*pieces, made)


def same(one: Pieces, other: Pieces) -> bool:
    """Whether two lists say the same, whatever blanks stand in them and
    however they are spread over boxes.
    """
    return _plain(one) == _plain(other)


def _plain(pieces: Pieces) -> list[tuple[str, str]]:
    text, found = text_of(pieces), []
    for part in _PARTS.split(text):
        if piece := part.strip():
            gap = None if is_pattern(piece) else _GAP.search(piece)
            found.append((piece[: gap.start()], piece[gap.end() :]) if gap else (piece, ""))
    return found


@remembered(1024)
def meaning(text: str, units: str) -> tuple[tuple[Place, ...], QuantityError | None]:
    """The places that the text of one row means, or why it means none."""
    places: list[Place] = []
    for part in _PARTS.split(text):
        if not part.strip():
            continue
        try:
            one = read_place(part, 0, units)
        except QuantityError as error:
            return (), error.kept()
        places.extend((one,) if isinstance(one, Place) else one.points)
    return tuple(places), None
