"""`jobsheet figures`: every operation, its limits, in SI as JSON."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.cli.verbs.figures import limit_data
from jobsheet.model.figure import VERDICTS, Limit


def test_every_step_is_there_in_its_order(samples, capsys):
    assert main(["figures", str(samples / "hm-103-pivot-block.yaml"), "--json"]) == 0
    operations = json.loads(capsys.readouterr().out)["operations"]
    numbers = [one["number"] for one in operations]
    assert numbers == sorted(numbers)
    for one in operations:
        for limit in one["limits"]:
            assert limit["verdict"] in VERDICTS
            assert (
                limit["share"] == pytest.approx(limit["demand"] / limit["capacity"])
                or limit["capacity"] == 0
                or limit["name"]
            )


def test_a_limit_as_data_keeps_its_words():
    limit = Limit(
        name="x",
        title="X",
        demand=3.0,
        capacity=6.0,
        unit="N",
        share=0.5,
        verdict="expected",
        low=5.0,
        high=7.0,
        sentence="light",
    )
    data = limit_data(limit)
    assert (data["name"], data["demand"], data["capacity"], data["unit"], data["verdict"]) == (
        "x",
        3.0,
        6.0,
        "N",
        "expected",
    )
    assert data["begin at"] is None
    assert data["chance"] is None
