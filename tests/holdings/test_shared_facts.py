"""Bolts that draw clamps down: against the lever and the text-book torque of a bolt."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.tools.threads import read_thread
from jobsheet.holdings.shared_facts import BOLT_BAND, bolted, friction
from jobsheet.model.quantity import Quantity
from jobsheet.model.shop import Shop

M12, FORTY = read_thread("M12"), Quantity(40.0, "40 N·m")


def drawn(number=1, bolt=M12, tighten=FORTY, **arms):
    return bolted(number, bolt, tighten, find("S235"), Shop(), **arms)


def test_a_bolt_draws_its_torque_over_a_fifth_of_its_diameter():
    """T = K d F with K 0.20 (Shigley, from memory): 40 / (0.2 × 0.012) = 16.67 kN, of
    which a nose with equal arms has half.
    """
    assert drawn().force == pytest.approx(16667 / 2, rel=1e-3)
    assert drawn(4).force == pytest.approx(4 * drawn().force)


@pytest.mark.parametrize(("heel", "work", "share"), [(40, 80, 1 / 3), (80, 40, 2 / 3), (1, 0, 1.0)])
def test_a_strap_is_a_lever_on_its_heel(heel, work, share):
    assert drawn(heel=heel, work=work).force == pytest.approx(16667 * share, rel=1e-3)


def test_its_band_is_the_same_either_side_of_any_number_of_bolts():
    found = drawn(3)
    assert (found.low / found.force, found.high / found.force) == pytest.approx(BOLT_BAND)


def test_what_is_not_said_is_not_known():
    assert drawn(None) is None
    assert drawn(0) is None
    assert drawn(bolt=None) is None
    assert drawn(tighten=None) is None


def test_aluminium_slips_sooner_than_steel():
    steel = friction(find("S235"), Shop())
    assert friction(find("6082-T6"), Shop()) < steel == Shop().friction
