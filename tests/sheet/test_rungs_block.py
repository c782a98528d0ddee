"""Rungs of a proving sheet: what is set stands large, and there are boxes for what happened."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.drawing.drawn import Line, Text
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.report.blocks import RungRows
from jobsheet.sheet import rungs_block  # noqa: F401  # registers how rungs are laid
from jobsheet.sheet.laid import lay, settled
from tests.reckoning.ladder_begun import B1
from tests.report.pages_read import all_of


def rung_rows():
    from jobsheet.report.proving_sheet import proving_sheet

    document = proving_sheet(plan("bench-mill-b-1", **B1))
    return replace(all_of(document, RungRows)[0], results=True)


def test_every_rung_has_its_number_and_boxes():
    block = rung_rows()
    items = list(settled(lay(block, 505.0).items))
    said = {item.words for item in items if isinstance(item, Text)}
    assert {str(row.number) for row in block.rows} <= {word.strip(".") for word in said}
    captions = {"seconds", "heard", "seen", "outcome"}
    assert captions <= said
    assert sum(isinstance(item, Line) for item in items) >= 4 * len(block.rows)
