"""Every formula on quantities with units, in other units than SI, gives what its docstring promises."""

from __future__ import annotations

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from jobsheet.cutting import reference
from jobsheet.cutting.formula import UNITS, all_formulas, formula_of
from jobsheet.cutting.kienzle import power_from_torque, torque_from_power
from jobsheet.cutting.speed import cutting_speed
from jobsheet.cutting.textbook.tooth_forces import mean_tangential_force

from .samples import sample

FORMULAS = all_formulas()

# What a unit of the closed list is, and what we put in instead of it: a lost 1000 or 60 would show.
UNLIKE_SI = {
    "-": ("", ""),
    "m": ("m", "inch"),
    "m/rev": ("m", "mm"),
    "m^2": ("m^2", "mm^2"),
    "m^3": ("m^3", "inch^3"),
    "m^4": ("m^4", "mm^4"),
    "m/s": ("m/s", "mm/min"),
    "m^3/s": ("m^3/s", "cm^3/min"),
    "m^3/J": ("m^3/J", "mm^3/(min*kW)"),
    "rev/s": ("1/s", "1/min"),
    "Hz": ("1/s", "1/ms"),
    "s": ("s", "min"),
    "kg": ("kg", "g"),
    "N": ("N", "lbf"),
    "N*m": ("N*m", "lbf*inch"),
    "N/m": ("N/m", "N/um"),
    "W": ("W", "kW"),
    "Pa": ("Pa", "N/mm^2"),
    "J/m^3": ("J/m^3", "W*s/mm^3"),
    "rad": ("rad", "degree"),
    "K": ("K", "K"),
    "1/K": ("1/K", "1/K"),
}
CONSTANTS = {
    "CHIP": "m",
    "FEED": "m",
    "DIAMETER": "m",
    "RAKE": "rad",
    "DRILL_LIPS": "N",
    "DRILL_CHISEL": "N",
    "DRILL_TORQUE": "N*m",
    "TWIST_TORQUE": "N*m",
    "TWIST_THRUST": "N",
    "TWIST_ENERGY": "J",
    "HSS_SHEAR": "Pa",
    "TOOL_LIFE": "s",
    "PECK": "s",
    "DRILL_RUN": "m",
    "EQUAL_POINT": "",
}


def dimensions(quantity) -> dict[str, float]:
    """Exponents of length, mass and time without what 0.85 + 1 - 1.85 leaves over."""
    return {key: round(power, 9) for key, power in quantity.dimensionality.items() if round(power, 9)}


@pytest.fixture(scope="module")
def units():
    import pint

    return pint.UnitRegistry()


@pytest.fixture
def with_units(units, monkeypatch):
    """The reference constants as quantities."""
    for name, unit in CONSTANTS.items():
        monkeypatch.setattr(reference, name, units.Quantity(getattr(reference, name), unit))


def test_the_lists_of_this_test_are_complete():
    assert set(UNLIKE_SI) == UNITS
    assert set(CONSTANTS) == {name for name in vars(reference) if name.isupper()}


@pytest.mark.parametrize("name", FORMULAS)
def test_a_formula_has_the_dimension_it_promises(name, units, with_units, monkeypatch):
    function = FORMULAS[name]
    recorded = formula_of(function)
    values = sample(function)
    put = {}
    for key, quantity in recorded.inputs.items():
        si, other = UNLIKE_SI[quantity.unit]
        put[key] = units.Quantity(values[key], si).to(other) if si else values[key]

    got = function(**put)

    monkeypatch.undo()
    expected = function(**values)
    promised = units.Quantity(1, UNLIKE_SI[recorded.output.unit][0]).to_base_units()
    got = units.Quantity(got).to_base_units()
    assert dimensions(got) == dimensions(promised)
    assert got.magnitude == pytest.approx(expected, rel=1e-9)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(name=st.sampled_from(sorted(FORMULAS)), factor=st.floats(0.7, 1.0))
def test_units_never_change_a_result(name, factor, units):
    """The same inputs, given in inches, minutes and pounds and turned into SI as a form does it."""
    function = FORMULAS[name]
    recorded = formula_of(function)
    values = {
        key: value if isinstance(value, int) else value * factor for key, value in sample(function).items()
    }
    turned = {}
    for key, value in values.items():
        si, other = UNLIKE_SI[recorded.inputs[key].unit]
        turned[key] = units.Quantity(value, si).to(other).to(si).magnitude if si else value
    assert function(**turned) == pytest.approx(function(**values), rel=1e-9)


def test_torque_times_angular_speed_is_power():
    torque = torque_from_power(power=1000.0, spindle_speed=5.0)
    assert torque * 2 * math.pi * 5.0 == pytest.approx(1000.0)
    assert power_from_torque(torque, 5.0) == pytest.approx(1000.0)


def test_force_times_cutting_speed_is_torque_times_angular_speed():
    force = mean_tangential_force(3e9, 2e-3, 6e-3, 0.05e-3, 4, diameter=12e-3)
    speed = cutting_speed(spindle_speed=10.0, diameter=12e-3)
    assert force * speed == pytest.approx(power_from_torque(force * 6e-3, 10.0))


@pytest.mark.parametrize(
    ("drill", "torque"),
    [(name, name.replace("power", "torque")) for name in FORMULAS if name == "twist-drill-power"],
)
def test_the_second_methods_power_is_its_torque_within_two_percent(drill, torque):
    given = {"k": 2.22, "feed": 0.2e-3, "diameter": 10e-3}
    power = FORMULAS[drill](**given, spindle_speed=8.0)
    assert power == pytest.approx(power_from_torque(FORMULAS[torque](**given), 8.0), rel=0.021)


def test_the_printed_constants_of_the_metric_line_are_the_inch_line_converted():
    pound, inch = 4.4482216, 25.4
    assert pytest.approx(2 * pound / inch**1.6, rel=0.006) == reference.DRILL_LIPS
    assert pytest.approx(pound / inch**2, rel=0.016) == reference.DRILL_CHISEL
    assert pytest.approx(0.112985 / inch**2.6, rel=0.006) == reference.DRILL_TORQUE
