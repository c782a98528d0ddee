"""Ladders: where they begin, how they grow, what ends them, what is refused, and
what a timed rung really asked.

Figures are those of the demo scenario, sections 3 and 3a, within their rounding.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from jobsheet.errors import CalcError, CommandError, JobsheetError
from jobsheet.model.shop import Shop
from jobsheet.proving.chance import largest_share
from jobsheet.reckoning.ladder.ladders import STOP_WORDS, plan, rung_at, trial_of
from jobsheet.review.notes.notes import rows
from jobsheet.storage.card_files import find_card

from .ladder_begun import B1

B2 = {
    "cutter": "end mill 1/2 in, 4 teeth, 32 mm out, drawer 1 no. 7", "material": "S235", "kind": "side", "units": "in",
    "grow": "width", "texts": {"depth": "0.250 in", "feed_per_tooth": "0.04 mm", "spindle": "550 rpm"}, "trials": (),
}  # fmt: skip
TAPS = {
    "cutter": "tap, plug", "material": "C15", "kind": "tap", "units": "in", "texts": {"spindle": "70 rpm"}, "trials": (),
}  # fmt: skip


def asked(rung, limit):
    return rung.of(limit).demand


# --- the scenario's demands ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("depth", "stiffness"),
    [("0.5 mm", 1.51), ("1 mm", 3.02), ("1.5 mm", 4.53), ("2 mm", 6.04), ("2.5 mm", 7.55)],
)
def test_the_side_cuts_of_b1(depth, stiffness):
    """Scenario section 3, by the direction of the force at half the cutter's
    width (1.32); 36 turns a minute.
    """
    rung = rung_at(plan("bench-mill-b-1", **B1), {"depth": depth})
    assert asked(rung, "chatter") / 1e6 == pytest.approx(stiffness / 1.32, abs=0.006)
    assert rung.figures.value("handle_pace") * 60 == pytest.approx(36, abs=0.3)


@pytest.mark.parametrize(
    ("width", "stiffness", "direction", "torque"),
    [("0.010 in", 4.69, 4, 0.185), ("0.020 in", 6.21, 4, 0.345), ("0.035 in", 7.81, 3.76, 0.571)],
)
def test_the_side_cuts_of_b2(width, stiffness, direction, torque):
    """Scenario section 3a; capacity by class is 6.07 N/µm with this cutter, the card's peak 4.97 N·m."""
    rung = rung_at(plan("bench-mill-b-2", **B2), {"width": width, "depth": "0.250 in"})
    assert asked(rung, "chatter") / 1e6 == pytest.approx(stiffness / direction, abs=0.006)
    assert asked(rung, "spindle-torque") == pytest.approx(torque, abs=0.001)
    assert asked(rung, "chatter") / 1e6 / rung.of("chatter").share == pytest.approx(6.07, abs=0.01)
    assert asked(rung, "spindle-torque") / rung.of("spindle-torque").share == pytest.approx(4.97, abs=0.01)


def test_the_taps_of_b2_are_the_storys_own():
    """Section 3a: with 15 % allowed 1/4-20 in No. 7 at 3.00 N·m, chance 0.13; then
    5/16-18 in H at 3.50, 1.17 times, 0.115.
    """
    first, second = plan("bench-mill-b-2", chance=0.15, **TAPS).rungs
    assert (first.size, second.size) == ("1/4-20 in No. 7", "5/16-18 in letter H")
    assert asked(first, "spindle-torque") == pytest.approx(3.00, abs=0.006)
    assert asked(second, "spindle-torque") == pytest.approx(3.50, abs=0.006)
    assert first.chance == pytest.approx(0.13, abs=0.005)
    assert second.chance == pytest.approx(0.115, abs=0.003)
    assert second.growth == pytest.approx(1.17, abs=0.005)


def test_the_default_chance_starts_the_taps_at_no_more_than_2_80():
    """Section 3a: the default 10 % would have started at 2.80 N·m."""
    first = plan("bench-mill-b-2", **TAPS).rungs[0]
    assert 2.6 < asked(first, "spindle-torque") <= 2.80


def test_left_to_itself_the_program_starts_lighter():
    """Section 3a: at most 2.34 N/µm, by the direction of the force 0.040 in wide at 0.250
    deep; then at most 1.25 times each.
    """
    ladder = plan("bench-mill-b-2", **B2)
    first = ladder.rungs[0]
    assert first.width == "0.04 in"
    assert first.depth == "0.250 in"
    assert asked(first, "chatter") / 1e6 <= 2.34
    demands = [asked(rung, "chatter") for rung in ladder.rungs]
    assert all(after <= 1.25 * before * 1.0001 for before, after in pairwise(demands))


