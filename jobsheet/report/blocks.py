"""What a page holds, without ink: neutral blocks that `sheet/` measures and paints.

All text in them is plain: nothing is markup. A block says what it is; how large it is printed is the
sheet's business, except that a style is named.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jobsheet.drawing.drawn import Drawing, Text


class Rule(Struct, frozen=True):
    """A line over the whole width."""

    weight: str = "section"


class Gap(Struct, frozen=True):
    """Nothing, that high [points]."""

    points: float = 4.0


class Heading(Struct, frozen=True):
    """A head, with something smaller beside it."""

    text: str
    beside: str = ""


class Words(Struct, frozen=True):
    """A paragraph."""

    text: str
    style: str = "body"


class Facts(Struct, frozen=True):
    """Short captions with what they say."""

    rows: tuple[tuple[str, str], ...]


class Picture(Struct, frozen=True):
    """A drawing with its head above and words below it."""

    title: str
    drawing: Drawing
    caption: str = ""


class Photograph(Struct, frozen=True, kw_only=True):
    """A photograph by its content, with its points across and down, words below it,
    and how high it is at most [points].
    """

    content: str
    wide: int
    high: int
    words: str = ""
    most: float


class Ticks(Struct, frozen=True):
    """Boxes to tick, each with its words."""

    items: tuple[str, ...]


class NoteLine(Struct, frozen=True):
    """A note with its sign; `initials` asks somebody for them, `given` are those that were given."""

    text: str
    sign: str = "hazard"
    bold: bool = False
    initials: str = ""
    given: str = ""


class NoteLines(Struct, frozen=True):
    """Notes one under the other."""

    lines: tuple[NoteLine, ...]
    style: str = "body"


class Box(Struct, frozen=True):
    """Blocks in a heavy frame."""

    blocks: tuple[Any, ...]


class Column(Struct, frozen=True, kw_only=True):
    """One column of a table; `wide` takes the room that is left, `tick` is a box to tick."""

    caption: str = ""
    align: str = "left"
    style: str = "body"
    wide: bool = False
    tick: bool = False
    ruled: bool = False


class Cell(Struct, frozen=True):
    """What stands in a table: text, and beside it small type in up to two lines;
    `tick` False leaves a box out.
    """

    text: str = ""
    small: tuple[str, ...] = ()
    tick: bool = True


class Table(Struct, frozen=True, kw_only=True):
    """Ruled rows under captions; `total` stands below them in bold."""

    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    total: tuple[str, ...] = ()
    #: The least height of a row that is written in by hand [points]; 0 for a row that is read.
    high: float = 0.0


class Columns(Struct, frozen=True, kw_only=True):
    """Stacks of blocks side by side, with their shares of the width."""

    parts: tuple[tuple[Any, ...], ...]
    shares: tuple[float, ...]
    ruled: tuple[int, ...] = ()


class Measure(Struct, frozen=True, kw_only=True):
    """A size to measure: its limits as two figures and a blank for what was found, or boxes to tick.

    `how` says with what, where and when; `again` what is written down between two cuts, with its blanks.
    """

    step: str
    what: str
    low: str = ""
    high: str = ""
    boxes: tuple[str, ...] = ()
    how: str = ""
    again: str = ""


class DialRow(Struct, frozen=True, kw_only=True):
    """Readings of one handle in a step: which handle and from where, and each as
    whole turns and line, with a box.

    `beside` is what the line is off, one for each reading; empty where none is
    off by more than its dial can show.
    """

    caption: str
    readings: tuple[str, ...]
    beside: tuple[str, ...] = ()


class Step(Struct, frozen=True, kw_only=True):
    """One row of the steps: what is set at the machine is ready to print; `share` stands with its sign.

    `cutter` is its line: cutter, place, holder and how far out, fluid. `dials` are the readings that are
    wound to, `measures` what is measured of it.
    """

    number: str
    do: str
    note: str = ""
    cutter: str = ""
    spindle: str = ""
    spindle_note: str = ""
    pace: str = ""
    pace_note: str = ""
    depth: str = ""
    depth_note: str = ""
    #: The numbers of its stop notes in the band of the page.
    stops: str = ""
    verdict: str = ""
    share: str = ""
    governs: str = ""
    odds: str = ""
    #: What was not tried on this machine beside what governs, and where to begin.
    untried: str = ""
    dials: tuple[DialRow, ...] = ()
    measures: tuple[Measure, ...] = ()
    notes: tuple[NoteLine, ...] = ()


class Steps(Struct, frozen=True):
    """The steps under their captions; further down on a page that has them already, without."""

    rows: tuple[Step, ...]
    captions: bool = True


class RungRow(Struct, frozen=True, kw_only=True):
    """One test cut of a proving sheet: what is set, its unit and a second line; seconds it should take."""

    number: str
    size: str
    unit: str = ""
    size_note: str = ""
    spindle: str = ""
    spindle_note: str = ""
    pace: str = ""
    pace_note: str = ""
    asks: tuple[str, ...] = ()
    seconds: str = ""


class RungRows(Struct, frozen=True, kw_only=True):
    """The rungs under their captions; `results` with boxes to write in,
    `initials` one more of them a rung.
    """

    rows: tuple[RungRow, ...]
    grows: str
    results: bool = True
    initials: bool = False


class Measures(Struct, frozen=True):
    """What to measure, one under the other."""

    rows: tuple[Measure, ...]


class Writing(Struct, frozen=True):
    """Empty lines to write on, the first with its caption; it takes the room that a page has left."""

    lines: int = 2
    caption: str = ""


class Blanks(Struct, frozen=True):
    """Short lines to write on, side by side, each with its caption."""

    captions: tuple[str, ...]


class Outcomes(Struct, frozen=True):
    """A box for each step to write the digit of how it went; a head before them, short lines to
    write on behind, each with its caption.
    """

    steps: tuple[str, ...]
    captions: tuple[str, ...] = ()
    head: str = ""


class Signature(Struct, frozen=True):
    """A sentence, and lines for a name and a date."""

    text: str
    captions: tuple[str, ...] = ("signed", "date")


class Worked(Struct, frozen=True, kw_only=True):
    """One formula with its numbers put in, its result and its source."""

    title: str
    expression: str
    numbers: str
    result: str
    source: str
    caveats: tuple[str, ...] = ()


class StopCause(Struct, frozen=True, kw_only=True):
    """One cause to stop before cutting: its number on these sheets, its words, where
    it stands, whose initials it asks.
    """

    number: int
    text: str
    where: str
    asked: str = ""
    given: str = ""


class StopBand(Struct, frozen=True):
    """The band above the title block: what nobody has read for this print, one row a cause."""

    head: str
    reason: str
    causes: tuple[StopCause, ...]


class TitleCell(Struct, frozen=True, kw_only=True):
    """One cell of the title block; `page` is filled with the page's number."""

    caption: str
    text: str = ""
    share: float
    strong: bool = False
    page: bool = False


