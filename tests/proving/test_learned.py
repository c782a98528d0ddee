"""What a snapshot says: of which limits an outcome speaks, that order does not
matter, age, and contradictions.
"""

from __future__ import annotations

import math
import subprocess
import sys
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.model.shop import Shop
from jobsheet.model.trials import LEARNED, OUTCOMES, PROCESSES, Asked
from jobsheet.proving.chance import chance_over
from jobsheet.reckoning.known_capacity import prior
from tests.proving.trials import SHOP, TODAY, taught, trial

CUTTER = ("side", "end mill")


def both(snapshot):
    return tuple(snapshot.find(limit, *CUTTER) for limit in LEARNED)


def width(capacity):
    return math.log(capacity.high / capacity.low)


def same(first, second):
    assert [(one.limit, one.process) for one in first] == [(one.limit, one.process) for one in second]
    for one, other in zip(first, second, strict=True):
        assert (one.low, one.median, one.high, one.planned) == pytest.approx(
            (other.low, other.median, other.high, other.planned), rel=1e-9
        )


#: What each says of the spindle's torque and of the frame: more than asked (+),
#: less (−), near it (~), nothing (0).
TELLS = {
    "clean": "++", "noisy": "+~", "slowed": "-0", "chatter": "+-", "stalled": "-0", "slipped": "00", "broke": "00",
    "too hard to wind": "00",
}  # fmt: skip
#: Whose ladder it ends: that of the limit it speaks against; where there is none, of both.
ENDS = {
    "clean": "", "noisy": "chatter", "slowed": "spindle-torque", "chatter": "chatter", "stalled": "spindle-torque",
}  # fmt: skip


@pytest.mark.parametrize("outcome", OUTCOMES)
def test_each_outcome_speaks_of_its_own_limits(outcome):
    found = both(taught(trial(outcome, torque=0.8, chatter=0.8)))
    for one, told in zip(found, TELLS[outcome], strict=True):
        before = prior(one.limit, *CUTTER)
        if told == "0":
            assert one.median == pytest.approx(1.0, rel=1e-3)
        if told == "+":
            assert one.low > before.low * 1.05
            assert one.median > 1
        if told == "-":
            assert one.high < before.high / 1.05
            assert one.median < 1
        if told == "~":
            assert one.low < 0.8 < one.high
            assert width(one) < 0.7 * width(before)
            assert one.median == pytest.approx(0.8, rel=0.1)
        assert one.spoke == (told != "0")
        assert bool(one.bad) == (ENDS.get(outcome, one.limit) == one.limit)
        assert bool(one.good) == (outcome == "clean")


def test_what_speaks_of_no_limit_still_ends_the_ladder_of_each():
    for outcome in ("slipped", "broke", "too hard to wind"):
        assert [one.bad for one in both(taught(trial(outcome, torque=0.3, chatter=0.4)))] == [(0.3,), (0.4,)]
    # a drill that rang: torque is all that was asked, and its ladder ends all the same
    found = taught(trial("chatter", torque=0.3, process="drill", cutter_kind="drill"))
    assert found.find("spindle-torque", "drill", "drill").bad == (0.3,)


def test_without_trials_nothing_is_claimed():
    found = taught()
    assert found.capacities == ()
    assert found.find("chatter", *CUTTER) is None
    # a tap says nothing of the frame, and holding that slipped says nothing of another process
    found = taught(trial("clean", torque=0.5, process="tap", cutter_kind="tap"))
    assert found.find("chatter", *CUTTER) is None
    assert taught(trial("slipped", torque=0.5)).find("spindle-torque", "face", "face mill") is None


def test_a_good_cut_is_overtaken_by_a_later_bad_one_at_no_more():
    first = trial("clean", torque=0.5, chatter=0.6, time="08:00:00", id="a", holding="vice", stick_out=0.03)
    ringing = trial("chatter", torque=0.4, chatter=0.5, time="08:10:00", id="b")
    again = trial("clean", torque=0.5, chatter=0.6, time="08:20:00", id="c")
    torque, frame = both(taught(first, ringing, again))
    assert [(one.trial, one.overtaken) for one in frame.good] == [("a", True), ("c", False)]
    assert [one.overtaken for one in torque.good] == [False, False]
    assert (torque.good[0].holding, torque.good[0].stick_out, torque.good[0].date) == ("vice", 0.03, TODAY)


def test_a_struck_trial_teaches_nothing():
    good, slip = trial("clean", torque=0.5, id="a"), trial("slowed", torque=0.2, id="b")
    strike = trial("", id="c", strikes="b")
    found = taught(good, slip, strike)
    same(found.capacities, taught(good).capacities)
    assert (found.trials, found.struck) == (1, 1)
    assert taught(good).struck == 0


def test_another_process_is_taught_by_the_machine_and_less_than_the_one_that_was_tried():
    found = taught(trial("clean", chatter=0.9), trial("chatter", chatter=1.2))
    tried, other = found.find("chatter", *CUTTER), found.find("chatter", "slot", "slot drill")
    assert other.process == ""
    assert width(tried) < width(other) < width(prior("chatter", "slot", "slot drill"))
    assert other.low < other.machine[0] < other.machine[2] < other.high
    # the same process with another kind of cutter has a bias of its own
    assert found.find("chatter", "side", "roughing end mill") == other


