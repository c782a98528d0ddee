"""Values behind a formula: read in any of their units, and the answer in the units of what was typed."""

from __future__ import annotations

import math

import pytest

from jobsheet.cli.typed_values import Typed, answer, as_typed, systems, typed
from jobsheet.errors import JobsheetError


@pytest.mark.parametrize(
    ("text", "unit", "value"),
    [("12 mm", "m", 0.012), ("1/2 in", "m", 0.0127), ("30 m/min", "m/s", 0.5), ("600 rpm", "rev/s", 10), ("45°", "rad", math.pi / 4), ("#7", "m", 0.201 * 0.0254)],
)  # fmt: skip
def test_a_value_is_read_in_any_of_its_units(text, unit, value):
    """No. 7 is 0.2010 in (ASME B94.11M)."""
    assert typed("x", text, unit).value == pytest.approx(value)


def test_what_cannot_be_read_names_the_input():
    with pytest.raises(JobsheetError, match=r"^diameter: "):
        typed("diameter", "wide", "m")


def test_inches_in_inches_out_and_both_where_both_were_typed():
    inch, metric, bare = typed("x", "1 in", "m"), typed("x", "12 mm", "m"), Typed(1.0)
    assert answer(0.0254, "m", (inch,)).endswith("in")
    assert answer(0.0254, "m", (metric,)).endswith("mm")
    assert answer(0.0254, "m", (bare,)).endswith("mm")
    assert " = " in answer(0.0254, "m", (inch, metric))
    assert len(systems((inch, metric))) == 2


def test_what_was_put_in_is_said_as_it_was():
    assert as_typed(typed("x", "1.5 in", "m"), "m") == "1.5 in" or as_typed(
        typed("x", "1.5 in", "m"), "m"
    ).startswith("1.5")
    assert as_typed(typed("x", "#7", "m"), "m").startswith("#7 = ")
