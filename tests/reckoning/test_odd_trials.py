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
