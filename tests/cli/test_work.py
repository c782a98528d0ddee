"""`jobsheet work`: a formula with its numbers, or the list of all with their sources."""

from __future__ import annotations

import json
import math

import pytest

from jobsheet.__main__ import main
from jobsheet.cli.verbs.work import source_words
from jobsheet.cutting.formula import all_formulas


def test_a_formula_is_worked_in_the_units_that_were_typed(capsys):
    """n = v / (π d): 30 m/min on 12 mm is 796 rpm (any shop table)."""
    assert main(["work", "spindle-speed", "cutting_speed=30 m/min", "diameter=12 mm"]) == 0
    assert "796 rpm" in capsys.readouterr().out


def test_json_is_in_si(capsys):
    assert main(["work", "spindle-speed", "cutting_speed=30 m/min", "diameter=12 mm", "--json"]) == 0
    assert f"{0.5 / (math.pi * 0.012):.6f}"[:8] in capsys.readouterr().out


def test_without_a_name_all_are_listed_with_their_sources(capsys):
    assert main(["work", "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)
    assert len(listed if isinstance(listed, list) else next(iter(listed.values()))) == len(all_formulas())
    assert source_words("mh31").startswith("Industrial Press")


@pytest.mark.parametrize(
    "arguments",
    [
        ["work", "no-such"],
        ["work", "spindle-speed"],
        ["work", "spindle-speed", "cutting_speed=30 m/min", "diameter=wide"],
    ],
)
def test_what_is_missing_or_cannot_be_read_is_said(arguments, capsys):
    assert main(arguments) == 2
    assert capsys.readouterr().err.strip()
