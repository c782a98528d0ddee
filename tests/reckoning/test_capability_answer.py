"""A machine's capability: bands in their order, answers inside them, two machines on the same work."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.answers.capability_answer import capability, card
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job

ASKED = ["deepest facing", "deepest slot", "deepest side cut", "largest drill", "largest tap"]


def length(text):
    return float(text.removesuffix(" mm"))


@pytest.mark.parametrize("metal", ["S235", "304"])
@pytest.mark.parametrize("machine", ["bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2"])
def test_every_band_rises_and_each_answer_has_what_stops_it(machine, metal):
    found = card(find_card(machine), metal)
    assert [next(one for one in ASKED if row.what.startswith(one)) for row in found.rows] == ASKED
    for row in found.rows:
        assert row.stops
        assert row.verdict in ("cut before", "expected", "tight", "beyond", "from class")
        if row.what.startswith("deepest") and row.middle != "–":
            low, middle, high = length(row.low), length(row.middle), length(row.high)
            assert low <= middle <= high


@pytest.mark.usefixtures("day_of_the_figures")
def test_the_side_cut_of_b1_is_the_record_of_section_3():
    """1.76 mm at 0.04 a tooth and 6 wide is the most at 10 %; there the band is 5.34
    to 10.7 N/µm, 1.77 to 3.54 mm deep.

    The card asks at its usual feed (0.055 a tooth), whose thicker chip is cut
    with less force: a little deeper.
    """
    row = next(one for one in card(find_card("bench-mill-b-1"), "S235").rows if "side cut" in one.what)
    assert row.proved
    assert row.words == "cut before"
    assert 1.76 <= row.plan_size * 1e3 <= 2.0
    assert (
        "it chattered at what 2.66 mm asks" in row.stops
    )  # 7.55 N/µm; one tooth in cut × 2840 MPa at this chip


def test_a_machine_never_tried_has_the_cards_band():
    found = card(find_card("knee-mill-k-2"), "S235")
    assert found.proof is None
    assert not any(row.proved for row in found.rows)
    assert all(row.words == "planned limit, a chance of 1 in 10" for row in found.rows)


def test_largest_tap_is_as_section_2_says():
    """B-1 by hand only (no reverse); B-2 under power; K-2 by hand or with a tapping head that slips."""
    ways = {}
    for name in ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2"):
        ways[name] = card(find_card(name), "S235").rows[-1].what
    assert ways["bench-mill-b-1"] == "largest tap, by hand only"
    assert ways["bench-mill-b-2"] == "largest tap, under power"
    assert ways["knee-mill-k-2"] == "largest tap, by hand or with a tapping head that slips"


def test_the_same_job_on_two_machines(samples):
    job = read_job(samples / "hm-100-drilled-plate-b1.yaml")
    machines = [find_card("bench-mill-b-1"), find_card("knee-mill-k-2")]
    found = capability(machines, ("S235",), job=job)
    assert [one.machine.name for one in found.on] == ["bench-mill-b-1", "knee-mill-k-2"]
    assert found.on[0].minutes == minutes_of_job(Reckoner(learns=True).reckon(job))
    assert found.on[0].fits
    # 560 and 900 rpm are none of K-2's speeds; the nearest are 500 and 800, and
    # by hand it feeds slower with them.
    assert found.on[1].minutes.cut > found.on[0].minutes.cut
    assert [number for number, *_ in found.on[0].cuts] == [20, 30, 50, 60]


def test_a_drill_is_told_by_its_feed_and_a_tap_by_its_thread():
    rows = card(find_card("knee-mill-k-2"), "S235").rows
    fed = {row.what.split(",")[0]: row.cutter for row in rows if "drill" in row.what or "tap" in row.what}
    assert [text for what, text in fed.items() if "tap" in what] == ["coarse thread, usual drill"]
    assert all(text.endswith("mm a turn") for what, text in fed.items() if "drill" in what)
