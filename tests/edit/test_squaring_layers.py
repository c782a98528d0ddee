"""Set-ups put in front of a job's own, with the first cutter that carries them."""

from __future__ import annotations

import pytest

from jobsheet.edit.squaring_layers import carried, in_front
from jobsheet.errors import CommandError
from jobsheet.model.job import SetUp

from .blocks_squared import block
from .job_edited import JOB


def test_what_is_put_in_stands_first_and_is_counted_through():
    made = (SetUp(key="one", number=0, operations=JOB.set_ups[0].operations[:2]),)
    found = in_front(JOB, made)
    assert len(found.set_ups) == len(JOB.set_ups) + 1
    assert [one.number for one in found.set_ups] == list(range(1, len(found.set_ups) + 1))
    keys = [operation.key for _, operation in found.operations()]
    assert len(set(keys)) == len(keys)
    assert found.set_ups[-1].operations == JOB.set_ups[-1].operations


def test_set_ups_without_a_step_give_way():
    made = (SetUp(key="one", number=0, operations=JOB.set_ups[0].operations[:1]),)
    assert len(in_front(block(), made).set_ups) == 1


def test_where_no_cutter_carries_it_the_reason_is_said():
    def refuse(_cuts):
        raise CommandError("too hard")

    with pytest.raises(CommandError, match="too hard"):
        carried(block(), "", refuse)
