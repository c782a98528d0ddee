"""A set-up sheet to fill in by hand: empty lines, and what is known without a
job: the machine's speeds and dials.
"""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.drawing.drawn import Drawing, Item, Line, Text
from jobsheet.drawing.making import arrow, box
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.machine.handles import scale_text
from jobsheet.machine.spindle import highest, lowest, steps
from jobsheet.model.machine import Handle, Machine
from jobsheet.report.blocks import (
    Blanks,
    Cell,
    Column,
    Columns,
    Heading,
    Outcomes,
    Page,
    Picture,
    Rule,
    Table,
    Ticks,
    TitleCell,
    Words,
    Writing,
)
from jobsheet.report.set_up_sheet import CHANGED, DIGITS, MINUTES
from jobsheet.report.wording import FOOT
from jobsheet.units.show import plain

#: Height of the two frames to draw in; least and most rows for steps, rows for points, speeds side by side.
FRAME, LEAST, MOST, POINTS, BESIDE = 112.0, 4, 12, 6, 6
#: A row that is written in by hand [points]: 9 mm, common practice.
BY_HAND = 25.5
#: What is ticked in every set-up on any machine (common practice).
TICKED = (
    "eye protection on",
    "nothing loose on you",
    "work seated and tight",
    "drawbar tight",
    "key and wrench out",
    "idle slides locked",
    "spun once by hand",
)


def blank_form(card: Machine, fits: Callable[[Page], bool], workshop: str = "") -> list[Page]:
    """One page, with as many rows for steps as it has room for.

    Parameters
    ----------
    card : Machine
        The machine whose speeds and dials are printed
    fits : callable
        Whether a page has room for all that it holds
    workshop : str
        Printed in the title block; empty leaves a blank there
    """
    page = _page(card, workshop, LEAST)
    for count in range(MOST, LEAST, -1):
        page = _page(card, workshop, count)
        if fits(page):
            return [page]
    return [page]


