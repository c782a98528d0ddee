"""A ladder's rungs as values: what is asked of a limit, and whether such cuts are milled."""

from __future__ import annotations

from jobsheet.reckoning.ladder.ladders import plan

from .ladder_begun import B1


def test_a_rung_says_what_it_asks_of_each_limit():
    ladder = plan("bench-mill-b-1", **B1)
    for rung in ladder.rungs:
        assert {one.limit for one in rung.asked} == {"spindle-torque", "chatter"}
        assert rung.of("chatter") in rung.asked
        assert rung.of("quill-push") is None


def test_rungs_are_counted_from_one_and_ask_more_each():
    rungs = plan("bench-mill-b-1", **B1).rungs
    assert [one.number for one in rungs] == list(range(1, len(rungs) + 1))
    asked = [one.of("chatter").share for one in rungs]
    assert asked == sorted(asked)


def test_what_is_known_of_a_limit_is_found_by_its_name():
    ladder = plan("bench-mill-b-1", **B1)
    assert ladder.capacity("chatter") in ladder.capacities
    assert ladder.milled