class Page(Struct, frozen=True, kw_only=True):
    """One page; what stands at its foot, and the band of its stop notes above its title block.

    `about` may name several set-ups that share the page, with a blank between them; `code` names the
    file and its check code, which tells paper and file to be the same plan.
    """

    kind: str
    #: The key of the set-up that it belongs to; `cover` for the cover.
    about: str = ""
    title: tuple[tuple[TitleCell, ...], ...]
    blocks: tuple[Any, ...]
    legend: tuple[str, ...] = ()
    foot: tuple[str, ...] = ()
    band: StopBand | None = None
    code: str = ""
    #: What the printed code in the title block says; empty on every page but the cover.
    printed: str = ""
    #: A card of half a page: two of them share a sheet of paper and are cut apart.
    half: bool = False
    number: int = 0
    total: int = 0


class Document(Struct, frozen=True, kw_only=True):
    """All pages of one job, with the file that they were made from."""

    name: str
    title: str
    pages: tuple[Page, ...]
    source: bytes
    #: What is carried beside the job: the machine's card and its proof log, each with its name.
    beside: tuple[tuple[str, bytes], ...] = ()
    #: Ids of stop notes that nobody has acknowledged for this print.
    open_stops: tuple[str, ...] = ()
    #: The bytes of its photographs by their content.
    photographs: dict[str, bytes] = {}
    #: What the file says that it is about.
    subject: str = "Set-up sheets for a manual milling machine"
    #: Sentences on pages that were asked for and that this job has none of, and on what
    #: does not print as one would write it.
    left_out: tuple[str, ...] = ()

    @property
    def sheets(self) -> tuple[tuple[Page, ...], ...]:
        """The pages as they come out of a printer: two cards of half a page
        that follow each other share one.
        """
        sheets: list[tuple[Page, ...]] = []
        for page in self.pages:
            if page.half and sheets and len(sheets[-1]) == 1 and sheets[-1][0].half:
                sheets[-1] = (*sheets[-1], page)
            else:
                sheets.append((page,))
        return tuple(sheets)


def words_of(value: object) -> Iterator[str]:
    """Every text of a page or block in the order it stands, lettering of drawings too."""
    found: list[str] = []
    _gather(value, found)
    return iter(found)


def _gather(value: object, found: list[str]) -> None:
    if isinstance(value, str):
        if value:
            found.append(value)
    elif isinstance(value, (tuple, list)):
        for one in value:
            _gather(one, found)
    elif isinstance(value, Drawing):
        found += [item.words for item in value.items if isinstance(item, Text)]
    elif isinstance(value, Struct):
        for name in value.__struct_fields__:
            if name not in _SETTINGS:
                _gather(getattr(value, name), found)


#: Fields that say how, not what.
_SETTINGS = frozenset({"style", "align", "weight", "kind", "about", "sign", "content"})