def _page(card: Machine, workshop: str, rows: int) -> Page:
    return Page(
        kind="blank", about="", title=_title(card, workshop),
        blocks=(
            Columns(parts=((Heading("Hold", "draw it"), Picture("", _frame(150.0))), (Heading("Zero, from above", "and the points"), Picture("", _zero(190.0))), _facts()), shares=(0.3, 0.38, 0.32), ruled=(2,)),
            Rule(),
            Heading("Before cutting"), Ticks(TICKED),
            Rule(),
            Heading("Speeds", "ring the ones that are set"), *_speeds(card),
            Heading("Dials"), Words(" · ".join(_dials(card)), "label"),
            Rule(),
            Columns(parts=((Heading("Positions", "from zero"), _points(POINTS // 2, 1)), (Heading(" "), _points(POINTS // 2, 1 + POINTS // 2))), shares=(0.5, 0.5), ruled=(1,)),
            Rule(),
            _rows(rows),
            Heading("What happened", DIGITS), Outcomes(tuple(str(10 * number) for number in range(1, rows + 1))),
            Writing(1, CHANGED), Blanks((*MINUTES, "made by", "checked by", "date")),
        ),
        legend=("zero",), foot=(FOOT,),
    )  # fmt: skip


def _title(card: Machine, workshop: str) -> tuple[tuple[TitleCell, ...], ...]:
    machine = f"{card.title}, invented" if card.invented else card.title
    return (
        (
            TitleCell(caption="Part", share=0.416, strong=True),
            TitleCell(caption="Set-up", text="__ of __", share=0.424, strong=True),
            TitleCell(caption="Page", share=0.16, strong=True, page=True),
        ),
        (
            TitleCell(caption="Workshop", text=workshop, share=0.26),
            TitleCell(caption="Drawing, revision", share=0.16),
            TitleCell(caption="Machine, its card of", text=f"{machine}, {card.card_date}", share=0.26),
            TitleCell(caption="Material", share=0.14),
            TitleCell(caption="Planned by, date", share=0.18),
        ),
    )


def _frame(width: float) -> Drawing:
    return Drawing(width, FRAME, (Line(box(0.5, 0.5, width - 1, FRAME - 1), "row", closed=True),))


def _zero(width: float) -> Drawing:
    """A frame with the two directions that count up; whoever stands at the machine looks from below."""
    items: list[Item] = [*_frame(width).items, *mark_at("zero", 10.0, 15.0, FRAME - 26.0)]
    for tip in ((44.0, FRAME - 21.0), (20.0, FRAME - 46.0)):
        items += arrow((20.0, FRAME - 21.0), tip)
    items += [Text(48.0, FRAME - 18.0, "X", "label bold"), Text(16.5, FRAME - 49.0, "Y", "label bold")]
    items.append(Text(width / 2, FRAME - 4.5, "you stand here", "caption", "middle"))
    return Drawing(width, FRAME, tuple(items))


def _facts() -> tuple[object, ...]:
    """What is said of a holding and a zero, with a line for each."""
    return tuple(
        Blanks((caption,))
        for caption in ("held in", "face up", "fixed jaw", "on", "above the jaws", "zero, found with")
    )


def _speeds(card: Machine) -> list[object]:
    """Every speed with where it is set, or the ends of a drive without steps."""
    found = [(f"{speed.speed * 60:.0f}", speed.position) for speed in steps(card)]
    if not found:
        named = ", ".join(speed_range.name for speed_range in card.spindle.ranges if speed_range.name)
        ends = f"any from {lowest(card) * 60:.0f} to {highest(card) * 60:.0f} rpm"
        return [Words(f"{ends}{f', in: {named}' if named else ''}", "number")]
    across = min(BESIDE, len(found))
    cells = [Cell(speed, (place,) if place else ()) for speed, place in found]
    cells += [Cell()] * (-len(cells) % across)
    rows = tuple(tuple(cells[at : at + across]) for at in range(0, len(cells), across))
    return [Table(columns=tuple(Column(style="number") for _ in range(across)), rows=rows)]


def _dials(card: Machine) -> list[str]:
    """A turn and a line of every handle, and what is lost turning back; the
    quill's travel a turn of its lever.
    """
    words = [
        f"{handle.name.upper() if len(handle.name) == 1 else handle.name}: {scale_text(handle)}{_lost(handle)}"
        for handle in card.handles
    ]
    if card.lever is not None:
        words.append(f"quill lever: {plain(card.lever.travel * 1e3, 0)} mm a turn")
    return words


def _lost(handle: Handle) -> str:
    if not handle.backlash:
        return ""
    value = (
        f"{plain(handle.backlash / 0.0254, 3)} in"
        if handle.dial == "in"
        else f"{plain(handle.backlash * 1e3, 2)} mm"
    )
    return f", backlash {value}"


def _points(count: int, first: int) -> Table:
    columns = (
        Column(caption="point", style="number"), Column(caption="X             ", ruled=True), Column(caption="X turns + line", ruled=True),
        Column(caption="Y             ", ruled=True), Column(caption="Y turns + line", ruled=True),
    )  # fmt: skip
    rows = tuple(
        (Cell(str(number)), *(Cell() for _ in columns[1:])) for number in range(first, first + count)
    )
    return Table(columns=columns, rows=rows, high=20.0)


def _rows(count: int) -> Table:
    """Steps by tens, so that others can be put between."""
    columns = (
        Column(caption="done", tick=True), Column(caption="step", style="field", align="right"), Column(caption="do · cutter, place, fluid", wide=True),
        Column(caption="rpm            ", ruled=True), Column(caption="pace           ", ruled=True), Column(caption="depth, stop   ", ruled=True),
        Column(caption="found          ", ruled=True),
    )  # fmt: skip
    rows = tuple(
        (Cell(), Cell(str(10 * number)), *(Cell() for _ in columns[2:])) for number in range(1, count + 1)
    )
    return Table(columns=columns, rows=rows, high=BY_HAND)
