"""A material of one's own, begun as a copy: a job can name it at once, and no name is taken twice."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.errors import CannotWrite, NoSuchEntry
from jobsheet.paths import own_folder
from jobsheet.storage.kept.begun_material import LONGEST, begin_material


def test_it_cuts_like_the_other_and_has_its_own_name():
    path = begin_material("Yard steel", "S235")
    assert own_folder() in path.parents
    found, like = find("Yard steel"), find("S235")
    assert found.kc11.value == like.kc11.value
    assert found.speed("mill") == like.speed("mill")
    assert found.family == like.family


@pytest.mark.parametrize("name", ["", "   ", "x" * (LONGEST + 1), "a\x07b"])
def test_a_name_has_letters_and_an_end(name):
    with pytest.raises(CannotWrite, match=f"1 to {LONGEST} letters"):
        begin_material(name, "S235")


def test_a_name_that_is_there_already_is_refused_and_what_is_not_there_cannot_be_copied():
    with pytest.raises(CannotWrite, match="already"):
        begin_material("s235", "S235")
    with pytest.raises(NoSuchEntry):
        begin_material("Yard steel", "unobtainium")


def test_a_name_may_be_as_long_as_it_may_and_its_blanks_are_one():
    assert begin_material("x" * LONGEST, "S235").stem == "x" * 50
    begin_material("  Yard \n steel ", "S235")
    assert find("Yard steel").title == "Yard steel"
    with pytest.raises(CannotWrite, match="called “yard steel” already; choose it, or another name"):
        begin_material("yard  steel", "S235")


def test_names_of_the_same_letters_have_files_of_their_own():
    names = [begin_material(name, "S235").name for name in ("Yard 1!", "Yard 1?", "Yard-1", "!?")]
    assert names == ["yard-1.yaml", "yard-1-2.yaml", "yard-1-3.yaml", "material.yaml"]


def test_one_s_own_is_no_beginning():
    begin_material("Yard steel", "S235")
    with pytest.raises(NoSuchEntry, match="“Yard steel” is one of your own"):
        begin_material("Barn steel", "Yard steel")
