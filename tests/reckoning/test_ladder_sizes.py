"""Shares as sizes: what is planned to asks no more than it may, the next size up asks
more, and what bounds nothing says so.
"""

import pytest

from jobsheet.reckoning.ladder import ladder_sizes
from jobsheet.reckoning.ladder.ladder_sizes import in_size, size_for, two_figures
from jobsheet.reckoning.ladder.ladders import plan, rung_at
from jobsheet.units.grammar import read

MM = {
    "cutter": "end mill 12 mm, 4 teeth, 30 mm out",
    "material": "S235",
    "kind": "side",
    "trials": (),
    "texts": {"width": "6 mm"},
}
INCHES = {"cutter": "end mill 1/2 in, 4 teeth, 1-1/4 in out", "material": "S235", "kind": "side", "trials": (), "units": "in",
          "texts": {"width": "1/4 in"}}  # fmt: skip


@pytest.mark.parametrize(("how", "step"), [(MM, 0.05e-3), (INCHES, 0.001 * 0.0254)])
@pytest.mark.parametrize("machine", ["bench-mill-b-1", "knee-mill-k-2"])
@pytest.mark.parametrize("share", [0.3, 0.45, 0.61, 0.8, 1.0])
def test_a_size_asks_no_more_than_the_share_and_the_next_one_up_asks_more(machine, how, step, share):
    ladder = plan(machine, **how)
    found = in_size(ladder, "chatter", share)
    size = read(found.short, "length", ladder.units)
    unit = ladder.units

    def asks(depth):
        text = f"{depth / (1e-3 if unit == 'mm' else 0.0254):.6f} {unit}"
        return rung_at(ladder, {"depth": text}).of("chatter").share

    assert asks(size) <= share * 1.001
    assert found.capped or asks(size + 1.02 * step) > share
    assert found.words == f"{found.short} deep" == size_for(ladder, "chatter", share)


def test_twice_the_share_is_twice_the_depth():
    """What a cut asks of the frame goes with its depth (the chip's width, cutting-data 7)."""
    ladder = plan("bench-mill-b-1", **MM)
    one, two = in_size(ladder, "chatter", 0.5), in_size(ladder, "chatter", 1.0)
    assert two.value == pytest.approx(2 * one.value, rel=0.01)


def test_what_the_largest_cut_does_not_ask_is_beyond_it():
    ladder = plan("knee-mill-k-2", **MM)
    found = in_size(ladder, "chatter", 50.0)
    assert found.capped
    assert found.short == "18 mm"  # one and a half diameters


def test_what_even_the_least_cut_asks_has_no_size():
    ladder = plan("bench-mill-b-1", **MM)
    assert in_size(ladder, "chatter", 1e-4) is None
    assert size_for(ladder, "chatter", 1e-4) == ""


@pytest.mark.parametrize(
    ("value", "down", "text"),
    [(2.2549, False, "2.3"), (2.2949, True, "2.2"), (12.7, False, "13"), (0.0349, True, "0.034"), (0.5, True, "0.5"), (150.0, False, "150")],
)  # fmt: skip
def test_two_figures(value, down, text):
    assert two_figures(value, down=down) == text


@pytest.mark.parametrize(
    ("value", "down", "text"),
    [(0.0, False, "0"), (9.95, True, "9.9"), (9.96, False, "10"), (99.6, True, "99"), (1.0, False, "1"), (0.099, True, "0.099")],
)  # fmt: skip
def test_two_figures_at_their_ends(value, down, text):
    assert two_figures(value, down=down) == text


def test_a_share_that_no_cut_asks_is_said_of_the_whole():
    assert ladder_sizes._of_whole("spindle-torque", 0.456) == "0.46 of the card's peak torque"
    assert ladder_sizes._of_whole("chatter", 1.5) == "1.50 of what its class carries"
