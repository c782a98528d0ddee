"""Plain blocks: no wider than their room, as high as their lines, formulas as one writes them."""

from __future__ import annotations

import pytest

from jobsheet.drawing.drawn import Line, Text
from jobsheet.report.blocks import Blanks, Columns, Gap, Heading, NoteLine, Rule, Ticks, Words, Writing
from jobsheet.sheet.laid import lay, settled
from jobsheet.sheet.plain_blocks import note_line, symbols, wide

LONG = "a long text that goes on " * 12


@pytest.mark.parametrize(
    "block", [Heading("Head", LONG), Words(LONG, "body"), Ticks((LONG, "short")), Blanks(("made by", "checked by")), Writing(3), Rule(), Columns(parts=((Words(LONG, "label"),), (Gap(5),)), shares=(0.5, 0.5))]
)  # fmt: skip
@pytest.mark.parametrize("room", [180.0, 400.0])
def test_nothing_is_wider_than_its_room_nor_lower_than_its_height(block, room):
    laid = lay(block, room)
    for item in settled(laid.items):
        if isinstance(item, Text) and item.anchor == "start":
            assert item.x + wide(item.words, item.style) <= room + 0.5 or item.size is not None
            assert item.y <= laid.height + 0.5
        if isinstance(item, Line):
            assert max(x for x, _ in item.points) <= room + 0.5


def test_a_narrower_room_takes_more_height():
    assert lay(Words(LONG, "body"), 150.0).height > lay(Words(LONG, "body"), 400.0).height
    assert lay(Writing(4), 200.0).height > lay(Writing(2), 200.0).height


def test_a_note_asks_initials_under_it():
    plain, low = note_line(NoteLine("Look out.", "warn", False), "note", 0, 0, 200)
    signed, lower = note_line(NoteLine("Look out.", "warn", False, initials="operator"), "note", 0, 0, 200)
    assert lower > low
    assert any(isinstance(item, Text) and item.words == "operator:" for item in signed)
    assert len(signed) > len(plain)


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("M = F * r", "M = F · r"),
        ("d^2 / 4", "d² / 4"),
        ("2 pi n", "2 π n"),
        ("x^2.5", "x^2.5"),
        ("spin - a", "spin − a"),
        ("d^3", "d³"),
    ],
)
def test_a_formula_as_one_writes_it(text, written):
    assert symbols(text) == written