def test_after_the_storys_clean_cuts_the_next_width_lies_between():
    """Section 3a: it would have put up to 0.015 in after 0.010, and up to 0.030 after 0.020, by
    1.25 times; 10 % may ask for less.
    """
    ladder = plan("bench-mill-b-2", **B2)
    clean = [
        replace(
            trial_of(ladder, rung_at(ladder, {"width": text, "depth": "0.250 in"}), outcome="clean"), id=text
        )
        for text in ("0.010 in", "0.020 in")
    ]
    after_one = plan("bench-mill-b-2", **{**B2, "trials": clean[:1]}).rungs[0]
    assert after_one.depth == "0.250 in"
    assert 0.010 < float(after_one.width.split()[0]) <= 0.015
    after_two = plan("bench-mill-b-2", **{**B2, "trials": clean}).rungs[0]
    assert 0.020 < float(after_two.width.split()[0]) <= 0.030


# --- what every ladder keeps --------------------------------------------------------------------------------

LADDERS = [
    ("bench-mill-b-1", B1),
    ("bench-mill-b-2", B2),
    ("bench-mill-b-2", TAPS),
    ("bench-mill-b-1", {"cutter": "drill", "material": "S235", "kind": "drill", "trials": ()}),
    ("bench-mill-b-2", {"cutter": "drill 10 mm", "material": "C15", "kind": "drill", "trials": ()}),
    ("bench-mill-b-1", {"cutter": "slot drill 10 mm, 30 mm out", "material": "6082-T6", "kind": "slot", "trials": ()}),
    (
        "knee-mill-k-2",
        {"cutter": "face mill 50 mm, 4 teeth, carbide, marked 12000 rpm", "material": "S235", "kind": "face", "trials": ()},
    ),
    ("knee-mill-k-2", {"cutter": "end mill 1/2 in, 4 teeth, 1-1/2 in out", "material": "EN-GJL-250", "kind": "side", "units": "in", "trials": ()}),
]  # fmt: skip


@pytest.mark.parametrize(("machine", "asking"), LADDERS)
def test_every_rung_keeps_the_chance_grows_and_loads_nothing_beyond(machine, asking):
    ladder = plan(machine, **asking)
    assert ladder.rungs, ladder.refused
    assert ladder.ends
    for rung in ladder.rungs:
        assert rung.chance <= 0.10 + 1e-4
        assert rung.growth <= 1.25 + 1e-4
        assert all(one.verdict != "beyond" for one in rung.limits)
        assert rung.seconds is None or rung.seconds > 0
        assert rung.spindle
    assert [rung.number for rung in ladder.rungs] == list(range(1, len(ladder.rungs) + 1))
    nearest = [max(one.share for one in rung.asked) for rung in ladder.rungs]
    assert nearest == sorted(nearest)


@pytest.mark.parametrize(("machine", "asking"), LADDERS)
def test_the_first_rung_is_no_more_than_the_prior_allows(machine, asking):
    ladder = plan(machine, **asking)
    for capacity in ladder.capacities:
        assert ladder.rungs[0].of(capacity.limit).share <= largest_share(capacity, 0.10) * 1.0001


@pytest.mark.usefixtures("day_of_the_figures")
def test_after_a_soft_sign_the_ladder_has_ended():
    """The shipped log of B-1 ends in chatter (section 3): no second ladder to the same end,
    but one's own cuts can be entered.
    """
    asking = {name: value for name, value in B1.items() if name != "trials"}
    ladder = plan("bench-mill-b-1", **asking)
    assert not ladder.rungs
    assert "ended" in ladder.refused
    assert rung_at(ladder, {"depth": "1.6 mm"}).chance == pytest.approx(
        0.03, abs=0.005
    )  # the class lies nearer to what rang, by the direction of the force


def test_the_stop_rule_is_that_of_the_safety_notes():
    note = next(row for row in rows() if row.id == "proving-stop-rule")
    for words in STOP_WORDS:
        assert words.rstrip(".").casefold() in note.text.casefold()


# --- refused ------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("metal", ["AZ31", "Ti-6Al-4V", "beryllium copper", "magnesium", "unknown scrap"])
def test_metals_that_are_never_proved(metal):
    ladder = plan("bench-mill-b-1", **{**B1, "material": metal})
    assert ladder.refused.startswith("No test cuts in")
    assert not ladder.rungs
    with pytest.raises(CommandError, match="No test cuts"):
        rung_at(ladder, {"depth": "1 mm"})


