"""A set-up sheet to fill in by hand: one page with the speeds and dials of the machine, and
as many rows as there is room for.
"""

from __future__ import annotations

import pytest

from jobsheet.machine.spindle import steps
from jobsheet.report.blocks import words_of
from jobsheet.report.for_use.blank_form import blank_form
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.card_files import find_card


def words(page):
    return " ".join(words_of((page,)))


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("name", ["bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2"])
def test_it_is_one_page_that_fits_its_paper(name, paper):
    (page,) = blank_form(find_card(name), fits_on(paper), "Harrowmoss")
    assert fits_on(paper)(page)
    assert "Harrowmoss" in words(page)


def test_every_speed_of_the_machine_stands_there():
    card = find_card("bench-mill-b-1")
    (page,) = blank_form(card, fits_on("a4"))
    assert all(one.marked in words(page) for one in steps(card))


def test_less_room_has_fewer_rows():
    card = find_card("bench-mill-b-1")
    (roomy,), (narrow,) = blank_form(card, lambda _page: True), blank_form(card, lambda _page: False)
    assert len(repr(narrow)) < len(repr(roomy))
