"""What the list of materials says: trade name, standard names, hardness, dangers
of the chips, and which is planned.
"""

from __future__ import annotations

import pytest

from jobsheet.gui.edits.material_choice import LETTERS, materials_listed


@pytest.fixture(scope="module")
def all_of_them():
    return materials_listed("")


def test_every_material_has_a_name_and_a_key_of_its_own(qapp, all_of_them):
    assert len({one.key for one in all_of_them}) == len(all_of_them) > 20
    assert all(one.title for one in all_of_them)
    assert all(len(one.under) <= LETTERS for one in all_of_them)


def test_the_one_that_is_planned_is_marked_by_any_of_its_names(qapp):
    planned = [one.key for one in materials_listed("", "s235") if one.beside == "planned"]
    assert planned == ["S235"]
    assert not any(one.beside == "planned" for one in materials_listed(""))


def test_what_is_typed_is_found_and_underlined(qapp):
    first = materials_listed("S235")[0]
    assert first.key == "S235"
    assert first.title[slice(*first.hit)] == "S235"
    assert first.under[slice(*first.under_hit)] == "S235"
    assert materials_listed("no such metal at all") == ()


def test_chips_that_burn_or_poison_carry_the_sign_of_a_hazard(qapp, all_of_them):
    dangers = {one.fact.split(" · ")[-1]: one.sign for one in all_of_them if one.sign != ("", "")}
    assert dangers
    assert set(dangers.values()) == {("severity-hazard", "vermmark")}
    assert any("burn" in words for words in dangers)
