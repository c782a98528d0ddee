"""What a kind of holding asks: only what makes sense beside what is said, and what should still be said."""

from __future__ import annotations

import pytest

from jobsheet.holdings.all_holdings import holding_kind, holdings
from jobsheet.holdings.holding_roles import HoldingRoles

from .said_holdings import said


def names(entries):
    return [entry.name for entry in entries]


def test_what_hangs_on_another_fact_is_asked_only_beside_it():
    kind = holding_kind("straps")
    assert "nose_below" not in names(kind.asked(said("straps")))
    assert "nose_below" in names(kind.asked(said("straps", press_on="a step")))
    # What is said stays asked, or nobody could take it out again.
    assert "nose_below" in names(kind.asked(said("straps", press_on="top", nose_below="5")))


def test_what_is_needed_is_named_until_it_is_said():
    kind = holding_kind("chuck")
    assert names(kind.unsaid(said("chuck"))) == list(kind.needs) or set(
        names(kind.unsaid(said("chuck")))
    ) == set(kind.needs)
    left = names(kind.unsaid(said("chuck", on="dividing head", locked="no")))
    assert "on" not in left
    assert "locked" not in left, "no is said as well"


def test_soft_jaws_spare_what_the_work_rests_on():
    kind = holding_kind("vice")
    assert "rests_on" in names(kind.unsaid(said("vice")))
    assert "rests_on" not in names(kind.unsaid(said("vice", jaws="soft")))


@pytest.mark.parametrize("name", holdings())
def test_needs_and_conditions_name_fields_of_their_own(name):
    kind = holding_kind(name)
    own = set(names(kind.entries))
    assert set(kind.needs) | set(kind.reckons) | set(kind.only_with) | set(kind.spared) <= own
    assert {other for other, _ in (*kind.only_with.values(), *kind.spared.values())} <= own
    assert isinstance(kind.plays(kind.fields()), HoldingRoles)
