"""More than six points get a card of their own."""

from __future__ import annotations

from jobsheet.report.blocks import Column, Table
from tests.report.plans import drill, job, pages

from .pages_read import found, text


def test_more_than_six_points_get_a_card_and_the_steps_say_so():
    places = [(10 + 10 * n, 10) for n in range(7)]
    document = pages(job([drill(10, places)]))
    card = next(page for page in document.pages if page.kind == "positions")
    table = next(one for block in card.blocks for one in found(block, Table))
    assert [row[0].text for row in table.rows] == list("01234567")
    assert table.columns[-1] == Column(caption="10", tick=True)
    assert "points 1–7, card" in text(document, "set-up")
    assert "28 + 0.00" not in text(document, "set-up")


def test_six_points_stay_on_the_sheet():
    document = pages(job([drill(10, [(10 + 10 * n, 10) for n in range(6)])]))
    assert [page.kind for page in document.pages if page.kind == "positions"] == []
