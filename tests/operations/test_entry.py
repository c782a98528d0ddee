"""Entries: what is typed is read strictly, refused with one sentence that says what
to write, and shown as understood.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import QuantityError
from jobsheet.operations.entry import Entry


def entry(asks: str, **more) -> Entry:
    return Entry(name="it", title="The field", asks=asks, **more)


def refused(asked: Entry, text: str, units: str = "mm") -> QuantityError:
    with pytest.raises(QuantityError) as caught:
        asked.read(text, units)
    return caught.value


@pytest.mark.parametrize(
    ("asks", "more", "said"),
    [
        ("length", {}, "write, for example"),
        ("cutter", {"choices": ("slot drill",)}, "slot drill 12 mm"),
        ("thread", {}, "M6"),
        ("hole size", {}, "#7"),
        ("depth", {}, "through"),
        ("places", {}, "14, 12; 66, 12"),
        ("size", {}, "16 H7"),
        ("count", {}, "a whole number"),
        ("flag", {}, "yes or no"),
        ("choice", {"choices": ("x", "y")}, "choose x or y"),
        ("text", {}, "write something"),
        ("material", {}, "S235"),
    ],
)
def test_an_empty_field_says_what_to_write(asks, more, said):
    complaint = str(refused(entry(asks, **more), "  "))
    assert complaint.startswith("The field is empty; ")
    assert said in complaint


def test_an_optional_field_may_stay_empty():
    assert entry("length", optional=True).read("", "mm") is None
    assert entry("text", optional=True).read("", "mm") == ""


@pytest.mark.parametrize(
    ("asked", "text", "said"),
    [
        (entry("length", low="1 mm"), "0.9", "must be at least 1 mm"),
        (entry("length", high="10 mm"), "10.1", "can be at most 10 mm"),
        (entry("count", low="1"), "0", "must be at least 1"),
        (entry("count", high="12"), "13", "can be at most 12"),
        (entry("count"), "four", "not a whole number"),
        (entry("count"), "²", "not a whole number"),
        (entry("flag"), "perhaps", "neither yes nor no"),
        (entry("choice", choices=("left", "right")), "lefft", "Did you mean left?"),
        (entry("choice", choices=("left", "right")), "zzzz", "Choose one of: left, right."),
        (entry("text"), "a" * 2001, "longer than 2000 characters"),
        (entry("text"), "bell \x07", "cannot be printed (at 6)"),
        (entry("cutter", choices=("slot drill",)), "drill 6", "does not do this; write a slot drill"),
        (entry("depth"), "deep", "or through"),
        (entry("places"), "; ;", "is empty"),
        (entry("places"), "14; 12", "is not one place"),
        (entry("material"), "unobtainium 9", "unobtainium 9"),
    ],
)
def test_what_cannot_be_is_refused_and_never_moved_into_its_bounds(asked, text, said):
    assert said in str(refused(asked, text))


def test_a_bound_itself_is_inside():
    asked = entry("length", low="1 mm", high="10 mm")
    assert asked.read("1 mm", "mm").value == pytest.approx(1e-3)
    assert asked.read("10", "mm").value == pytest.approx(10e-3)


def test_a_wrong_coordinate_is_pointed_at_in_the_whole_text():
    text = "14, 12; 66, 1z"
    problem = refused(entry("places"), text)
    assert text[problem.start : problem.end].strip() in ("1z", "z")


# Sources: 1 in = 25.4 mm (international inch, 1959); number drill 7 is 0.2010 in and letter H 0.266 in
# (ANSI/ASME B94.11M, remembered); H7 at 16 mm is +18 um (ISO 286-2, remembered);
# M6 coarse has 1 mm pitch (ISO 261).
@pytest.mark.parametrize(
    ("asks", "text", "units", "line"),
    [
        ("length", "1/2 in", "mm", "12.7 mm = 0.5000 in"),
        ("hole size", "#7", "mm", "#7 = 0.2010 in = 5.105 mm"),
        ("hole size", "H", "mm", "0.2660 in = 6.756 mm"),
        ("hole size", "5 mm", "mm", "5 mm = 0.1969 in"),
        ("size", "16 H7", "mm", "16.000 to 16.018 mm"),
        ("size", "40 ±0.03", "mm", "39.970 to 40.030 mm"),
        ("size", "1 ±0.001", "in", "0.9990 to 1.0010 in"),
        ("size", "12", "mm", "12 mm = 0.4724 in"),
        ("thread", "M6", "mm", "6 mm, pitch 1 mm"),
        ("places", "14, 12", "mm", "1 place"),
        ("places", "14, 12; 66, 12", "mm", "2 places"),
        ("depth", "Through", "mm", "out at the other side"),
        ("depth", "3", "mm", "3 mm = 0.1181 in"),
        ("spindle speed", "560 rpm", "mm", "560 rpm"),
        ("cutting speed", "100 ft/min", "mm", "30.48 m/min"),
    ],
)
def test_what_was_understood_stands_under_the_field(asks, text, units, line):
    asked = entry(asks)
    assert line in asked.understood(asked.read(text, units), units)


def test_the_hint_stands_there_where_nothing_needs_reading():
    asked = entry("count", hint="how many")
    assert asked.understood(4, "mm") == asked.understood(None, "mm") == "how many"


def test_values_are_written_back_as_they_were_typed():
    assert entry("length").text(None) == ""
    assert entry("text").text("as it lies") == "as it lies"
    assert entry("flag").text(entry("flag").read("Yes", "mm")) == "yes"
    assert entry("flag").text(False) == "no"
    assert entry("count").text(entry("count").read("4", "mm")) == "4"
    assert entry("length").text(entry("length").read(" 1/2 in", "mm")) == " 1/2 in"


def test_the_unit_of_a_bare_number_follows_the_job():
    assert (entry("depth").unit("mm"), entry("depth").unit("in")) == ("mm", "in")
    assert entry("text").unit("mm") == ""
    assert math.isclose(entry("length").read("1", "in").value, 25.4e-3)


def test_a_choice_as_it_was_spelled_once_is_read_as_it_is_today():
    asked = Entry(
        name="instrument", title="Measured with", asks="choice", choices=("calliper", "rule"), older=(("caliper", "calliper"),)
    )  # fmt: skip
    assert [asked.read(text, "mm") for text in ("caliper", "Caliper", "calliper")] == ["calliper"] * 3
    with pytest.raises(QuantityError, match="Choose one of: calliper, rule"):
        asked.read("ruler of brass", "mm")


def test_a_guess_at_a_unit_and_the_word_through_are_two_sentences():
    with pytest.raises(QuantityError) as refused:
        entry("depth").read("40 micrometer", "mm")
    assert str(refused.value) == "“micrometer” is no unit here. Did you mean 40 micrometre? Or write through."


def test_a_text_that_is_missing_says_what_it_is_by_its_example():
    assert Entry(name="edges", title="Edges", asks="text", hint="such as A and B").wanted("mm") == (
        "write, for example, A and B"
    )
    assert Entry(name="does", title="What", asks="text").wanted("mm") == "write something"
