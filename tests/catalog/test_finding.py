"""Materials by what is typed: names before hardness, a beginning before any part."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.finding import materials_found
from jobsheet.catalog.metals.materials import all_materials


def test_nothing_typed_is_all_of_them_in_their_order():
    assert [found.material for found in materials_found("  ")] == list(all_materials())


def test_a_name_that_begins_so_goes_before_one_that_has_a_word_of_it():
    found = materials_found("s235")
    assert found[0].material.name == "S235"
    steel = [found.material.title for found in materials_found("steel")]
    begins = [title.casefold().startswith("steel") for title in steel]
    assert begins == sorted(begins, reverse=True)


def test_words_of_several_names_must_all_fit():
    assert "S235" in [one.material.name for one in materials_found("mild 1.0038")]
    assert materials_found("mild 6082") == ()


@pytest.mark.parametrize("typed", ["120", "120 HB", "120hbw"])
def test_a_hardness_finds_what_is_so_hard(typed):
    found = materials_found(typed)
    assert found
    assert all("HB" in one.material.hardness for one in found if not one.name)


def test_what_nothing_is_called_finds_nothing():
    assert materials_found("unobtainium") == ()
