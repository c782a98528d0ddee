"""A card's handles, by their names."""

from __future__ import annotations

import pytest

from jobsheet.storage.card_files import card_names, find_card


@pytest.mark.parametrize("name", card_names())
def test_each_handle_is_found_by_its_name(name):
    card = find_card(name)
    for handle in card.handles:
        assert card.handle(handle.name) is handle
    assert card.handle("no such") is None


def test_a_dial_has_a_whole_number_of_lines_a_turn():
    """A dial that has not would read otherwise at every turn."""
    for name in card_names():
        for handle in find_card(name).handles:
            lines = handle.travel / handle.line
            assert lines == pytest.approx(round(lines), rel=1e-6), (name, handle.name)