def test_inserts_without_or_above_their_mark():
    face = {"material": "S235", "kind": "face", "trials": ()}
    assert "not written" in plan("bench-mill-b-1", cutter="face mill 50 mm, 4 teeth, carbide", **face).refused
    slow = plan("bench-mill-b-1", cutter="face mill 50 mm, 4 teeth, carbide, marked 100 rpm", **face)
    assert "marked" in slow.refused


def test_taps_where_nothing_reverses_or_slips():
    asking = {**TAPS, "texts": {}}
    assert "does not reverse" in plan("bench-mill-b-1", **asking).refused
    assert "slips" in plan("knee-mill-k-2", **asking).refused
    assert plan("knee-mill-k-2", **{**asking, "cutter": "tap, plug, in a tapping head"}).rungs


def test_holding_is_never_proved():
    with pytest.raises(CommandError, match="never learned by slipping"):
        plan("bench-mill-b-1", **{**B1, "kind": "holding"})
    assert "not known" in plan("bench-mill-b-1", holding="double-sided tape", **B1).refused


def test_a_machine_whose_class_nobody_knows():
    card = replace(find_card("bench-mill-b-1"), stiffness_class="")
    assert "stiffness class" in plan(card, **B1).refused
    assert plan(card, cutter="drill", material="S235", kind="drill", trials=()).rungs


def test_another_limit_ends_the_ladder_with_its_reason():
    """In stainless the hand at the lever of B-1 gives out long before the spindle
    (section 9: 9.0 solid takes 4.11 kN).
    """
    stainless = {"cutter": "drill", "material": "304", "kind": "drill", "trials": ()}
    ladder = plan("bench-mill-b-1", **stainless, up_to={"spindle-torque": 2.0}, most=30)
    assert ladder.rungs
    assert ladder.ends.startswith("Quill push")
    # nothing is learned of the motor by drills that the hand gives up first: no
    # ladder, the reason, and what does load it
    for machine in ("bench-mill-b-1", "knee-mill-k-2"):
        refused = plan(machine, **stainless)
        assert refused.rungs == ()
        assert "never come near what the motor carries" in refused.refused
        assert "Quill push" in refused.refused
        assert refused.refused.endswith("Slot or face cuts load it more.")


def test_a_ladder_for_a_job_ends_at_what_the_job_asks():
    ladder = plan("bench-mill-b-1", **{**B1, "up_to": {"chatter": 0.6}})
    last = ladder.rungs[-1].of("chatter").share
    assert 0.6 * 0.98 <= last <= 0.6 * 1.02
    assert len(ladder.rungs) <= 5
    assert "what the job asks" in ladder.ends


def test_the_chance_is_the_workshops_own_where_none_is_given():
    bold = plan("bench-mill-b-1", **B1, shop=Shop(proof_chance=0.2))
    assert bold.chance == 0.2
    assert bold.rungs[0].of("chatter").share > plan("bench-mill-b-1", **B1).rungs[0].of("chatter").share


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"kind": "planing"}, "no kind of test cut"),
        ({"cutter": "drill 5 mm"}, "makes no side cuts"),
        ({"cutter": "end mill wide"}, "length"),
        ({"material": "wood"}, "material"),
        ({"grow": "speed"}, "depth or width"),
        ({"texts": {"wdith": "6 mm"}}, "wdith"),
        ({"texts": {"width": "six"}}, "length"),
    ],
)
def test_what_cannot_be_read_says_what_to_write(change, says):
    with pytest.raises(JobsheetError, match=says):
        plan("bench-mill-b-1", **{**B1, **change})


# --- what happened ------------------------------------------------------------------------------------------


def test_a_watch_gives_the_real_feed():
    """Twice the seconds: half the feed, so Kienzle's exponent 1 - 0.20 is left
    of the torque (S235, cutting-data).
    """
    ladder = plan("bench-mill-b-1", **B1)
    rung = ladder.rungs[0]
    slow = trial_of(ladder, rung, outcome="clean", seconds=rung.seconds * 2)
    ratio = slow.of("spindle-torque").demand / asked(rung, "spindle-torque")
    assert ratio == pytest.approx(0.5**0.8, rel=1e-3)
    # The frame is asked by a thinner chip, whose specific force is higher: chatter's demand rises as 2^0.20.
    assert slow.of("chatter").demand / asked(rung, "chatter") == pytest.approx(2**0.2, rel=1e-3)
    same = trial_of(ladder, rung, outcome="clean", seconds=rung.seconds)
    assert same.of("spindle-torque").demand == pytest.approx(asked(rung, "spindle-torque"), rel=1e-3)


