"""The lines of a cabinet: what a line says, and one sentence with the way to
write it where it says nothing.
"""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cabinet_lines import (
    gauge_named,
    gauge_sizes,
    length_of,
    read_line,
    span_of,
    tap_styles,
)
from jobsheet.errors import QuantityError


def test_a_set_of_drills_is_every_drill_of_it_but_what_is_missing():
    """1 to 10 by 0.5 are 19."""
    assert len(read_line("drills", "drills 1 mm to 10 mm by 0.5 mm")) == 19
    left = read_line("drills", "drills 1 mm to 10 mm by 0.5 mm", "7 mm")
    assert len(left) == 18
    assert 7e-3 not in [pytest.approx(one.cutter.diameter) for one in left]


def test_a_unit_at_the_end_holds_for_both_ends():
    assert span_of("0-25 mm") == span_of("0 mm to 25 mm") == pytest.approx((0.0, 25e-3))
    assert span_of("25 mm to 0 mm") is None
    assert span_of("25 mm") is None
    assert length_of("1 in") == pytest.approx(25.4e-3)
    with pytest.raises(QuantityError, match="no unit"):
        length_of("25")


def test_what_lifts_and_holds_has_its_sizes():
    (pair,) = read_line("parallels", "parallels 6 x 20 x 120 mm")
    assert (pair.size, pair.high) == pytest.approx((6e-3, 20e-3))
    (chuck,) = read_line("holders", "collet chuck, collets 6 mm, 8 mm, 10 mm")
    assert (chuck.name, chuck.sizes) == ("collet", pytest.approx((6e-3, 8e-3, 10e-3)))
    (drill_chuck,) = read_line("holders", "drill chuck 1 mm to 13 mm")
    assert (drill_chuck.low, drill_chuck.high) == pytest.approx((1e-3, 13e-3))
    (wrench,) = read_line("wrenches", "tap wrench 180 mm")
    assert wrench.size == pytest.approx(0.18)


def test_a_gauge_is_known_by_its_longest_name_and_its_size():
    assert gauge_named("depth micrometers 0-25 mm") == ("depth micrometer", "0-25 mm")
    assert gauge_named("caliper 150 mm") == ("calliper", "150 mm")
    assert gauge_named("ruler") is None
    # ISO 286: H7 of 16 mm is 0 to +0.018.
    assert gauge_sizes("16 H7") == pytest.approx((16e-3, 16.018e-3))
    assert gauge_sizes("10.00/10.05") == pytest.approx((10e-3, 10.05e-3))
    assert gauge_sizes("") == gauge_sizes("as usual") == (None, None)


def test_the_taps_of_a_set_are_told_apart():
    assert tap_styles("taper and plug") == ("taper", "plug")
    assert tap_styles("taper, plug and bottoming") == ("taper", "plug", "bottoming")
    assert tap_styles("") == ()


@pytest.mark.parametrize(
    ("section", "line", "says"),
    [
        ("parallels", "parallels 6", "thickness, height and length"), ("parallels", "parallels 0 x 20 mm", "above zero"),
        ("holders", "colet chuck", "did you mean collet chuck"), ("wrenches", "tap wrench", "tap wrench 180 mm"),
        ("gauges", "mikrometer 0-25 mm", "did you mean micrometer"), ("gauges", "plug gauge 16x", "no size of a gauge"),
    ],
)  # fmt: skip
def test_what_cannot_be_read_says_what_to_write(section, line, says):
    with pytest.raises(QuantityError, match=says):
        read_line(section, line)