def test_a_second_process_teaches_the_first_through_the_machine():
    alone = taught(trial("clean", torque=0.5)).find("spindle-torque", *CUTTER)
    more = taught(
        trial("clean", torque=0.5), trial("clean", torque=1.4, process="face", cutter_kind="face mill")
    )
    assert more.find("spindle-torque", *CUTTER).median > alone.median


def ago(years):
    return (date.fromisoformat(TODAY) - timedelta(days=round(365.25 * years))).isoformat()


def ladder(day):
    return [
        trial(outcome, chatter=share, date=day)
        for outcome, share in (("clean", 0.8), ("clean", 1.0), ("chatter", 1.2))
    ]


def test_old_proof_shows_its_age_and_widens_but_never_beyond_the_card():
    found = [taught(*ladder(ago(years))).find("chatter", *CUTTER) for years in (0, 1, 4, 25)]
    assert [one.age for one in found] == pytest.approx([0, 365, 1461, 9131], abs=1)
    assert found[1].newest == ago(1)
    widths = [width(one) for one in found]
    assert widths == sorted(widths)
    assert widths[0] < widths[2] < width(prior("chatter", *CUTTER))
    ageless = Shop(proof_ageing=0.0)
    same(taught(*ladder(ago(4)), shop=ageless).capacities, taught(*ladder(TODAY)).capacities)


def test_a_date_ahead_or_unreadable_does_not_widen():
    for day in ("2031-01-01", "last week"):
        same(taught(*ladder(day)).capacities, taught(*ladder(TODAY)).capacities)


def test_contradictory_trials_widen():
    clear = taught(trial("clean", chatter=0.8), trial("chatter", chatter=1.2)).find("chatter", *CUTTER)
    torn = taught(
        trial("clean", chatter=0.8), trial("chatter", chatter=1.2), trial("clean", chatter=2.4)
    ).find("chatter", *CUTTER)
    assert width(torn) > width(clear) * 1.2


def test_hundreds_of_contradictions_are_still_a_distribution():
    trials = [trial("clean", chatter=9.0) for _ in range(300)] + [
        trial("chatter", chatter=0.1, date=ago(1)) for _ in range(300)
    ]
    found = taught(*trials).find("chatter", *CUTTER)
    assert 0 < found.low < found.median < found.high < math.inf
    assert sum(weight for _, weight in found.cells) == pytest.approx(1)


def test_far_outside_the_cards_value_evidence_wins():
    """Ten clean cuts at twenty times the card's torque: eight spreads off, and
    no edge of a grid stands in the way.
    """
    found = taught(*(trial("clean", torque=20.0) for _ in range(12))).find("spindle-torque", *CUTTER)
    assert found.low > 15


shares = st.floats(0.02, 30)
trials = st.lists(
    st.builds(
        lambda outcome, torque, chatter, process, age: trial(
            outcome, torque=torque, chatter=chatter, process=process, date=ago(age)
        ),
        st.sampled_from(OUTCOMES),
        st.none() | shares,
        st.none() | shares,
        st.sampled_from(PROCESSES),
        st.sampled_from((0, 0, 0.5, 3)),
    ),
    max_size=12,
)


@settings(max_examples=40)
@given(trials, st.randoms())
def test_any_trials_give_a_distribution_and_their_order_does_not_matter(some, random):
    found = taught(*some)
    shuffled = list(some)
    random.shuffle(shuffled)
    same(found.capacities, taught(*shuffled).capacities)
    for one in found.capacities:
        assert 0 < one.low < one.median < one.high < math.inf
        assert sum(weight for _, weight in one.cells) == pytest.approx(1)
        assert len(one.cells) <= 200
        chances = [chance_over(one, share) for share in (0.01, 0.1, 0.5, 1, 2, 10, 1000)]
        assert chances == sorted(chances)
        assert 0 <= chances[0] <= chances[-1] <= 1
        assert chance_over(one, one.planned) <= 0.10 + 1e-6


@settings(max_examples=25)
@given(trials, st.floats(1e-3, 1e3))
def test_units_of_the_demand_do_not_matter(some, unit):
    """N·m or lbf·in: only its share of card or class is learned from."""
    other = [
        replace(
            one,
            units="in",
            asked=tuple(Asked(each.limit, each.demand * unit, each.share) for each in one.asked),
        )
        for one in some
    ]
    same(taught(*some).capacities, taught(*other).capacities)


def test_shares_without_meaning_are_passed_over():
    useless = [trial("clean", torque=share, chatter=0.5) for share in (0.0, -1.0, math.inf, math.nan)]
    assert taught(*useless).find("spindle-torque", *CUTTER) is None
    assert taught(*useless).find("chatter", *CUTTER).spoke == 4


def test_it_is_remembered_by_value():
    some = ladder(TODAY)
    first = taught(*some)
    assert taught(*(replace(one) for one in some)) is first
    assert taught(*some, shop=replace(SHOP, run=0.01)) is first
    assert taught(*some, shop=replace(SHOP, proof_chance=0.15)) is not first


def test_the_planned_share_follows_the_workshops_chance():
    bold = taught(*ladder(TODAY), shop=Shop(proof_chance=0.15)).find("chatter", *CUTTER)
    assert chance_over(bold, bold.planned) == pytest.approx(0.15, abs=1e-3)
    assert bold.planned > taught(*ladder(TODAY)).find("chatter", *CUTTER).planned


def test_chance_and_rungs_need_no_numpy():
    code = "import sys, jobsheet.proving.chance, jobsheet.proving.rungs; sys.exit('numpy' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
