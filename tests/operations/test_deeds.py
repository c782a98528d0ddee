"""What is done at the bench, in words one after the other."""

from __future__ import annotations

import pytest

from jobsheet.operations.deeds import DEEDS, SAID, said


def test_the_first_begins_large_and_the_others_small():
    assert said(("measure", "deburr")) == "Measure; break the edges"
    assert said(("deburr",)) == "Break the edges"
    assert said(()) == ""


def test_what_has_no_words_of_its_own_is_left_to_the_person():
    assert said(("other",)) == ""
    assert said(("other", "measure")) == "Measure"
    assert said(("no such deed", "measure")) == "Measure"


@pytest.mark.parametrize("deed", DEEDS)
def test_each_begins_with_a_verb_and_ends_without_a_stop(deed):
    words = SAID[deed]
    assert words == "" or (words[0].isupper() and not words.endswith("."))
