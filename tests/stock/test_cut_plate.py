"""Plate cut out by its corners: the box round it, its area by any order of going
round, and outlines that cannot be.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.quantity import Place, Places, Quantity
from jobsheet.stock.shapes.cut_plate import SHAPE
from jobsheet.storage.job_file import blank_job

L_SHAPE = [(0, 0), (80, 0), (80, 30), (40, 30), (40, 50), (0, 50)]


def plate(corners):
    places = Places(tuple(Place(Quantity(x / 1e3, f"{x}"), Quantity(y / 1e3, f"{y}")) for x, y in corners))
    return replace(blank_job("bench-mill-b-1").stock, outline=places, height=Quantity(0.012, "12 mm"))


@pytest.mark.parametrize("corners", [L_SHAPE, L_SHAPE[::-1], [(x - 100, y + 7) for x, y in L_SHAPE]])
def test_its_box_and_area_are_the_same_however_it_is_said(corners):
    """80 × 30 and 40 × 20 on top: 3200 mm²."""
    stock = plate(corners)
    assert [round(one.value * 1e3, 6) for one in SHAPE.box(stock)] == [80, 50, 12]
    assert SHAPE.outline(stock).area * 1e6 == pytest.approx(3200)


def test_what_was_a_block_begins_with_its_four_corners():
    stock = blank_job("bench-mill-b-1").stock
    made = replace(stock, **SHAPE.usual(stock))
    assert SHAPE.outline(made).area == pytest.approx(stock.length.value * stock.width.value)
    assert SHAPE.wrong(made) == ("", "")


@pytest.mark.parametrize(
    ("corners", "says"),
    [([(0, 0), (80, 0)], "three corners"), ([(0, 0), (80, 50), (80, 0), (0, 50)], "crosses itself"), ([(0, 0), (40, 0), (80, 0)], "in one line")],
)  # fmt: skip
def test_an_outline_that_cannot_be_says_what_to_write(corners, says):
    name, sentence = SHAPE.wrong(plate(corners))
    assert name == "outline"
    assert says in sentence
