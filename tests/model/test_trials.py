"""Records of test cuts: what strikes strike, and their order in time."""

from __future__ import annotations

import itertools

import pytest

from jobsheet.model.trials import Asked, Trial, in_time, struck_out


def trial(name, **more):
    return Trial(
        **{
            "id": name, "machine": "b-1", "date": "2026-11-02", "process": "side", "cutter": "", "cutter_kind": "end mill", "material": "S235",
            "outcome": "clean", "asked": (), **more,
        }
    )  # fmt: skip


def test_a_strike_that_is_itself_struck_strikes_nothing():
    cut, strike = trial("cut"), trial("strike", strikes="cut")
    again = trial("again", strikes="strike")
    assert struck_out([cut]) == {}
    assert struck_out([cut, strike]) == {"cut": strike}
    assert struck_out([cut, strike, again]) == {"strike": again}
    last = trial("last", strikes="again")
    assert set(struck_out([cut, strike, again, last])) == {"cut", "again"}


def test_of_several_strikes_the_latest_that_stands_counts():
    records = [trial("cut"), trial("one", strikes="cut"), trial("two", strikes="cut")]
    assert struck_out(records)["cut"].id == "two"
    assert struck_out([*records, trial("three", strikes="two")])["cut"].id == "one"


def test_a_mark_of_a_change_goes_before_what_was_cut_at_that_time():
    early, mark, cut = (
        trial("a", time="09:00"),
        trial("b", time="10:00", changed="gibs"),
        trial("c", time="10:00"),
    )
    for order in itertools.permutations((early, mark, cut)):
        assert [one.id for one in in_time(order)] == ["a", "b", "c"]


def test_what_was_asked_is_found_by_its_limit():
    one = trial("cut", asked=(Asked("chatter", 2e6, 0.4), Asked("spindle-torque", 3.0, 0.2)))
    assert one.of("spindle-torque").share == pytest.approx(0.2)
    assert one.of("quill-push") is None
