"""What each way of holding carries, against the worked examples of the reference on holding (sections A2 and D)."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find
from jobsheet.holdings.all_holdings import held_alike, holding_kind
from jobsheet.limits.each import holding
from jobsheet.model.figure import Figure, Figures
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.storage.card_files import find_card

from .said_holdings import said

B1 = "bench-mill-b-1"


def grip(name, material="S235", **facts):
    return holding_kind(name).grip(said(name, **facts), find_card(B1), find(material), Shop())


def test_vice_of_b1():
    """A2: the vice of B-1, 20 N·m on a screw of 3 mm lead, efficiency 0.18, closes with 7.54 kN."""
    assert grip("vice", tighten="20 N·m").force == pytest.approx(7540, rel=0.002)


@pytest.mark.parametrize(("heel", "nose", "force"), [("40", "40", 8.3e3), ("40", "80", 5.6e3)])
def test_strap_by_its_arms(heel, nose, force):
    """A2: M12 at 40 N·m draws 16.7 kN; a = b puts 8.3 on the work, b = 2a 5.6."""
    one = grip("straps", at="10, 5", bolt="M12", tighten="40 N·m", heel_to_bolt=heel, bolt_to_nose=nose)
    assert one.force == pytest.approx(force, rel=0.01)


def test_four_straps_hold_four_times_one():
    one = grip("straps", clamps="1", bolt="M12", tighten="40 N·m")
    four = grip("straps", at="10, 5; 70, 5; 10, 45; 70, 45", bolt="M12", tighten="40 N·m")
    assert four.force == pytest.approx(4 * one.force)
    assert "4 straps" in four.working


def test_a_screw_draws_all_of_its_tension():
    """T / (0.2 d): M6 at 6 N·m 5.0 kN; a screw has no arms (plain statics)."""
    assert grip("fixture plate", at="10, 5", screw="M6", tighten="6 N·m").force == pytest.approx(5000)


@pytest.mark.parametrize("name", ["straps", "vee block", "angle plate", "sine plate", "fixture plate"])
def test_what_is_not_said_is_not_known(name):
    assert grip(name) is None
    assert grip(name, bolt="M12", screw="M6", tighten="40 N·m") is None  # how many is not said


def turned_by(grip, pull):
    """The limit on the holding of a milling cut that pulls so hard [N] and lifts nothing."""
    setting = Setting(machine=find_card(B1), material=find("S235"), extent=(0.1, 0.03, 0.03), grip=grip)
    figures = Figures(items=(Figure(name="in_plane_peak", value=pull, unit="N", shown=""),))
    return holding.limit(figures, setting, None)


def test_a_cut_across_round_work_in_a_vee_rolls_it():
    """The same Ø30 under one strap that gives 8 kN (M12 at 38.4 N·m, half of 16 kN): 2.5 × 1000 N × 15 mm = 37.5 of 34.8 N·m.
    Sliding comes first in a vee, at 2 µ F: 2.5 kN of 1.92, so that the two are judged apart here."""
    held = grip("vee block", diameter="30", clamps="1", bolt="M12", tighten="38.4 N·m")
    assert held.turning == pytest.approx(34.8, abs=0.05)
    found = holding._rolled(1000, held, 2.5)
    assert (found.verdict, found.unit) == ("beyond", "N*m")
    assert turned_by(held, 1000).demand == pytest.approx(2500)
    assert found.demand == pytest.approx(37.5)


def test_how_high_round_work_stands_in_its_vee():
    """A2: its centre 21.2 over the point, the point 20 over the table, and half of Ø30 above: 56.2."""
    top = holding_kind("vee block").top(said("vee block", diameter="30", vee_above_table="20"), None, 0.03)
    assert top * 1e3 == pytest.approx(56.2, abs=0.05)


def test_a_chuck_holds_round_work_by_friction():
    """A1: SF Ft r against the chuck; 12 kN at all jaws on Ø20, 0.12: 14.4 N·m. 2.5 × 500 N × 10 mm = 12.5, and lying along a lift is
    held by the jaws themselves."""
    held = grip("chuck", on="dividing head", diameter="20", jaw_force="12 kN")
    found = turned_by(held, 500)
    assert found.capacity == pytest.approx(14.4)
    assert found.demand == pytest.approx(12.5)
    assert turned_by(held, 600).verdict == "beyond"  # 15.0


def test_soft_jaws_hold_less_than_hard_ones():
    """A1: 0.10; a file of format 1 says that they are reckoned as it was then."""
    plain = grip("vice", tighten="20 N·m")
    assert grip("vice", tighten="20 N·m", jaws="soft").friction == 0.10
    assert grip("vice", tighten="20 N·m", jaws="soft", reckon_as="plain jaws").friction == plain.friction


def test_a_tilting_vice_holds_half():
    """A1: not for heavy cuts (United States Army, OD1644); half the grip is common practice."""
    assert grip("vice", tighten="20 N·m", base="tilting").force == pytest.approx(
        grip("vice", tighten="20 N·m").force / 2
    )


def test_the_next_set_up_begins_with_the_same_thing():
    held = held_alike(said("vice", vice="80 mm vice", tighten="20 N·m", above_jaws="6", bar="yes"))
    assert held == said("vice", vice="80 mm vice", tighten="20 N·m")
