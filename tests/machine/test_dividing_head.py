"""Dividing against the charts of machinists' handbooks (from memory: worm 40 to 1,
plates 15 to 49) and sums by hand.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.catalog.trade.dividing_plates import plates
from jobsheet.errors import CalcError, QuantityError
from jobsheet.machine.dividing_head import angle_text, divide, on_table, places, read_angle, settings

CIRCLES = tuple(holes for plate in plates() for holes in plate.circles)


@pytest.mark.parametrize(
    ("count", "whole", "holes", "circle"),
    [
        # Rows of the usual index chart for 40 to 1.
        (3, 13, 13, 39),
        (6, 6, 26, 39),
        (7, 5, 35, 49),
        (7, 5, 15, 21),
        (9, 4, 12, 27),
        (11, 3, 21, 33),
        (12, 3, 6, 18),
        (12, 3, 13, 39),
        (13, 3, 3, 39),
        (14, 2, 42, 49),
        (16, 2, 10, 20),
        (17, 2, 6, 17),
        (18, 2, 6, 27),
        (19, 2, 2, 19),
        (22, 1, 27, 33),
        (24, 1, 26, 39),
        (28, 1, 21, 49),
        (36, 1, 3, 27),
        (37, 1, 3, 37),
        (48, 0, 15, 18),
        (60, 0, 26, 39),
        (64, 0, 10, 16),
        (72, 0, 15, 27),
        (100, 0, 8, 20),
    ],
)
def test_rows_of_the_index_chart(count, whole, holes, circle):
    found = divide(40, CIRCLES, count=count)
    assert all(way.exact for way in found.ways)
    assert (whole, holes, circle) in [(way.whole, way.holes, way.circle) for way in found.ways]


@pytest.mark.parametrize("count", [1, 2, 4, 5, 8, 10, 20, 40])
def test_whole_turns_need_no_plate(count):
    assert divide(40, CIRCLES, count=count).turns.words == f"{40 // count} turn{'s' if count < 40 else ''}"


def test_the_largest_circle_comes_first_and_says_it_in_words():
    assert divide(40, CIRCLES, count=7).turns.words == "5 turns and 35 holes on 49"
    assert divide(40, CIRCLES, count=48).turns.words.startswith("15 holes on 18")


@pytest.mark.parametrize("count", [51, 53, 57, 59, 61, 63, 67, 69, 71, 73, 77, 79, 127])
def test_what_the_plain_plates_cannot_divide_is_said_with_its_error(count):
    """Above 50 the usual plates miss these counts: handbooks send them to differential indexing."""
    found = divide(40, CIRCLES, count=count)
    assert not found.turns.exact
    # A hole of the finest circle is 360/(40 × 49) degrees of the work; the nearest is within half of one.
    assert abs(found.turns.error) <= Fraction(360, 40 * 49 * 2)
    assert found.sum_of_errors == abs(found.turns.error) * count


def test_an_angle_on_a_table_of_ninety():
    """12° 30' at 4° a turn: 3 turns and 0.5° = 30 minutes; on a circle of 16 that is 2 holes."""
    assert divide(90, CIRCLES, angle=read_angle("12° 30'")).turns.words == "3 turns and 2 holes on 16"
    found = on_table(read_angle("12°30′"), 90, Fraction(2, 60))
    assert (found.turns, found.degrees, found.minutes, found.line, found.error) == (3, 0, 30, 15, 0)


def test_a_seventh_on_a_rotary_table_of_sixty():
    """51° 25' 42.9\" at 6° a turn: 8 turns and 3° 25' 42.9\"; in lines of 5'
    the nearest is 41, 42.9 s short.
    """
    found = on_table(Fraction(360, 7), 60, Fraction(5, 60))
    assert (found.turns, found.degrees, found.line) == (8, 3, 41)
    assert float(found.minutes) == pytest.approx(25.714, abs=1e-3)
    assert float(found.error) * 3600 == pytest.approx(-42.857, abs=1e-3)


def test_a_line_on_the_next_turn():
    found = on_table(Fraction(3999, 1000), 90, Fraction(5, 60))
    assert (found.turns, found.line_turns, found.line) == (0, 1, 0)


@pytest.mark.parametrize(
    ("text", "degrees"),
    [
        ("45", 45),
        ("12.5°", Fraction(25, 2)),
        ("12° 30'", Fraction(25, 2)),
        ("10'", Fraction(1, 6)),
        ("0° 0' 30\"", Fraction(1, 120)),
        ("51,43", Fraction(5143, 100)),
        ("7 deg", 7),
        ("360", 360),
    ],
)
def test_angles_as_they_are_written(text, degrees):
    assert read_angle(text) == degrees


@pytest.mark.parametrize("text", ["", "x", "0", "361", "-5", "1 2", "°", "5'' 3'", "9" * 50])
def test_what_is_no_angle(text):
    with pytest.raises(QuantityError):
        read_angle(text)


