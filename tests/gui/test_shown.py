"""What a field shows: the value with what was understood, or what cannot be read with its reason."""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.gui.forms.shown import Section, Shown, shown
from jobsheet.operations.entry import Entry

LENGTH = Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="100 mm")


def test_a_value_stands_as_it_was_typed():
    found = shown(LENGTH, LENGTH.read("0.5 in", "mm"), None, "mm")
    assert found.text == "0.5 in"
    assert "12.7" in found.understood
    assert found.problem is None


def test_where_it_is_empty_what_stands_for_it_is_proposed():
    assert shown(LENGTH, None, None, "mm", "2 mm") == Shown("", "", None, "2 mm")


@pytest.mark.parametrize("draft", ["10 m", "ten", "3 kg"])
def test_a_draft_that_cannot_be_read_stands_with_its_reason(draft):
    found = shown(LENGTH, LENGTH.read("2 mm", "mm"), draft, "mm", "1 mm")
    assert found.text == draft
    assert isinstance(found.problem, QuantityError)
    assert not found.understood
    assert not found.proposed


def test_a_draft_that_can_be_read_has_no_problem():
    assert shown(LENGTH, None, "3 mm", "mm") == Shown("3 mm")


def test_a_section_is_its_entries():
    assert Section("stock", "Stock", (LENGTH,)).entries[0].name == "depth"
