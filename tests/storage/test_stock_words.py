"""What the words of an old stock say of its surface and shape."""

from __future__ import annotations

import pytest

from jobsheet.model.stock import FACES
from jobsheet.storage.words.stock_words import (
    beyond_surfaces,
    faces_in,
    said_by,
    with_what_words_say,
    without_fact,
)
from tests.stock.stock_lines import stock


def test_what_became_no_fact_is_named():
    assert said_by("bright flat, sharp edges, ends sawn; from the rack").left == (
        "sharp edges",
        "from the rack",
    )


def test_words_that_no_rule_reads_are_told_where_facts_came_from_words():
    found = stock("length: 80; width: 50; height: 12; condition: bright flat, from the rack, sharp edges")
    assert without_fact(found) == ("from the rack",)
    said = stock("length: 80; width: 50; height: 12; condition: from the rack; surfaces: bright")
    assert without_fact(said) == ()


@pytest.mark.parametrize(
    ("condition", "left"),
    [
        ("flat, ends filed", "flat"), ("flat, both ends are faced", "flat"), ("black hot-rolled flat", "black hot-rolled flat"),
        ("from the rack", "from the rack"), ("bright", ""), ("ends milled", ""),
    ],
)  # fmt: skip
def test_beside_surfaces_a_title_says_them_once(condition, left):
    assert beyond_surfaces(condition) == left


@pytest.mark.parametrize(
    ("condition", "surfaces"),
    [
        ("", ""), ("sawn", "ends sawn"), ("sawn bright bar", "bright, ends sawn"), ("hot-rolled square bar, sawn", "black, ends sawn"),
        ("sawn all over", "sawn"), ("rough", "sawn"), ("casting, sawn", "cast"), ("bright, ends milled, sawn", "bright, ends finished"),
        ("sheared", "edges sheared"), ("bright sheet, sheared", "bright, edges sheared"),
        ("sawn, sheared", "edges sheared, ends sawn"), ("sheared, sawn", "edges sheared, ends sawn"),
        ("black, top milled", "black, top finished"), ("bright, top cold-drawn", "bright"),
    ],
)  # fmt: skip
def test_one_surface_of_all_faces_and_the_others_beside_it(condition, surfaces):
    """A saw that is named with no face cuts off, so its ends are sawn; a guillotine leaves edges, said before the ends."""
    assert said_by(condition).surfaces == surfaces


@pytest.mark.parametrize(
    ("condition", "surfaces"),
    [
        ("bright, sawn all over", "sawn"), ("sawn all over, bright", "sawn"), ("bright bar sawn all over", "sawn"),
        ("black plate, sawn on all sides", "sawn"), ("casting, cut off all faces", "sawn"), ("black, milled all over", "finished"),
        ("bright, ground all over", "finished"), ("bright, sawn all over, top milled", "sawn, top finished"),
        ("black all over, sawn", "black, ends sawn"), ("bright, ends sawn", "bright, ends sawn"), ("black, rough all over", "black"),
        ("hot-rolled plate, sawn all round", "black, edges sawn"), ("sawn all round", "sawn"),
    ],
)  # fmt: skip
def test_what_is_said_of_all_faces_leaves_none_as_it_was_rolled(condition, surfaces):
    """Sawn all over is sawn on top too, whatever the bar was; plate sawn all round keeps its skin above and below."""
    assert said_by(condition).surfaces == surfaces


def test_a_square_bar_that_is_sawn_all_round_is_not_round():
    box = "length: 80; width: 40; height: 40; condition"
    assert with_what_words_say(stock(f"{box}: black bar, sawn all round")).shape == "box"
    assert with_what_words_say(stock(f"{box}: round bar, sawn all round")).shape == "round bar"


@pytest.mark.parametrize(
    ("one", "other", "left"),
    [
        ("bright", "ground", "bright"), ("black", "milled", "finished"), ("pickled", "ground", "pickled"), ("black", "pickled", "pickled"),
        ("bright", "casting", "cast"), ("casting", "milled", "finished"), ("milled", "bright", "finished"),
    ],
)  # fmt: skip
def test_of_two_said_of_all_faces_what_takes_a_skin_off_counts(one, other, left):
    assert said_by(f"{one}, {other}").surfaces == left


def test_round_and_relieved_are_said_by_whole_words():
    for words, is_round, relieved in (
        ("⌀ 30", True, False), ("Ø30 bright", True, False), ("shaft", True, False), ("ground", False, False),
        ("annealed", False, True), ("Stress-relieved flat", False, True), ("round bar, normalised", True, True),
    ):  # fmt: skip
        found = said_by(words)
        assert (found.round, found.relieved) == (is_round, relieved), words


@pytest.mark.parametrize(
    ("text", "faces"),
    [
        ("", None), ("nothing to see", None), ("underside", ("bottom",)), ("the top one stays, and both ends", ("top", "ends")), ("left end", ("left",)), ("both ends, all faces", tuple(FACES)),
        ("both ends", ("ends",)), ("rear and left", ("left", "rear")), ("all round", tuple(FACES)), ("leftover", None),
    ],
)  # fmt: skip
def test_faces_that_free_words_name(text, faces):
    found = faces_in(text)
    assert (None if found is None else found.items) == faces
