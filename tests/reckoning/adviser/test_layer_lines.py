"""Numbers as they are typed and lines as they stand on a dial, against exact
fractions and lists of every line.
"""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from msgspec.structs import replace

from jobsheet.reckoning.adviser.layer_lines import dial_units, evenly, layer_text, length_text, on_a_line
from jobsheet.reckoning.adviser.milling_cut import feed_text, part_text
from jobsheet.storage.card_files import find_card
from tests.reckoning.steps import around

INCH = 25.4e-3
UNIT = {"mm": 1e-3, "in": INCH}
MM, THOU = 1e-3, 25.4e-6


def number_of(text):
    """The number and the unit that a text names."""
    number, unit = text.split()
    return Fraction(number), unit


class TestFeed:
    """Two digits, three behind a leading one (so that the last is worth 5 % at
    most), cut off and never rounded up.
    """

    @pytest.mark.parametrize(
        ("feed", "units", "text"),
        [
            (0.0349e-3, "mm", "0.034 mm"), (0.05e-3, "mm", "0.050 mm"), (0.0999e-3, "mm", "0.099 mm"),
            (0.1e-3, "mm", "0.10 mm"), (0.12789e-3, "mm", "0.127 mm"), (0.2e-3, "mm", "0.20 mm"),
            (0.0508e-3, "in", "0.0020 in"), (0.039e-3, "in", "0.00153 in"), (1.2789e-3, "mm", "1.27 mm"),
        ],
    )  # fmt: skip
    def test_it_is_cut_off(self, feed, units, text):
        value, found = feed_text(feed, units)
        assert found == text
        assert value == pytest.approx(float(number_of(text)[0]) * UNIT[units], rel=1e-12)

    @pytest.mark.parametrize(
        ("feed", "units", "text"),
        [
            (0.0341e-3, "mm", "0.035 mm"), (0.034e-3, "mm", "0.034 mm"), (0.0991e-3, "mm", "0.10 mm"),
            (0.2e-3, "mm", "0.20 mm"), (2.01 * THOU, "in", "0.0021 in"), (3.45e-3, "mm", "3.5 mm"),
            (0.1234e-3, "mm", "0.124 mm"), (0.1999e-3, "mm", "0.20 mm"), (1.234 * THOU, "in", "0.00124 in"), (0.0199e-3, "mm", "0.0199 mm"),
        ],
    )  # fmt: skip
    def test_up_it_is_the_next_that_is_not_less(self, feed, units, text):
        assert feed_text(feed, units, up=True)[1] == text

    @pytest.mark.parametrize("units", ["mm", "in"])
    @pytest.mark.parametrize("number", [10 ** (place / 9 - 3.1) for place in range(28)])
    def test_the_value_is_the_text_and_lies_on_its_side(self, number, units):
        feed = number * UNIT[units]
        for up in (False, True):
            value, text = feed_text(feed, units, up=up)
            assert value == pytest.approx(float(number_of(text)[0]) * UNIT[units], rel=1e-12)
            assert number_of(text)[1] == units
            if up:
                assert feed * (1 - 1e-8) <= value <= feed * (1 + 0.05 + 1e-8)
            else:
                assert feed * 0.949 <= value <= feed * (1 + 1e-8)


class TestPart:
    """As few decimals as make just so many parts, none of them 4 % wider than an equal one."""

    @staticmethod
    def wanted(total, count):
        """The shortest decimal of that kind, by exact fractions."""
        each = total / count
        for decimals in (1, 2, 3, 4, 6):
            up = Fraction(math.ceil(each * 10**decimals), 10**decimals)
            if math.ceil(total / up) == count and up <= each * Fraction(104, 100):
                return up
        return None

    @pytest.mark.parametrize("units", ["mm", "in"])
    @pytest.mark.parametrize(
        ("total", "count"),
        [
            ("10", 1), ("10", 2), ("10", 3), ("10", 7), ("10", 8), ("3", 7), ("0.5", 3), ("12.7", 4), ("50", 11), ("0.3", 1),
            ("1", 12), ("0.04", 3), ("25", 24), ("7.3", 6), ("40", 64), ("0.1", 1), ("2.08", 2), ("1.04", 1),
            # 0.301 each: 0.31 is 3 % wider, but would make 63 of them.
            ("19.264", 64),
        ],
    )  # fmt: skip
    def test_against_fractions(self, total, count, units):
        found, unit = number_of(part_text(float(total) * UNIT[units], count, units))
        assert unit == units
        assert found == self.wanted(Fraction(total), count)

    @pytest.mark.parametrize(
        ("total", "count", "text"),
        [
            (10 * MM, 3, "3.4 mm"), (10 * MM, 2, "5 mm"), (1 * MM, 3, "0.34 mm"), (0.05 * MM, 3, "0.017 mm"),
            (1 * MM, 6, "0.17 mm"), (INCH, 3, "0.34 in"),
            # 0.1 mm less than an equal part of 1.04: one decimal is 1.1, which is 5.8 % wider.
            (1.04 * MM, 1, "1.04 mm"),
        ],
    )  # fmt: skip
    def test_by_hand(self, total, count, text):
        assert part_text(total, count, text.split()[1]) == text


