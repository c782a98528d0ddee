"""What shapes of stock share: bars lie along their longest size, sizes that follow
keep the unit of those they follow.
"""

from __future__ import annotations

import pytest

from jobsheet.model.quantity import Quantity
from jobsheet.stock.shape_kind import as_typed, laid_along, longest, reckoned_size, text_of, thinnest
from jobsheet.storage.job_file import blank_job
from tests.stock.shaped_jobs import shaped


def test_a_box_of_stock_is_meant_as_a_bar_along_its_longest_size():
    stock = blank_job("bench-mill-b-1").stock
    usual = longest(stock)
    assert usual["bar_length"].value == max(stock.sizes)
    assert thinnest(stock).value == min(stock.sizes)


@pytest.mark.parametrize(("along", "place"), [("length", 0), ("width", 1), ("height", 2)])
def test_the_length_of_a_bar_is_the_size_that_it_lies_along(along, place):
    stock = shaped("round bar", along).stock
    one, other = Quantity(0.02, "20"), Quantity(0.03, "30")
    box = laid_along(stock, one, other)
    assert box[place] is stock.bar_length
    assert [size for size in box if size is not stock.bar_length] == [one, other]


def test_a_size_that_follows_is_spelled_in_the_unit_of_what_it_follows():
    assert reckoned_size(0.0254, Quantity(0.05, "2 in")).text == "1 in"
    assert reckoned_size(0.0254, Quantity(0.05, "50 mm")).text == "25.4 mm"
    assert reckoned_size(0.0254, Quantity(0.05, '2"')).text == "1 in"


def test_a_place_to_begin_from_is_what_its_text_reads_as():
    found = as_typed(1 / 30, Quantity(0.05, "50 mm"))
    assert found.text == "33.333 mm"
    assert found.value == pytest.approx(33.333e-3)


def test_nothing_said_is_nothing():
    assert text_of(None) == ""
    assert text_of(Quantity(0.02, "20 mm")) == "20 mm"
