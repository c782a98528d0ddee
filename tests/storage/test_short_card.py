"""The shortest way to a card: what is answered stands in the card, and of another
kind of drive nothing stays behind.
"""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.card_steps import begin, classes
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.short_card import DRIVES, answer, answered, changed, questions


def machine(paper):
    return machine_from_text(paper_text(paper), "card.yaml", "card")


@pytest.mark.parametrize("like", classes())
@pytest.mark.parametrize("change", DRIVES)
@pytest.mark.parametrize("count", [1, 2, 3])
@pytest.mark.parametrize("before", DRIVES)
def test_any_way_of_changing_speeds_gives_a_card_that_can_be_used(like, change, count, before):
    paper = changed(changed(begin(like), before, 2), change, count)
    made = machine(paper)
    assert len(made.spindle.ranges) == count
    for one in made.spindle.ranges:
        assert bool(one.steps) is DRIVES[change].stepped
        assert (one.lowest is None) is DRIVES[change].stepped
        assert (one.base is not None) is (change == "electronic")
    assert [one for one in paper_text(paper).split("\n") if "back gear" in one or "induction" in one] == [
        f"  drive: {DRIVES[change].words}"
    ] * (change != "electronic")


def test_belts_are_typed_as_a_line_of_the_chart():
    paper = answered(changed(begin("bench-mill"), "step belt"), "speeds 0", "1600 250, 480,820")
    (only,) = machine(paper).spindle.ranges
    assert [round(one.speed * 60, 6) for one in only.steps] == [250, 480, 820, 1600]
    assert [one.position for one in only.steps] == ["belts 1", "belts 2", "belts 3", "belts 4"]
    assert answer(paper, "speeds 0") == "250, 480, 820, 1600"


def test_a_turn_and_the_lines_of_a_dial_give_one_line():
    paper = begin("bench-mill")
    for name, text in (("dial", "mm"), ("turn table", "2 mm"), ("lines table", "80")):
        paper = answered(paper, name, text)
    x, y, _ = machine(paper).handles
    assert [one.line for one in (x, y)] == pytest.approx([25e-6, 25e-6])
    assert answer(paper, "lines table") == "80"
    inch = paper
    for name, text in (("dial", "in"), ("turn table", "0.1 in"), ("lines table", "100")):
        inch = answered(inch, name, text)
    assert machine(inch).handles[0].line == pytest.approx(25.4e-6)


@pytest.mark.parametrize(("dial", "metres"), [("mm", 1e-3), ("in", 25.4e-3)])
def test_a_bare_number_means_what_the_box_says(dial, metres):
    paper = answered(begin("bench-mill"), "dial", dial)
    for name, text in (
        ("turn table", "0.5"),
        ("lines table", "100"),
        ("x", "14"),
        ("opening", "4"),
        ("power", "600"),
        ("greatest", "12.5"),
    ):
        paper = answered(paper, name, text)
    assert f"a turn: 0.5 {dial}" in paper_text(paper)
    assert f"x: 14 {dial}" in paper_text(paper)
    assert f"opening: 4 {dial}" in paper_text(paper)
    assert "power: 600 W, plate" in paper_text(paper)
    paper = answered(paper, "jaw width", "80 mm")
    if dial == "mm":
        paper = answered(answered(paper, "opening", "40"), "greatest", "400")
    turn = machine(paper).handles[0]
    assert turn.travel == pytest.approx(0.5 * metres)
    assert turn.line == pytest.approx(0.005 * metres)


def test_what_is_answered_is_no_longer_assumed():
    paper = begin("bench-mill")
    for name, text in (
        ("speeds 0", "200 400"),
        ("lines table", "100"),
        ("x", "300 mm"),
        ("opening", "75 mm"),
        ("power", "600 W"),
    ):
        paper = answered(paper, name, text)
    text = paper_text(paper)
    assert "assumed: backlash; lever\n" in text
    assert "power: 600 W, plate" in text


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("speeds 0", "200, fast"),
        ("speeds 0", ""),
        ("speeds 0", "-5"),
        ("power", "much"),
        ("lines table", "0"),
    ],
)
def test_what_cannot_be_read_is_refused_with_its_place(name, text):
    with pytest.raises(QuantityError) as refused:
        answered(begin("bench-mill"), name, text)
    assert str(refused.value).endswith(".")


def test_every_question_of_every_drive_has_its_answer():
    for change in DRIVES:
        paper = changed(begin("turret-and-knee-mill"), change, 2)
        for one in questions(paper):
            assert answer(paper, one.name), (change, one.name)
    assert LAYOUT
