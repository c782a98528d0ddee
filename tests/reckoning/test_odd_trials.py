"""A trial that does not fit the others is said in sizes; where all fit, nothing is said."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.capacity import Capacity, Doubt, Snapshot
from jobsheet.reckoning.odd_trials import odd_trials
from tests.proving.trials import trial


def doubt(name, chance):
    return Doubt(trial=name, outcome="chatter", share=0.3, chance=chance, low=0.8, high=1.6, others=4)


def known(*doubts):
    one = Capacity(
        limit="chatter", process="side", cutter_kind="end mill", low=0.8, median=1.1, high=1.6, doubts=doubts
    )
    return Snapshot(machine="m", made="2026-11-25", capacities=(one,))


class Standing:
    """A log of which only the trials that stand are asked."""

    def __init__(self, *trials):
        self.standing = trials


def test_nothing_known_or_nothing_doubted_says_nothing():
    assert odd_trials(None, Standing()) == ()
    assert odd_trials(known(), Standing(trial("clean", chatter=0.5))) == ()


def test_the_least_likely_comes_first_and_what_is_no_longer_there_is_not_said():
    one, other = (replace(trial("chatter", chatter=0.3), id=name) for name in ("one", "other"))
    found = odd_trials(
        known(doubt("one", 0.02), doubt("other", 0.01), doubt("gone", 0.001)), Standing(one, other)
    )
    assert [odd.trial.id for odd in found] == ["other", "one"]
    assert all(odd.limit == "chatter" and odd.sentence for odd in found)


def sentence(outcome, others, *, units="mm", depth="1.2 mm", **more):
    one = replace(
        trial(outcome, chatter=0.4, units=units, step=(("depth", depth),) if depth else (), **more), id="one"
    )
    found = Doubt(trial="one", outcome=outcome, share=0.4, chance=0.01, low=0.8, high=1.6, others=others)
    return odd_trials(known(found), Standing(one))[0].sentence


def test_against_what_it_stands_in_sizes():
    """At 1.2 mm it asked 0.4 of the class: the others carry at least 0.8, so 1.2 × 0.8 / 0.4 = 2.4 mm."""
    assert sentence("chatter", 4) == (
        "This one says 1.2 mm deep, chatter; the other four say over 2.4 mm deep: a slip of the pen, or was something loose?"
    )


def test_what_was_clean_stands_against_the_upper_end():
    """They carry at most 1.6 of the class: 1.2 × 1.6 / 0.4 = 4.8 mm."""
    assert "1.2 mm deep, clean; the other two say up to 4.8 mm deep:" in sentence("clean", 2)


def test_inches_stay_inches():
    assert "0.05 in deep, chatter; the other two say over 0.1 in deep:" in sentence(
        "chatter", 2, units="in", depth="0.05 in"
    )


def test_so_many_others_in_words_up_to_a_dozen():
    for others, words in ((1, "one says"), (2, "two say"), (12, "twelve say"), (13, "13 say")):
        assert f"the other {words} over" in sentence("chatter", others)


def test_where_depth_says_nothing_it_is_what_it_asked():
    """A demand of 0.4 N/m, twice of it for the others."""
    said = sentence("chatter", 3, depth="")
    assert "deep" not in said
    assert "mm deep" not in sentence("chatter", 3, process="tap")
