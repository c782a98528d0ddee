"""What every formula must have: documented inputs with units, a known source, an example, refusals."""

from __future__ import annotations

import doctest
import importlib
import inspect
import math
import pkgutil
from pathlib import Path

import pytest
import yaml

import jobsheet.cutting
from jobsheet.cutting.formula import UNITS, all_formulas, formula, formula_of, outside_validity, work
from jobsheet.errors import CalcError

from .samples import sample

FORMULAS = all_formulas()
SOURCES = yaml.safe_load((Path(__file__).parents[2] / "resources" / "sources.yaml").read_text("utf-8"))[
    "sources"
]
TRUST = {"read", "remembered", "derived", "common practice", "estimate"}

every = pytest.mark.parametrize("function", FORMULAS.values(), ids=FORMULAS)


@every
def test_documents_the_inputs_of_its_signature(function):
    assert list(formula_of(function).inputs) == list(inspect.signature(function).parameters)


@every
def test_each_input_and_the_result_have_a_unit_of_the_closed_list(function):
    recorded = formula_of(function)
    for name, quantity in {**recorded.inputs, recorded.output_symbol: recorded.output}.items():
        assert quantity.unit in UNITS, name
        assert quantity.meaning, name


@every
def test_every_sign_stands_in_the_expression(function):
    recorded = formula_of(function)
    assert set(recorded.symbols) <= set(recorded.inputs)
    assert recorded.expression.startswith(f"{recorded.output_symbol} = ")
    for name in recorded.inputs:
        assert recorded.symbol(name) in recorded.expression, name


@every
def test_its_source_is_known(function):
    assert formula_of(function).source in SOURCES


@every
def test_its_range_names_inputs(function):
    recorded = formula_of(function)
    for name, (low, high) in recorded.ranges.items():
        assert name in recorded.inputs
        assert low < high


@every
def test_its_example_runs(function):
    tests = doctest.DocTestFinder(recurse=False).find(
        function, function.__name__, globs=vars(inspect.getmodule(function)).copy()
    )
    assert [test for test in tests if test.examples], "no example"
    for test in tests:
        assert doctest.DocTestRunner(verbose=False).run(test).failed == 0


@every
def test_says_what_it_refuses(function):
    assert "Raises\n------\nCalcError\n" in inspect.getdoc(function)


@every
def test_refuses_what_is_no_number(function):
    good = sample(function)
    for bad in (math.nan, math.inf, -math.inf):
        for name in good:
            with pytest.raises(CalcError):
                function(**{**good, name: bad})


@every
def test_a_refusal_names_the_input_and_its_value(function):
    good = sample(function)
    for name in good:
        with pytest.raises(CalcError) as refusal:
            function(**{**good, name: math.nan})
        assert str(refusal.value).startswith(refusal.value.name.replace("_", " "))
        assert "must be" in str(refusal.value)


@every
def test_shows_itself_worked(function):
    good = sample(function)
    shown = work(function, **good)
    assert shown.result == function(**good)
    assert [term.value for term in shown.inputs] == list(good.values())
    assert shown.title
    assert not shown.title.endswith(".")
    assert shown.unit == formula_of(function).output.unit


@every
def test_promises_nothing(function):
    words = inspect.getdoc(function).lower()
    assert not [word for word in ("safe", "approved", "guarantee") if word in words]


def test_a_name_is_the_function_with_hyphens():
    assert FORMULAS["spindle-speed"].__name__ == "spindle_speed"


def test_a_second_formula_of_the_same_name_is_refused():
    def spindle_speed() -> float:
        return 0.0

    with pytest.raises(ValueError, match=r"two formulas are called spindle-speed: jobsheet\.cutting\.speed"):
        formula(source="derived")(spindle_speed)


def test_defaults_are_shown_too():
    shown = work(FORMULAS["specific-cutting-force"], kc11=1800e6, mc=0.25, h=0.2e-3)
    assert [(term.symbol, term.value) for term in shown.inputs][-2:] == [("W", 1.0), ("gamma_0", 0.0)]


def test_outside_the_range_is_a_sentence_and_not_a_refusal():
    function = FORMULAS["specific-cutting-force"]
    thin = {"kc11": 1500e6, "mc": 0.21, "h": 0.034e-3}
    sentence = "outside the range of the source (h 0.05-1 mm): h is 0.034 mm"
    assert outside_validity(function, **thin) == [sentence]
    assert work(function, **thin).caveats == (sentence,)
    assert function(**thin) == pytest.approx(1500e6 * 0.034**-0.21)


@pytest.mark.parametrize(("h", "count"), [(0.05e-3, 0), (1e-3, 0), (0.0499e-3, 1), (1.001e-3, 1)])
def test_both_ends_of_the_range_belong_to_it(h, count):
    assert len(outside_validity(FORMULAS["specific-cutting-force"], kc11=1e9, mc=0.2, h=h)) == count


def test_every_module_says_its_subject_and_needs_only_the_standard_library():
    for module in pkgutil.walk_packages(jobsheet.cutting.__path__, "jobsheet.cutting."):
        found = importlib.import_module(module.name)
        assert found.__doc__
        text = Path(found.__file__).read_text("utf-8")
        assert not [name for name in ("yaml", "msgspec", "pint", "numpy") if f"import {name}" in text]


@pytest.mark.parametrize("key", SOURCES)
def test_a_source_has_author_title_and_trust(key):
    source = SOURCES[key]
    assert source["author"]
    assert source["title"]
    assert source["trust"] in TRUST
    assert set(source) <= {"author", "title", "year", "where", "trust", "note", "maker", "first", "private"}


def test_practice_and_estimates_are_sources_too():
    assert {"common-practice", "estimate"} <= set(SOURCES)
