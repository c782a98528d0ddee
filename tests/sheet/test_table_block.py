"""Tables: every cell stands in its row, and more rows take more height."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Text
from jobsheet.report.blocks import Cell, Column, Table
from jobsheet.sheet import table_block  # noqa: F401  # registers how tables are laid
from jobsheet.sheet.laid import lay, settled

COLUMNS = (
    Column(caption="no.", style="number", align="right"),
    Column(caption="what", style="body", wide=True),
)


def table(*rows):
    return Table(columns=COLUMNS, rows=tuple((Cell(number), Cell(text)) for number, text in rows))


def texts(block, room=300.0):
    return [
        (round(item.y, 3), item.words) for item in settled(lay(block, room).items) if isinstance(item, Text)
    ]


def test_cells_of_a_row_stand_on_one_line_below_their_captions():
    found = {word: y for y, word in texts(table(("1", "drill"), ("2", "tap")))}
    assert found["1"] == pytest.approx(found["drill"], abs=1)
    assert found["2"] == pytest.approx(found["tap"], abs=1)
    assert found["1"] + 5 < found["2"]
    assert found["no."] < found["1"]


def test_more_rows_and_longer_words_take_more_height():
    one = lay(table(("1", "drill")), 300.0).height
    assert lay(table(("1", "drill"), ("2", "tap")), 300.0).height > one
    assert lay(table(("1", "a long text that goes on " * 10)), 300.0).height > one
