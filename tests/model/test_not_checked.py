"""A question that fails fails alone, and what failed is kept in words."""

from __future__ import annotations

import pytest

from jobsheet.errors import CalcError
from jobsheet.model.not_checked import NotChecked, alone, why


def asked(question):
    return alone(question, lambda words: words)


def test_an_answer_is_the_answer():
    assert asked(lambda: 12) == 12


def test_an_expected_failure_is_its_sentence_in_one_line():
    def question():
        raise CalcError("depth", 0, "above\n zero")

    assert asked(question) == "depth is 0; it must be above zero"


def test_any_other_says_what_broke_and_in_which_line_of_ours():
    def question():
        return {}["kc"]

    said = asked(question)
    assert said.startswith("the program failed here: KeyError: 'kc' (test_not_checked.py, line ")
    assert "Traceback" not in said


def test_who_ends_the_program_is_not_held_up():
    def question():
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        asked(question)


def test_it_names_its_step_where_there_is_one():
    one = NotChecked(what="solids", why="no such face", operation="slot")
    assert one.words(30) == "solids not checked: step 30: no such face"
    assert one.words() == "solids not checked: no such face"
    assert why(ValueError("a  b")) == "the program failed here: ValueError: a b"