def test_a_tachometer_replaces_the_speed():
    """541 for 550 rpm under the same feed of the hand: the chip grows by the ratio."""
    ladder = plan("bench-mill-b-2", **B2)
    rung = ladder.rungs[0]
    found = trial_of(ladder, rung, outcome="clean", tachometer=541 / 60)
    assert found.tachometer == 541 / 60
    ratio = found.of("spindle-torque").demand / asked(rung, "spindle-torque")
    assert ratio == pytest.approx((550 / 541) ** 0.8, rel=1e-3)


def test_a_drill_is_timed_over_its_depth():
    ladder = plan("bench-mill-b-1", cutter="drill", material="S235", kind="drill", trials=())
    rung = ladder.rungs[0]
    slow, fast = (
        trial_of(ladder, rung, outcome="clean", seconds=s).of("spindle-torque").demand for s in (30, 15)
    )
    assert slow / fast == pytest.approx(
        0.5**0.8, rel=1e-3
    )  # torque goes with feed^0.8 (cutting-data, drilling)


def test_the_trial_says_what_was_cut():
    ladder = plan("bench-mill-b-1", **B1)
    found = trial_of(
        ladder, ladder.rungs[0], outcome="6", slipped="vice", note="moved", role="Trainer", date="2026-11-12", length=0.08, seconds=60
    )  # fmt: skip
    assert (found.outcome, found.slipped, found.process, found.cutter_kind) == (
        "slipped",
        "vice",
        "side",
        "end mill",
    )
    assert (found.machine, found.material, found.holding) == ("bench-mill-b-1", "S235", "80 mm vice")
    assert (found.length, found.seconds, found.stick_out) == (0.08, 60, 0.03)
    assert dict(found.step)["width"] == "6 mm"


@pytest.mark.parametrize(
    ("more", "says"),
    [
        ({"outcome": "superb"}, "1 clean"),
        ({"outcome": "9"}, "no outcome"),
        ({"outcome": "slipped"}, "Say what slipped"),
        ({"outcome": "clean", "slipped": "vice"}, "but the outcome is clean"),
        ({"outcome": "slipped", "slipped": "me"}, "nothing that slips"),
        ({"outcome": "clean", "date": "yesterday"}, "no date"),
        ({"outcome": "clean", "seconds": -3}, "time"),
        ({"outcome": "clean", "seconds": 0.2, "length": 3.0}, "hand can give"),
        ({"outcome": "clean", "tachometer": 5410 / 60}, "tachometer"),
    ],
)
def test_a_slip_of_the_pen_is_one_sentence(more, says):
    ladder = plan("bench-mill-b-1", **B1)
    with pytest.raises((CommandError, CalcError), match=says):
        trial_of(ladder, ladder.rungs[0], **more)


def test_a_finer_ladder_begins_under_the_sign_whatever_was_clean_before_it():
    from msgspec.structs import replace as with_

    cut = {"cutter": "end mill 20 mm, 4 teeth, 45 mm out", "material": "S235", "kind": "slot"}
    bare = plan("knee-mill-k-2", trials=(), **cut)

    def done(size, outcome, time):
        found = trial_of(bare, rung_at(bare, {}, size), outcome=outcome, date="2026-11-28")
        return with_(found, time=time, id=size)

    trials = (done("1.5 mm", "clean", "10:00:00"), done("2 mm", "chatter", "10:05:00"))
    assert "A finer one narrows it" in plan("knee-mill-k-2", trials=trials, date="2026-11-28", **cut).refused
    finer = plan("knee-mill-k-2", trials=trials, date="2026-11-28", finer=True, **cut)
    sizes = [float(rung.size.split()[0]) for rung in finer.rungs]
    assert len(sizes) >= 3
    assert 1.0 <= sizes[0] < 1.6
    assert all(1.0 < above / below <= 1.13 for below, above in pairwise(sizes))  # dials set 0.05 mm
    assert sizes[-1] < 2.0


def test_a_finer_ladder_says_that_it_narrows_and_how_many_cuts_that_takes():
    """The invented machine after its end: small steps, more cuts than one sheet
    has rungs, and a narrower band.
    """
    finer = plan(
        "bench-mill-b-1",
        cutter=B1["cutter"],
        material="S235",
        kind="side",
        texts={"width": "6 mm"},
        finer=True,
    )
    assert finer.rungs
    assert finer.expected.cuts >= len(finer.rungs)
    assert finer.expected.after < 0.9 * finer.expected.before
