"""Where the columns of the sheet stand, for each of the three layouts."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.gui.ink.look import Look

ROW = 31
#: A row where there is no room for columns: what is done, and under it what the machine is asked for.
TWO_LINES, UPPER = 50, 30
HEADING = 36
TITLE = 44
HEADS = 26
STRIP = {"wide": 164, "medium": 132, "narrow": 132}
MARGIN = {"wide": 528, "medium": 424, "narrow": 196}
#: Columns of the form in an open row.
COLUMNS = {"wide": 4, "medium": 3, "narrow": 2}


class Columns(Struct, frozen=True):
    """All places [px] in a row of some width; those that a layout has not are nought."""

    form: str
    width: int
    margin: int
    sign: int
    number_right: int
    icon: int
    text: int
    cutter: int
    rpm_right: int
    pace_right: int
    depth_right: int
    mark: int
    share: int


def columns(look: Look, width: int) -> Columns:
    """The places for a row of that width."""
    px = look.px
    form = look.form(width + px(18))
    margin = width - px(MARGIN[form])
    if form == "narrow":
        return Columns(
            form, width, margin, px(12), px(62), px(72), px(102), 0, 0, 0, 0, margin + px(10), margin + px(32)
        )
    rpm, pace, depth, mark = (94, 202, 296, 319) if form == "wide" else (77, 174, 240, 250)
    return Columns(
        form,
        width,
        margin,
        px(12),
        px(72),
        px(84),
        px(116),
        margin - px(206) if form == "wide" else 0,
        margin + px(rpm),
        margin + px(pace),
        margin + px(depth),
        margin + px(mark),
        margin + px(mark + (23 if form == "wide" else 22)),
    )