def dialled(travel, line, dial="mm", name="knee"):
    """A setting whose depth is set by such a handle."""
    card = find_card("bench-mill-b-1")
    x, y, head = card.handles
    return replace(
        around("bench-mill-b-1"),
        machine=replace(card, handles=(x, y, replace(head, name=name, travel=travel, line=line, dial=dial))),
    )


def undialled(units="mm"):
    card = find_card("bench-mill-b-1")
    return replace(around("bench-mill-b-1"), machine=replace(card, handles=card.handles[:2]), units=units)


#: Travel and line: even, of an inch, and one whose lines do not come out even in
#: a turn (62.5 of 1 thou in 1/16 in).
DIALS = (
    (Fraction(2), Fraction(5, 100)),
    (Fraction(254, 100), Fraction(254, 10000)),
    (Fraction(254, 160), Fraction(254, 10000)),
    (Fraction(5, 2), Fraction(2, 100)),
)


def lines(travel, line, turns):
    """Every line that there is up to so many turns [mm]."""
    each = [n * line for n in range(math.ceil(travel / line)) if n * line < travel]
    return [turn * travel + one for turn in range(turns) for one in each]


class TestLines:
    @pytest.mark.parametrize(("travel", "line"), DIALS)
    def test_no_deeper_and_no_less_deep_of_all_lines(self, travel, line):
        setting = dialled(float(travel) * MM, float(line) * MM)
        known = [float(one) * MM for one in lines(travel, line, 6)]
        for step in range(1, 60):
            depth = Fraction(step * 74, 1000)
            if depth >= 5 * travel:
                break
            at = float(depth) * MM
            down = max(one for one in known if one <= at + 1e-12)
            up = min(one for one in known if one >= at - 1e-12)
            assert on_a_line(at, setting) == pytest.approx(down, abs=1e-9)
            assert on_a_line(at, setting, up=True) == pytest.approx(up, abs=1e-9)

    @pytest.mark.parametrize(("travel", "line"), DIALS)
    def test_a_line_is_its_own(self, travel, line):
        setting = dialled(float(travel) * MM, float(line) * MM)
        for one in lines(travel, line, 3)[1:]:
            for off in (-1e-13, 0.0, 1e-13):
                for up in (False, True):
                    assert on_a_line(float(one) * MM + off, setting, up=up) == pytest.approx(
                        float(one) * MM, abs=1e-9
                    )

    def test_behind_the_last_line_comes_the_whole_turn(self):
        """1/16 in has 62.5 lines of a thou: behind 62 of them comes nought, half a line on."""
        setting = dialled(62.5 * THOU, THOU)
        for depth in (62.1, 62.4, 187.2):
            turns = depth // 62.5
            assert on_a_line(depth * THOU, setting, up=True) == pytest.approx((turns + 1) * 62.5 * THOU)
            assert on_a_line(depth * THOU, setting) == pytest.approx(
                (turns * 62.5 + depth % 62.5 // 1) * THOU
            )

    @pytest.mark.parametrize(("units", "line"), [("mm", 0.01 * MM), ("in", THOU)])
    def test_where_no_handle_sets_it_a_hundredth_or_a_thou(self, units, line):
        setting = undialled(units)
        assert on_a_line(7.3 * line, setting) == pytest.approx(7 * line)
        assert on_a_line(7.3 * line, setting, up=True) == pytest.approx(8 * line)
        assert (
            on_a_line(7 * line, setting) == on_a_line(7 * line, setting, up=True) == pytest.approx(7 * line)
        )

    def test_equal_layers_on_lines(self):
        setting = dialled(2e-3, 0.05e-3)
        assert evenly(6e-3, 4, setting)
        assert evenly(6e-3, 3, setting)
        assert not evenly(6e-3, 7, setting)
        assert not evenly(6.04e-3, 2, setting)
        assert not evenly(6.06e-3, 2, setting)

    def test_a_tenth_of_a_micrometre_off_a_line_is_on_it(self):
        setting = dialled(2e-3, 0.05e-3)
        assert evenly(2 * (0.5e-3 - 0.9e-7), 2, setting)
        assert not evenly(2 * (0.5e-3 - 1.1e-7), 2, setting)


class TestLayerText:
    """No more layers than were meant where lines allow it, each on a line; else the
    finer line, in a layer or two more.
    """

    @pytest.mark.parametrize(
        ("total", "count", "text"),
        [
            (6.0, 1, ""), (6.0, 0, ""), (6.0, 2, "3 mm"), (6.0, 4, "1.5 mm"), (6.0, 7, "0.9 mm"),
            # 5 mm in 3: 1.667 is followed by 1.70, which makes three.
            (5.0, 3, "1.7 mm"),
            # 0.30 mm in 4: 0.075 is followed by 0.10, which would make three of it; 0.05 makes six.
            (0.3, 4, "0.05 mm"),
            (0.3, 3, "0.1 mm"), (0.3, 6, "0.05 mm"),
        ],
    )  # fmt: skip
    def test_on_a_dial_of_0_05(self, total, count, text):
        assert layer_text(total * MM, count, dialled(2e-3, 0.05e-3)) == text

    def test_under_one_line_it_is_written_to_a_micrometre(self):
        """0.3 mm in 8 is 0.0375: 0.05 would make six, and 0 none; 38 micrometres make eight."""
        assert layer_text(0.3e-3, 8, dialled(2e-3, 0.05e-3)) == "0.038 mm"
        assert math.ceil(0.3 / 0.038) == 8

    def test_an_exact_micrometre_is_not_rounded_up(self):
        """0.28 mm in 7 is 0.04: under a line of 0.05, and 0.05 makes six."""
        assert layer_text(0.28e-3, 7, dialled(2e-3, 0.05e-3)) == "0.04 mm"

    def test_a_layer_under_a_line_is_typed_in_the_person_s_units(self):
        setting = replace(dialled(2e-3, 0.05e-3), units="in")
        found, unit = number_of(layer_text(0.3e-3, 8, setting))
        assert unit == "in"
        assert float(found) * INCH == pytest.approx(0.038e-3, abs=0.13e-6)

    @pytest.mark.parametrize(("travel", "line"), DIALS)
    @pytest.mark.parametrize("total", [Fraction(4), Fraction(635, 100), Fraction(10), Fraction(37, 10)])
    def test_against_all_lines(self, travel, line, total):
        setting = dialled(float(travel) * MM, float(line) * MM)
        known = [one for one in lines(travel, line, math.ceil(total / travel)) if one]
        for count in (2, 3, 4, 5, 6, 7, 9, 11, 13, 17, 23, 29):
            up = min(one for one in known if one >= total / count)
            down = max((one for one in known if one <= total / count), default=None)
            wanted = up if math.ceil(total / up) == count else down
            found, unit = number_of(layer_text(float(total) * MM, count, setting))
            assert unit == "mm"
            assert wanted is not None
            assert float(found) == pytest.approx(float(wanted), abs=0.6e-4)

    def test_a_layer_is_typed_as_it_is_set(self):
        inch_dial = dialled(INCH / 10, THOU, dial="in")
        assert dial_units(inch_dial) == "in"
        assert layer_text(INCH / 2, 4, inch_dial) == "0.125 in"
        assert dial_units(dialled(2e-3, 0.05e-3)) == "mm"
        assert dial_units(replace(dialled(2e-3, 0.05e-3), units="in")) == "mm"
        assert dial_units(undialled("in")) == "in"
        assert dial_units(replace(dialled(2e-3, 0.05e-3, dial="turns"), units="in")) == "in"

    @pytest.mark.parametrize(
        ("value", "units", "text"),
        [
            (1.5e-3, "mm", "1.5 mm"), (1.23456e-3, "mm", "1.2346 mm"), (INCH / 8, "in", "0.125 in"), (INCH / 3, "in", "0.33333 in"),
            (INCH / 32, "in", "0.03125 in"), (2e-3, "mm", "2 mm"),
        ],
    )  # fmt: skip
    def test_to_a_tenth_of_a_micrometre_or_a_hundredth_of_a_thou(self, value, units, text):
        assert length_text(value, units) == text
