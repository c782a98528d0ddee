"""A number and where it comes from, taken apart and put together."""

from __future__ import annotations

import pytest

from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.card_steps import STEPS
from jobsheet.storage.paper_layout import asks, joined, parted


def test_a_number_and_where_it_comes_from():
    assert parted("0.81, guessed") == ("0.81", "guessed")
    assert parted("0,81") == ("0,81", "")
    assert joined("0.81", "") == "0.81, guessed"
    assert joined(" ", "plate") == ""


@pytest.mark.parametrize("step", STEPS, ids=lambda step: step.title)
def test_every_field_of_the_steps_is_a_field_of_the_card(step):
    known = {path for path, _ in asks(LAYOUT.parts)}
    assert set(step.fields) <= known