def test_words_of_an_angle():
    assert angle_text(Fraction(360, 7)) == "51° 25′ 43″"
    assert angle_text(Fraction(25, 2)) == "12° 30′"
    assert angle_text(Fraction(9)) == "9°"


@pytest.mark.parametrize(
    "wrong",
    [
        {"count": 0},
        {"count": 3, "angle": Fraction(1)},
        {},
        {"angle": Fraction(0)},
        {"angle": Fraction(-1)},
    ],
)
def test_a_division_that_has_no_meaning(wrong):
    with pytest.raises(CalcError):
        divide(40, CIRCLES, **wrong)


def test_no_circles_or_no_worm():
    with pytest.raises(CalcError):
        divide(40, (), count=7)
    with pytest.raises(CalcError):
        divide(0, CIRCLES, count=7)
    with pytest.raises(CalcError):
        places(divide(40, CIRCLES, angle=Fraction(7)))


@given(
    st.integers(1, 400),
    st.sampled_from([40, 60, 90, 72, 5]),
    st.lists(st.integers(15, 66), min_size=1, max_size=8),
)
def test_turns_lead_back_to_the_angle(count, ratio, circles):
    found = divide(ratio, tuple(circles), count=count)
    for way in found.ways:
        turned = (way.whole + Fraction(way.holes, way.circle)) / ratio * 360
        assert turned - found.angle == way.error
        assert 0 <= way.holes < way.circle
    last = places(found)
    assert len(last) == count
    # Counted from the zero no error adds up: the last step is the whole turn, and exact.
    assert (last[-1].whole, last[-1].holes, last[-1].error) == (ratio, 0, 0)
    assert max(abs(one.error) for one in last) <= Fraction(360, ratio * last[0].circle * 2)


@given(st.fractions(0, 360), st.sampled_from([40, 60, 90]), st.sampled_from([1, 2, 5, 10, 7]))
def test_a_table_s_reading_leads_back_to_the_angle(angle, ratio, minutes):
    found = on_table(angle, ratio, Fraction(minutes, 60))
    a_turn = Fraction(360, ratio)
    assert found.turns * a_turn + found.degrees + found.minutes / 60 == angle
    assert found.line_turns * a_turn + found.line * Fraction(minutes, 60) - angle == found.error
    assert abs(found.error) <= Fraction(minutes, 120)


def test_places_of_a_pitch_circle_of_six_on_forty_to_one():
    """The usual chart: 6 holes are 6 turns and 26 holes on 39 each; counted
    from the zero the turns add up.
    """
    found = settings(tuple(Fraction(60 * n) for n in range(6)), 40, CIRCLES)
    assert [way.words for way in found] == [
        "0 turns", "6 turns and 26 holes on 39", "13 turns and 13 holes on 39", "20 turns", "26 turns and 26 holes on 39",
        "33 turns and 13 holes on 39",
    ]  # fmt: skip
    assert all(way.exact for way in found)


@given(st.lists(st.fractions(0, 359, max_denominator=3600), min_size=1, max_size=8), st.sampled_from([40, 60, 90]), st.lists(st.integers(15, 66), min_size=1, max_size=8))  # fmt: skip
def test_all_angles_stand_on_one_circle_and_none_is_nearer(angles, ratio, circles):
    found = settings(tuple(angles), ratio, tuple(circles))
    assert len({way.circle for way in found}) == 1
    for angle, way in zip(angles, found, strict=True):
        turned = (way.whole + Fraction(way.holes, way.circle)) / ratio * 360
        assert turned - angle == way.error
        assert abs(way.error) <= Fraction(360, ratio * way.circle * 2)
    worst = max(abs(way.error) for way in found)
    for circle in circles:
        alone = settings(tuple(angles), ratio, (circle,))
        assert max(abs(way.error) for way in alone) >= worst


@given(st.integers(2, 60), st.sampled_from([40, 60, 90]))
def test_equal_steps_are_the_division(count, ratio):
    """The places of a circle are those of `divide COUNT`, wherever the division is exact."""
    division = divide(ratio, CIRCLES, count=count)
    found = settings(tuple(division.angle * n for n in range(count)), ratio, CIRCLES)
    if division.turns.exact:
        assert all(way.exact for way in found)
        assert [way.holes * 1000 // way.circle for way in found[1:]] == [
            way.holes * 1000 // way.circle for way in places(division)[:-1]
        ]


@pytest.mark.parametrize(
    "wrong",
    [((Fraction(-1),), 40, (39,)), ((Fraction(1),), 0, (39,)), ((Fraction(1),), 40, ()), ((), 40, (0,))],
)
def test_a_setting_that_has_no_meaning(wrong):
    with pytest.raises(CalcError):
        settings(*wrong)
