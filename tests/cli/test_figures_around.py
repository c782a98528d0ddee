"""What `jobsheet figures` says around the figures: speeds about the one that is set, what carries, what mends."""

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
    assert "mends" not in face
    assert "proposal" not in face


def test_what_mends_the_planted_mistake(changed, capsys):
    path = changed(("spindle: 560 rpm", "spindle: 900 rpm"))
    # 72 turns a minute are fewer than the 80 at which every other hand jerks: tight (holding-and-more-kinds C1).
    assert main(["figures", path]) == 0
    out = capsys.readouterr().out
    assert "what mends the pace" in out
    assert "560 rpm: 44.8 turns a minute" in out
    assert main(["figures", path, "--json"]) == 0
    mends = json.loads(capsys.readouterr().out)["operations"][1]["mends"]
    assert mends[0]["edits"] == {"spindle": "560 rpm"}


def test_the_pilot_that_is_proposed(changed, capsys):
    path = changed(("cutter: drill 5.0", "cutter: drill 12"), ("feed: 0.08", "feed: 0.14"))
    assert main(["figures", path]) == 1
    assert (
        "Drill 4 mm first: then 9.91 N·m at 320 rpm, 75 % of the torque, lever 98 N"
        in capsys.readouterr().out
    )


def test_a_layer_that_is_too_deep_is_split(changed, capsys):
    assert main(["figures", changed(("depth: 0.4", "depth: 9")), "--json"]) == 1
    face = json.loads(capsys.readouterr().out)["operations"][1]
    assert face["layers"].startswith("Carried in ")
