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
