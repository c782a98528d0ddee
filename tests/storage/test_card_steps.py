"""A card of a class, and what it assumes."""

from __future__ import annotations

import pytest

from jobsheet.storage.card_steps import STEPS, begin, classes
from jobsheet.storage.paper_text import paper_text

from .cards_typed import read


@pytest.mark.parametrize("name", classes())
def test_the_card_of_a_class_can_be_used_at_once_and_says_what_it_assumes(name):
    paper = begin(name)
    machine = read(paper_text(paper))
    assert {word.strip() for word in machine.assumed.split(";")} == {step.word for step in STEPS if step.word}
    assert machine.spindle.power.mark == "guessed"
