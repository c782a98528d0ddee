"""A plan as a value: its steps in cutting order, each found by its key, and its number."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.model.job import Revision


def test_steps_come_in_cutting_order_with_their_set_up(hm100):
    pairs = hm100.operations()
    assert [operation for set_up in hm100.set_ups for operation in set_up.operations] == [
        one for _, one in pairs
    ]
    assert all(operation in set_up.operations for set_up, operation in pairs)


def test_each_step_is_found_by_its_key_and_no_other(hm100):
    for set_up, operation in hm100.operations():
        assert hm100.find(operation.key) == (set_up, operation)
    with pytest.raises(KeyError):
        hm100.find("no-such")


def test_the_plan_has_the_number_of_its_last_revision(hm100):
    bare = replace(hm100, revisions=())
    assert bare.plan_number == 0
    assert replace(bare, revisions=(Revision(number=1), Revision(number=4))).plan_number == 4
