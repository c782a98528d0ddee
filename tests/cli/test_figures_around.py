"""What `jobsheet figures` says around the figures: speeds about the one that is
set, what carries, what mends.
"""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main


@pytest.fixture
def changed(samples, tmp_path):
    def make(*edits: tuple[str, str]) -> str:
        text = (samples / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")
        for old, new in edits:
            assert old in text
            text = text.replace(old, new, 1)
        path = tmp_path / "changed.yaml"
        path.write_text(text, encoding="utf-8")
        return str(path)

    return make


def test_both_neighbours_of_the_speed(changed, capsys):
    assert main(["figures", changed(), "--json"]) == 0
    face = json.loads(capsys.readouterr().out)["operations"][1]
    speeds = face["speeds"]
    assert [speeds[name]["marked"] for name in ("below", "at", "above")] == ["320", "560", "900"]
    assert speeds["at"]["torque share"] == pytest.approx(0.16, abs=0.005)
    assert speeds["above"]["nearest to giving out"] == "Hand pace"
    assert "other cutters" not in face
    assert not face["advice"]["stays"]


def test_what_mends_the_planted_mistake(changed, capsys):
    path = changed(("spindle: 560 rpm", "spindle: 900 rpm"))
    # 72 turns a minute are fewer than the 80 at which every other hand jerks:
    # tight (holding-and-more-kinds C1).
    assert main(["figures", path]) == 0
    out = capsys.readouterr().out
    assert "recommended, to be typed in" in out
    assert "560 rpm" in out
    assert main(["figures", path, "--json"]) == 0
    advice = json.loads(capsys.readouterr().out)["operations"][1]["advice"]
    assert {"spindle": "560 rpm"}.items() <= {one["field"]: one["text"] for one in advice["write"]}.items()
    assert all(one["why"] and one["source"] for one in advice["write"])


def test_a_drill_that_is_beyond_is_fed_less_before_a_pilot_is_proposed(changed, capsys):
    """12 mm from solid at 0.14 stalls B-1 (cutting-data 1.13); what is recommended leaves
    no limit beyond, or names the pilot.
    """
    path = changed(("cutter: drill 5.0", "cutter: drill 12"), ("feed: 0.08", "feed: 0.14"))
    assert main(["figures", path, "--json"]) == 1
    drill = next(one for one in json.loads(capsys.readouterr().out)["operations"] if one["key"] == "drill")
    beyond = [one for one in drill["advice"]["stays"] if one["verdict"] == "beyond"]
    assert drill["advice"]["pilot"] if beyond else drill["advice"]["write"]


def test_a_layer_that_is_too_deep_is_split(changed, capsys):
    assert main(["figures", changed(("depth: 0.4", "depth: 9")), "--json"]) == 1
    face = json.loads(capsys.readouterr().out)["operations"][1]
    assert any(one["field"] == "layer" and one["text"] for one in face["advice"]["write"])
