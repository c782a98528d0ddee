"""Dial readings against the tables of the scenario (sections 3b, 5, 6, 7 and 9),
and back again for every handle.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.errors import CalcError
from jobsheet.machine.dial_readings import (
    approach_words,
    back_off,
    centre_for_wall,
    error_text,
    length,
    position,
    running,
    stop,
    wall_at,
    walls_warning,
)
from jobsheet.machine.handles import last_line, scale_text
from jobsheet.model.machine import Handle
from jobsheet.storage.card_files import card_names, find_card

INCH = 25.4e-3
HANDLES = [handle for name in card_names() for handle in find_card(name).handles]
#: A real dial whose lines do not come out even: 1/16 in a turn, 62.5 lines.
SIXTEENTH = Handle(name="x", travel=INCH / 16, line=INCH / 1000, dial="in")


def knee(name="x"):
    return find_card("knee-mill-k-2").handle(name)


@pytest.mark.parametrize(
    ("axis", "millimetres", "dial", "line", "error"),
    [
        # HM-102, section 5: the table of positions on K-2.
        ("x", 10, "1 + .1937", "line 194", "+0.008"),
        ("x", 90, "17 + .1433", "line 143", "−0.008"),
        ("y", 10, "1 + .1937", "line 194", "+0.008"),
        ("y", 50, "9 + .1685", "line 169", "+0.013"),
        ("x", 25, "4 + .1843", "line 184", "−0.006"),
        ("x", 75, "14 + .1528", "line 153", "+0.006"),
        ("y", 30, "5 + .1811", "line 181", "−0.003"),
        ("y", 29.5, "5 + .1614", "line 161", "−0.011"),
        ("y", 30.5, "6 + .0008", "line 1", "+0.005"),
        # HM-103, section 6.
        ("x", 15, "2 + .1906", "line 191", "+0.011"),
        ("y", 12, "2 + .0724", "line 72", "−0.011"),
        ("y", 38, "7 + .0961", "line 96", "−0.002"),
        ("x", 40, "7 + .1748", "line 175", "+0.005"),
        ("y", 22, "4 + .0661", "line 66", "−0.004"),
        # HM-104, section 7.
        ("x", 8, "1 + .1150", "line 115", "+0.001"),
        ("x", 112, "22 + .0094", "line 9", "−0.011"),
        ("y", 72, "14 + .0346", "line 35", "+0.009"),
        ("x", 80, "15 + .1496", "line 150", "+0.010"),
    ],
)
def test_the_tables_of_the_scenario(axis, millimetres, dial, line, error):
    found = stop(knee(axis), millimetres * 1e-3)
    assert (found.dial, found.line, error_text(found.error)) == (dial, line, error)


def test_the_line_of_section_9():
    found = stop(knee("y"), 30.5e-3)
    assert (found.reading.line_turns, found.reading.line) == (6, 1)
    assert found.error * 1e3 == pytest.approx(0.0054, abs=5e-5)


def test_a_line_on_the_next_turn_names_its_turn():
    """A reading of 199.6 thou stops at nought of the next turn."""
    found = stop(knee(), (5 * 200 + 199.6) * 1e-3 * INCH)
    assert found.line == "6 turns, line 0"
    assert found.dial == "5 + .1996"


def test_the_slot_from_its_lines():
    """Section 9: 161 and 1 (next turn), 9 mm cutter: 10.016 mm."""
    handle = knee("y")
    front = stop(handle, centre_for_wall(25e-3, 9e-3, "low"))
    rear = stop(handle, centre_for_wall(35e-3, 9e-3, "high"))
    assert (front.distance, rear.distance) == (pytest.approx(29.5e-3), pytest.approx(30.5e-3))
    assert (rear.place - front.place + 9e-3) * 1e3 == pytest.approx(10.016, abs=5e-4)
    assert (
        walls_warning(handle, rear, front)
        == "its two walls fall on different turns, 5 and 6: count them aloud"
    )
    assert rear.warning.startswith("at whole turn 6")


def test_walls_of_the_window_of_hm_104():
    """Section 7: X 35 = 40 − 5, 85 = 80 + 5 with a 10 mm cutter."""
    assert wall_at(40e-3, 10e-3, "low") == pytest.approx(35e-3)
    assert wall_at(80e-3, 10e-3, "high") == pytest.approx(85e-3)
    # Walls that are turns apart are on different turns anyway: no word.
    assert walls_warning(knee(), stop(knee(), 40e-3), stop(knee(), 80e-3)) == ""
    with pytest.raises(CalcError, match="low or high"):
        wall_at(0.0, 10e-3, "left")


def test_nearly_on_a_whole_turn_is_said():
    """Section 7: 112 mm = 22 turns + .0094, the easiest place to lose one."""
    assert stop(knee(), 112e-3).warning == "nearly on whole turn 22: an easy place to lose one"
    assert stop(knee(), 40e-3).warning == ""
    assert stop(knee(), 0.0).warning == ""
    assert stop(knee(), 198 * 1e-3 * INCH).warning.startswith("at whole turn 1")
    assert stop(find_card("bench-mill-b-1").handle("x"), 10e-3).warning.startswith("on whole turn 4")


def test_back_off_is_half_a_turn_and_twice_the_backlash_at_least():
    """Section 5: back off at least 0.015 in; half a turn is easy."""
    found = back_off(knee("y"))
    assert found.distance == pytest.approx(0.1 * INCH)
    assert found.least == pytest.approx(2 * 0.015 * INCH)
    assert "0.015 in" in approach_words(knee("y"), reverses=True)
    worn = Handle(name="x", travel=2.5e-3, line=0.02e-3, dial="mm", backlash=1e-3)
    assert back_off(worn).distance == pytest.approx(2e-3)
    assert back_off(worn).words == "0.8 turns"
    assert length(worn, 1e-3) == "1 mm"


def test_a_running_total_counts_every_pass_from_the_zero():
    """3 mm in three passes on a knee of 0.100 in: 0.11811 in in all = 1 + .0181, line 18."""
    found = running(knee("knee"), (1e-3, 1e-3, 1e-3), "3")
    assert [one.dial for one in found] == ["0 + .0394", "0 + .0787", "1 + .0181"]
    assert [one.drawing for one in found] == ["", "", "3"]
    # Rounding each pass by itself would end two thou off.
    assert sum(round(0.0394 * 1000) for _ in range(3)) == 117
    assert found[-1].reading.line_turns * 100 + found[-1].reading.line == 118


def test_below_zero_the_dial_counts_the_same_way():
    found = stop(knee(), -0.5e-3)
    assert found.dial == "−1 + .1803"
    assert found.reading.line_turns == -1


def test_a_dial_of_sixty_two_and_a_half_lines():
    """1/16 in a turn: the tenth turn begins at 0.625 in; nought is nearer to
    0.6248 than line 62 of the turn before.
    """
    assert last_line(SIXTEENTH) == 62
    found = stop(SIXTEENTH, 0.6248 * INCH)
    assert (found.reading.line_turns, found.reading.line) == (10, 0)
    assert found.error == pytest.approx(0.0002 * INCH)
    assert stop(SIXTEENTH, 0.6262 * INCH).line == "line 1"


@given(st.sampled_from([*HANDLES, SIXTEENTH]), st.floats(min_value=-0.5, max_value=1.5))
def test_a_reading_leads_back_to_its_place(handle, distance):
    found = stop(handle, distance)
    read = found.reading
    assert position(handle, read.turns, read.dial) == pytest.approx(distance, abs=1e-9)
    assert 0 <= read.dial <= handle.travel * (1 + 1e-6)
    assert position(handle, read.line_turns, read.line * handle.line) == pytest.approx(found.place, abs=1e-12)
    assert abs(found.error) <= handle.line / 2 + 1e-9


@given(st.sampled_from(HANDLES), st.integers(-20, 200), st.data())
def test_a_line_reads_as_itself(handle, turns, data):
    line = data.draw(st.integers(0, last_line(handle)))
    found = stop(handle, position(handle, turns, line * handle.line))
    assert (found.reading.line_turns, found.reading.line) == (turns, line)
    assert found.error == pytest.approx(0, abs=1e-12)


def _handle(travel, lines):
    return Handle(name="x", travel=travel, line=travel / lines, dial="mm", backlash=travel / 40)


@given(st.floats(0.5e-3, 6e-3), st.integers(10, 400), st.integers(-500, 500))
def test_any_handle_reads_its_own_lines_exactly(travel, lines, count):
    """Lines from the zero, both ways: their turns and line lead back to the place, and nothing is off."""
    handle = _handle(travel, lines)
    found = stop(handle, count * handle.line)
    turns, line = divmod(count, lines)
    assert (found.reading.line_turns, found.reading.line) == (turns, line)
    assert found.place == pytest.approx(count * handle.line, abs=1e-12)
    assert found.error == pytest.approx(0, abs=1e-12)


@given(st.sampled_from([*HANDLES, SIXTEENTH]), st.floats(-0.3, 0.3), st.integers(-50, 50))
def test_a_whole_turn_more_reads_the_same_line(handle, distance, turns):
    """The dial knows no turns: what lies whole turns away shows the same, and
    differs by those turns alone.
    """
    one, other = stop(handle, distance), stop(handle, distance + turns * handle.travel)
    there = position(handle, other.reading.turns, other.reading.dial) - position(
        handle, one.reading.turns, one.reading.dial
    )
    assert there == pytest.approx(turns * handle.travel, abs=1e-9)


@given(st.sampled_from(HANDLES), st.floats(0.001, 0.3))
def test_counted_the_other_way_the_place_is_mirrored(handle, distance):
    """X that counts left is the same size from the zero: wound the other way it is as far below nought."""
    up, down = stop(handle, distance), stop(handle, -distance)
    assert position(handle, down.reading.turns, down.reading.dial) == pytest.approx(
        -position(handle, up.reading.turns, up.reading.dial), abs=1e-9
    )
    assert down.reading.turns < 0
    assert abs(abs(down.place) - distance) <= handle.line / 2 + 1e-9
    assert 0 <= down.reading.dial <= handle.travel * (1 + 1e-6)


@given(st.sampled_from(HANDLES))
def test_backing_off_takes_up_twice_the_slack_of_every_handle(handle):
    found = back_off(handle)
    assert found.distance >= found.least
    assert found.distance >= handle.travel / 2 - 1e-12
    if handle.backlash:
        assert found.least == pytest.approx(2 * handle.backlash)


def test_a_sixteenth_is_printed_whole():
    """1/16 in is 0.0625 in; a rounded 0.062 would lose a turn in 125."""
    assert scale_text(SIXTEENTH) == "0.0625 in a turn, lines of 0.001 in"
    half_thou = Handle(name="x", travel=INCH / 10, line=INCH / 2000, dial="in", backlash=0.0125 * INCH)
    assert scale_text(half_thou) == "0.100 in a turn, lines of 0.0005 in"
    assert "the backlash is 0.0125 in" in approach_words(half_thou)


def test_passes_go_on_from_where_the_handle_stands():
    found = running(knee(), (1e-3, 1e-3), start=5.08e-3)
    assert [one.dial for one in found] == ["1 + .0394", "1 + .0787"]
