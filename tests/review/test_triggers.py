"""The small language of triggers, as data."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.errors import JobsheetError
from jobsheet.review.notes.notes import rows
from jobsheet.review.notes.trigger_text import TriggerError
from jobsheet.review.notes.triggers import holds


@pytest.mark.parametrize(
    ("trigger", "facts", "expected"),
    [
        ("sheet", {"sheet": True}, True),
        ("sheet", {}, False),
        (
            "kind in drilling, window and stock.thickness <= 5 mm",
            {"kind": frozenset({"drilling"}), "stock.thickness": 0.004},
            True,
        ),
        ("kind in drilling, window and stock.thickness <= 5 mm", {"kind": frozenset({"drilling"})}, False),
        ("not fluid = dry", {"fluid": "brush-on oil"}, True),
        ("not material.family known", {}, True),
        ("machine.noise >= 80 and machine.noise < 85", {"machine.noise": 84.0}, True),
        ("a = x or (b = y and not c)", {"b": "y", "c": True}, False),
        ("speed > cutter.marked-speed", {"speed": 20.0, "cutter.marked-speed": 10.0}, True),
        ("holder.kind = drill chuck", {"holder.kind": "drill chuck"}, True),
        ("machine.reverse = yes", {"machine.reverse": True}, True),
    ],
)
def test_the_language(trigger, facts, expected):
    assert holds(trigger, facts) is expected


@pytest.mark.parametrize("trigger", ["", "and", "(sheet", "a = b)", "a >= wide mm", "= 3"])
def test_a_trigger_that_cannot_be_read(trigger):
    with pytest.raises((TriggerError, JobsheetError)):
        holds(trigger, {"a": 1.0})


@given(
    st.dictionaries(
        st.sampled_from(["kind", "fluid", "machine.noise", "stock.thickness"]),
        st.one_of(st.none(), st.text(max_size=5), st.floats(allow_nan=False), st.booleans()),
    )
)
def test_any_facts_give_an_answer(facts):
    for row in rows():
        assert holds(row.trigger, facts) in (True, False)
