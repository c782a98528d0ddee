"""Reading a formula's docstring, and the checks of inputs."""

from __future__ import annotations

import math
import subprocess
import sys

import pytest

from jobsheet.cutting.formula import Formula, Outside, formula_of, outside, work
from jobsheet.cutting.kienzle import specific_cutting_force
from jobsheet.cutting.speed import spindle_speed


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


@pytest.mark.parametrize(
    ("unit", "value", "low", "high", "sentence"),
    [
        ("m", 0.034e-3, 0.05e-3, 1e-3, "outside the range of the source (x 0.05-1 mm): x is 0.034 mm"),
        ("m/rev", 0.7e-3, 0.05e-3, 0.6e-3, "outside the range of the source (x 0.05-0.6 mm): x is 0.7 mm"),
        ("m/s", 3.5, 0.5, 3.0, "outside the range of the source (x 30-180 m/min): x is 210 m/min"),
        ("rev/s", 0.5, 1.0, 50.0, "outside the range of the source (x 60-3e+03 rev/min): x is 30 rev/min"),
        ("Pa", 5e8, 1e9, 2.5e9, "outside the range of the source (x 1e+03-2.5e+03 MPa): x is 500 MPa"),
        ("N/m", 30e6, 2e6, 20e6, "outside the range of the source (x 2-20 N/µm): x is 30 N/µm"),
        (
            "rad",
            math.pi,
            0.0,
            math.pi / 2,
            "outside the range of the source (x 0-90 degrees): x is 180 degrees",
        ),
        ("-", 0.5, 0.03, 0.4, "outside the range of the source (x 0.03-0.4): x is 0.5"),
        ("N", 5.0, 1.0, 4.0, "outside the range of the source (x 1-4 N): x is 5 N"),
    ],
)
def test_the_sentence_speaks_the_units_of_the_trade(unit, value, low, high, sentence):
    assert str(Outside("x", value, low, high, unit)) == sentence


def test_a_range_knows_its_defaults():
    assert outside(specific_cutting_force, kc11=1e9, mc=0.2, h=0.1e-3) == []


def plain(length: float, factor: float = 2.0) -> float:
    """Twice a length.

    y = f l

    Parameters
    ----------
    length : float
        A length that needs
        two lines [m]
    factor : float, optional
        How often; [sic] 2 [-]

    Returns
    -------
    y : float
        The product [m]

    Examples
    --------
    -----
    >>> plain(1.0)
    2.0
    """
    return factor * length


def bare(length: float) -> float:
    return length


def record(function, **more) -> Formula:
    """What would be recorded, without making it a formula of the program."""
    noted = Formula(function, function.__name__, "derived", more.get("ranges", {}), more.get("symbols", {}))
    function.formula = noted
    return noted


def test_reads_meanings_of_two_lines_and_the_last_brackets():
    recorded = record(plain)
    assert recorded.title == "Twice a length"
    assert recorded.expression == "y = f l"
    assert recorded.inputs == {
        "length": ("m", "A length that needs two lines"),
        "factor": ("-", "How often; [sic] 2"),
    }
    assert (recorded.output_symbol, recorded.output) == ("y", ("m", "The product"))
    assert recorded.symbol("factor") == "factor"


def test_a_function_without_a_docstring_is_called_by_its_name():
    recorded = record(bare)
    assert recorded.title == "bare"
    assert recorded.expression == ""
    assert recorded.inputs == {}
    assert (recorded.output_symbol, recorded.output) == ("", ("", ""))


def test_a_range_of_an_input_that_was_left_out_looks_at_its_default_and_else_at_nothing():
    record(plain, ranges={"length": (1.0, 2.0), "factor": (3.0, 4.0)})
    assert [one.value for one in outside(plain, length=1.5)] == [2.0]
    assert [one.value for one in outside(plain, length=1.5, factor=3.5)] == []
    assert [one.value for one in outside(plain, factor=3.5)] == []


@pytest.mark.parametrize(("length", "count"), [(1 - 5e-7, 0), (1 - 5e-6, 1), (2 + 5e-7, 0), (2 + 5e-6, 1)])
def test_a_limit_in_another_unit_is_still_the_limit(length, count):
    record(plain, ranges={"length": (1.0, 2.0)})
    assert len(outside(plain, length=length)) == count


def test_every_module_is_asked_for_its_formulas(tmp_path):
    """In a process of its own: here all topics are imported already."""
    code = "from jobsheet.cutting.formula import all_formulas as a; n = list(a()); print(len(n), n == sorted(n), 'spindle-speed' in n)"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    count, ordered, there = done.stdout.split()
    assert (int(count) > 60, ordered, there) == (True, "True", "True")
