"""Reading a formula's docstring, and the checks of inputs."""

from __future__ import annotations

import math

import pytest

from jobsheet.cutting.formula import (
    angle_below,
    finite,
    formula_of,
    not_negative,
    outside,
    positive,
    share,
    work,
)
from jobsheet.cutting.kienzle import specific_cutting_force
from jobsheet.cutting.speed import spindle_speed
from jobsheet.errors import CalcError


def test_reads_title_expression_and_units():
    recorded = formula_of(spindle_speed)
    assert recorded.name == "spindle-speed"
    assert recorded.title == "Spindle speed for a cutting speed"
    assert recorded.expression == "n = v_c / (pi D)"
    assert recorded.inputs["diameter"] == ("m", "Diameter of the cutter where it cuts")
    assert recorded.output == ("rev/s", "Spindle speed")
    assert recorded.output_symbol == "n"
    assert recorded.symbol("cutting_speed") == "v_c"


def test_the_function_is_not_wrapped():
    assert spindle_speed.__name__ == "spindle_speed"
    assert formula_of(spindle_speed).function is spindle_speed


def test_a_working_holds_all_a_page_needs():
    shown = work(spindle_speed, cutting_speed=math.pi, diameter=1.0)
    assert shown.inputs[1] == ("D", "Diameter of the cutter where it cuts", 1.0, "m")
    assert (shown.symbol, shown.result, shown.unit, shown.source) == ("n", 1.0, "rev/s", "mit-f")
    assert shown.caveats == ()


def test_outside_gives_the_numbers_for_other_units():
    (one,) = outside(specific_cutting_force, kc11=1e9, mc=0.2, h=2e-3)
    assert (one.symbol, one.value, one.low, one.high, one.unit) == ("h", 2e-3, 0.05e-3, 1e-3, "m")


def test_a_range_knows_its_defaults():
    assert outside(specific_cutting_force, kc11=1e9, mc=0.2, h=0.1e-3) == []


@pytest.mark.parametrize(
    ("check", "good", "bad"),
    [
        (positive, [1, 1e-300], [0, -1, math.inf, math.nan]),
        (not_negative, [0, 1], [-1e-300, math.inf, math.nan]),
        (finite, [0, -1, 1e300], [math.inf, -math.inf, math.nan]),
        (share, [1e-9, 0.5, 1], [0, 1.001, -1, math.nan]),
        (lambda **named: angle_below(math.pi, **named), [0.1, 3], [0, math.pi, 4, math.nan]),
    ],
)
def test_checks(check, good, bad):
    for value in good:
        check(one=value)
    for value in bad:
        with pytest.raises(CalcError, match=r"^one is .*; it must be "):
            check(one=value)
