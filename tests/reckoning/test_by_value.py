"""A step reckoned by value: the same again costs nothing, and what it does not read counts for nothing."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.reckoning import by_value
from jobsheet.reckoning.what_if import tried
from tests.reckoning.steps import around, step

DRILL = {"cutter": "drill 7.9 mm", "at": "10, 10", "depth": "12", "feed": "0.09", "spindle": "320 rpm"}


def test_it_says_what_kind_and_limits_say():
    setting, one = around("bench-mill-b-1"), step("drill", **DRILL)
    figures, limits, rows, dials, problem = by_value.reckon_operation("drill", one.fields, setting)
    plain = tried("drill", one.fields, setting)
    assert figures == plain.figures
    assert {limit.name: limit for limit in limits} == {limit.name: limit for limit in plain.limits}
    assert rows
    assert dials
    assert problem == ""


def test_the_same_again_is_not_reckoned_again():
    setting, one = around("bench-mill-b-1"), step("drill", **DRILL)
    first = by_value.reckon_operation("drill", one.fields, setting)
    again = by_value.reckon_operation("drill", step("drill", **DRILL).fields, around("bench-mill-b-1"))
    assert again[0] is first[0]


def test_what_cannot_be_reckoned_says_why_and_nothing_else():
    one = step("drill", **{**DRILL, "feed": ""})
    figures, limits, rows, dials, problem = by_value.reckon_operation(
        "drill", one.fields, around("bench-mill-b-1")
    )
    assert (figures, limits, rows, dials) == (None, (), (), ())
    assert problem.endswith(".")
    assert "feed per turn" in problem.casefold()


def test_skin_is_read_by_no_kind():
    setting, one = around("bench-mill-b-1"), step("drill", **DRILL)
    first = by_value.reckon_operation("drill", one.fields, setting)
    assert by_value.reckon_operation("drill", one.fields, replace(setting, skin=1e-3))[0] is first[0]
