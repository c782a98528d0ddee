"""A way of holding that only words say: they stand as they are, and nothing is reckoned of them."""

from __future__ import annotations

from jobsheet.catalog.metals.materials import find
from jobsheet.holdings.kinds.other_words import KIND
from jobsheet.model.held_work import Around
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card

from .said_holdings import said


def test_words_stand_as_they_were_typed():
    held = said("other words", device="A magnet, on  its side", packing="brass")
    assert (KIND.words(held), KIND.rests(held)) == ("A magnet, on  its side", "brass")


def test_nothing_of_it_can_be_checked():
    held = said("other words", device="vice", packing="parallels")
    card = find_card("bench-mill-b-1")
    assert KIND.plays(held).in_words
    assert not KIND.plays(held).jaws
    assert KIND.grip(held, card, find("S235"), Shop()) is None
    assert KIND.bodies(held, Around(size=(0.08, 0.05, 0.02))) == ()
    assert KIND.top(held, card, 0.02) is None
    assert KIND.mass(held, card) == 0.0
