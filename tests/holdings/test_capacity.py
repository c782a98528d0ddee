"""What each way of holding carries, against the worked examples of the reference
on holding (sections A2 and D).
"""

from __future__ import annotations

import pytest

from jobsheet.holdings.all_holdings import held_alike, holding_kind
from jobsheet.limits.each import holding

from .grips_said import grip, turned_by
from .said_holdings import said


@pytest.mark.parametrize("name", ["straps", "vee block", "angle plate", "sine plate", "fixture plate"])
def test_what_is_not_said_is_not_known(name):
    assert grip(name) is None
    assert grip(name, bolt="M12", screw="M6", tighten="40 N·m") is None  # how many is not said


def test_a_cut_across_round_work_in_a_vee_rolls_it():
    """The same Ø30 under one strap that gives 8 kN (M12 at 38.4 N·m, half of 16 kN): 2.5 ×
    1000 N × 15 mm = 37.5 of 34.8 N·m. Sliding comes first in a vee, at 2 µ F: 2.5 kN of 1.92, so
    that the two are judged apart here.
    """
    held = grip("vee block", diameter="30", clamps="1", bolt="M12", tighten="38.4 N·m")
    assert held.turning == pytest.approx(34.8, abs=0.05)
    found = holding._rolled(1000, held, 2.5, "mm")
    assert (found.verdict, found.unit) == ("beyond", "N*m")
    assert turned_by(held, 1000).demand == pytest.approx(2500)
    assert found.demand == pytest.approx(37.5)


def test_how_high_round_work_stands_in_its_vee():
    """A2: its centre 21.2 over the point, the point 20 over the table, and half of Ø30 above: 56.2."""
    top = holding_kind("vee block").top(said("vee block", diameter="30", vee_above_table="20"), None, 0.03)
    assert top * 1e3 == pytest.approx(56.2, abs=0.05)


def test_the_next_set_up_begins_with_the_same_thing():
    held = held_alike(said("vice", vice="80 mm vice", tighten="20 N·m", above_jaws="6", bar="yes"))
    assert held == said("vice", vice="80 mm vice", tighten="20 N·m")
