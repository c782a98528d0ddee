"""A card for one step on half a page."""

from __future__ import annotations

from jobsheet.report.blocks import words_of
from jobsheet.report.for_use.step_card import step_cards
from jobsheet.sheet.pages import fits_on

from .plans import plate
from .seen_from_above import plan_of


def test_each_step_that_is_asked_has_its_card_on_half_a_page():
    plan = plan_of(plate())
    plan.fits = fits_on("a4")
    numbers = tuple(one.number for _, one in plan.job.operations())
    assert len(step_cards(plan)) == len(numbers)
    (card,) = step_cards(plan, (numbers[4],))
    assert card.half
    assert fits_on("a4")(card)
    assert str(numbers[4]) in " ".join(words_of((card,)))
    assert step_cards(plan, (9999,)) == []
