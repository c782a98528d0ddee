"""What a job asks of the cabinet, each tool once."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.cabinet.cabinet_needs import needs_of, sizes_with_units, step_asks, words_ask

from .cabinet_asked import look, plate
from .steps import step


def test_of_drills_the_next_below_and_above_are_named_by_size_whatever_they_are_called():
    """Letter A is 0.234 in = 5.944 mm (ASME B94.11M), nearer above 5.7 than 6.0."""
    assert [one.what for one in look("drill 5.7").near] == ["drill 5.5 mm", "drill A"]
    assert look("drill 5.7").sentence == (
        "The cabinet has no drill 5.7; nearest are drill 5.5 mm (drawer 3) and drill A (drawer 4)."
    )


def test_what_lies_in_the_named_place_is_said():
    assert look("end mill 12, 4 teeth, drawer 2 no. 7").sentence == (
        "End mill 12, 4 teeth lies in drawer 1 no. 1, not in drawer 2 no. 7, where face mill 50 mm, 4 teeth, carbide lies."
    )
    assert look("end mill 12, 4 teeth, drawer 1 no. 2").sentence == (
        "End mill 12 mm (drawer 1 no. 2) is not there now: at the grinder; another one lies in drawer 1 no. 1."
    )


def test_the_same_tool_is_asked_once_with_all_its_steps():
    needs = [one for one in needs_of(plate()) if one.name == "face mill"]
    assert [one.operations for one in needs] == [("face-rough", "face-finish")]


def asked(kind, **texts):
    return [(one.section, one.words, one.name) for one in step_asks(step(kind, **texts), "mm")]


def test_a_step_asks_for_its_cutter_its_holder_and_what_it_fetches_in_that_order():
    held = asked("drill", cutter="drill 5, in a drill chuck", at="10, 10", depth="5", feed="0.1")
    assert held == [
        ("drills", "drill 5, in a drill chuck", "drill"),
        ("holders", "drill chuck", "drill chuck"),
    ]
    plain = asked("drill", cutter="drill 5", at="10, 10", depth="5", feed="0.1")
    assert plain == [("drills", "drill 5", "drill")]


def test_a_bench_step_asks_for_what_it_fetches_and_not_for_what_it_is_called():
    assert asked("bench-step", what="File, micrometer 0-25", with_what="two 6 mm parallels; micrometer 0-25, file") == [
        ("parallels", "parallels 6 mm thick", "parallels"), ("gauges", "micrometer 0-25", "micrometer"), ("bench", "file", "file"),
    ]  # fmt: skip
    assert asked("bench-step", what="File, micrometer 0-25") == []


@pytest.mark.parametrize("text", ["", " ", ";", ", ", "."])
def test_of_nothing_nothing_is_asked(text):
    assert words_ask(text, "mm") == ()


def test_words_are_parted_where_a_list_is_parted():
    names = [one.name for one in words_ask("file, scriber; small square and Tap wrench 180 mm.", "mm")]
    assert names == ["file", "scriber", "small square", "tap wrench"]


def test_sizes_of_words_in_metres():
    (wrench,) = words_ask("the tap wrench 7 in", "in")
    assert (wrench.section, wrench.size) == ("wrenches", pytest.approx(0.1778))
    (gauge,) = words_ask("micrometer 25-50", "mm")
    assert (gauge.low, gauge.high, gauge.plain) == (pytest.approx(0.025), pytest.approx(0.05), False)
    (plain,) = words_ask("micrometer", "mm")
    assert plain.plain


@pytest.mark.parametrize(
    "typed", ["6 mm parallels", "parallels 6 mm", "parallels 6 mm thick", "two parallels 6 thick"]
)
def test_parallels_of_a_thickness_are_asked_for_by_it_whichever_way_round(typed):
    """What the program itself calls them (`parallels 6 mm thick`) is not any parallels."""
    (need,) = words_ask(typed, "mm")
    assert (need.section, need.plain, need.size) == ("parallels", False, pytest.approx(0.006))
    assert need.words.startswith("parallels 6")


@pytest.mark.parametrize("typed", ["parallels", "parallels as needed", "parallels 6 x 20 x 100 mm"])
def test_parallels_without_a_thickness_alone_are_any(typed):
    (need,) = words_ask(typed, "mm")
    assert need.plain


@pytest.mark.parametrize(
    ("typed", "spelled"),
    [
        ("parallels, micrometer 0-50", "parallels, micrometer 0-50 mm"),
        ("micrometer 0 to 25 and file.", "micrometer 0 to 25 mm and file."),
        ("plug gauge 16 H7; 10 parallels", "plug gauge 16 mm H7; 10 mm parallels"),
        ("tap wrench 280, 80 mm vice on the table", "tap wrench 280 mm, 80 mm vice on the table"),
        # What has its unit keeps it, and what is no size gets none.
        ("micrometer 25-50 mm, calliper 6 in", "micrometer 25-50 mm, calliper 6 in"),
        ("number 3 file, thread gauge M8, 2 clamps", "number 3 file, thread gauge M8, 2 clamps"),
        ("parallels 6 thick, file", "parallels 6 mm thick, file"),
        ("", ""),
    ],
)
def test_a_list_of_things_to_fetch_asks_for_the_same_with_its_units_written(typed, spelled):
    assert sizes_with_units(typed, "mm") == spelled
    sizes = [(need.size, need.low, need.high) for need in words_ask(typed, "mm")]
    assert [(need.size, need.low, need.high) for need in words_ask(spelled, "in")] == sizes
