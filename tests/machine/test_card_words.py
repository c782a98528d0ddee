"""What the words of a card say, by the three cards that are shipped and by words of our own."""

from __future__ import annotations

import datetime as dt

import pytest
from msgspec.structs import replace

from jobsheet.machine.card_words import day, largest_drill, loses_zero, reads_table, trammed_on, vice_error
from jobsheet.storage.card_files import find_card

CARD = find_card("bench-mill-b-1")


@pytest.mark.parametrize(
    ("column", "loses"),
    [("dovetail, head keeps its line", False), ("round", True), ("ram and turret, knee", True), ("", False)],
)
def test_a_column_that_does_not_keep_its_line_loses_the_zero(column, loses):
    assert loses_zero(replace(CARD, column=column)) == loses


@pytest.mark.parametrize(("readout", "reads"), [("none", False), ("table, 0.005", True), ("screw", False)])
def test_only_a_readout_of_the_table_has_no_lines(readout, reads):
    assert reads_table(replace(CARD, readout=readout)) == reads


def test_the_error_of_a_vice_stands_with_its_length_and_only_where_the_vice_is_named():
    assert vice_error(replace(CARD, trammed="2026-11-02, 0.02 in 150 mm, vice indicated")) == pytest.approx(
        (0.02e-3, 0.15)
    )
    assert vice_error(replace(CARD, trammed="2026-11-02, 0.02 in 150 mm")) is None
    assert vice_error(replace(CARD, trammed="vice indicated")) is None


def test_a_day_and_the_largest_drill():
    assert trammed_on(replace(CARD, trammed="2026-11-02, 0.02 in 150 mm")) == dt.date(2026, 11, 2)
    assert day("last spring") is None
    assert day("2026-13-40") is None
    assert largest_drill(replace(CARD, largest_drill="10 mm in steel")) == pytest.approx(0.010)
    assert largest_drill(replace(CARD, largest_drill="not noted")) is None
