"""`jobsheet order` as a shell sees it."""

from __future__ import annotations

import json

from jobsheet.__main__ import main


def test_the_order_of_the_drilled_plate(samples, capsys):
    assert main(["order", str(samples / "hm-100-drilled-plate-b1.yaml")]) == 0
    out = capsys.readouterr().out
    assert "50 before 60" in out
    assert "A long drill walks before it bites" in out
    assert "40 with" in out or "20 with 40" in out


def test_a_plan_that_drills_before_it_spots_gives_1(samples, tmp_path, capsys):
    text = (samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")
    head, spot, rest = text.partition("      - key: spot\n")
    spotting, drill, behind = rest.partition("      - key: drill\n")
    drilling, tap, end = behind.partition("      - key: tap\n")
    path = tmp_path / "turned.yaml"
    path.write_text(head + drill + drilling + spot + spotting + tap + end, encoding="utf-8")
    assert main(["order", str(path), "--json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert [(one["first"], one["then"], one["rule"]) for one in data["broken by the plan"]] == [
        (50, 60, "spot-before-drilling")
    ]
    assert data["set-ups"] == []
