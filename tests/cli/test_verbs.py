"""The verbs as a shell sees them: what is printed, where, and the exit code."""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.cutting.formula import all_formulas


@pytest.fixture
def plate(samples):
    return str(samples / "hm-100-drilled-plate-b1.yaml")


@pytest.fixture
def wrong(tmp_path, plate):
    """The sample with a change that should stop somebody."""

    def make(old: str, new: str) -> str:
        from pathlib import Path

        text = Path(plate).read_text(encoding="utf-8")
        assert old in text
        path = tmp_path / "changed.yaml"
        path.write_text(text.replace(old, new), encoding="utf-8")
        return str(path)

    return make


def test_figures_as_json_have_the_form_that_was_agreed(plate, capsys):
    assert main(["figures", plate, "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert [one["number"] for one in data["operations"]] == [10, 20, 30, 40, 50, 60, 70, 80]
    face = data["operations"][1]
    assert set(face) >= {"key", "number", "kind", "title", "figures", "limits"}
    assert face["figures"]["torque"]["unit"] == "N*m"
    assert face["figures"]["torque"]["value"] == pytest.approx(1.20, abs=0.005)
    assert face["figures"]["torque"]["shown"] == "1.20 N·m"
    for limit in face["limits"]:
        assert set(limit) == {
            "name", "demand", "capacity", "unit", "share", "verdict", "chance", "odds", "from class", "begin at", "shown", "reason",
        }  # fmt: skip
        assert limit["verdict"] in ("cut before", "expected", "not tried", "tight", "beyond")
        assert limit["share"] == pytest.approx(limit["demand"] / limit["capacity"], rel=1e-9)


def test_figures_as_text(plate, capsys):
    assert main(["figures", plate]) == 0
    out = capsys.readouterr().out
    for words in (
        "Face 0.4 off",
        "44.8 turns a minute",
        "Hand pace",
        "16 %",
        "expected",
        "Start lighter and watch",
    ):
        assert words in out


def test_beyond_gives_exit_code_1(wrong, capsys):
    assert main(["figures", wrong("spindle: 560 rpm", "spindle: 1500 rpm")]) == 1
    assert main(["check", wrong("spindle: 560 rpm", "spindle: 1500 rpm")]) == 1
    assert "turns a minute is more than the hand keeps even" in capsys.readouterr().out


def test_a_hazard_gives_exit_code_1_and_its_fix_is_named(wrong, capsys):
    assert main(["check", wrong("method: by hand", "method: under power"), "--json"]) == 1
    data = json.loads(capsys.readouterr().out)
    assert data["remarks"][0]["rule"] == "no-power-tap-without-reverse"
    assert data["remarks"][0]["operations"] == [70]
    assert data["remarks"][0]["fix"] == "Tap by hand"
    assert data["stop notes"][0]["id"] == "power-tap-agreed"


def test_a_good_plan(plate, capsys):
    assert main(["check", plate]) == 0
    assert "No remarks." in capsys.readouterr().out


@pytest.mark.parametrize("verb", ["figures", "check", "sheet"])
def test_what_cannot_be_read_goes_to_standard_error_a_problem_a_line(verb, wrong, capsys):
    path = wrong("depth: 0.4", "dept: 0.4")
    assert main([verb, path]) == 2
    captured = capsys.readouterr()
    assert captured.out == ""
    lines = captured.err.strip().splitlines()
    assert lines[0] == "changed.yaml cannot be used:"
    assert any("unknown field; did you mean depth?" in line for line in lines)
    assert "Traceback" not in captured.err


@pytest.mark.parametrize(
    "arguments",
    [
        ["figures"],
        ["figures", "none.yaml"],
        ["nonsense"],
        ["check", "--none"],
        ["work", "no-such-formula"],
        ["work", "spindle-speed", "x=1"],
        ["figures", "."],
    ],
)
def test_a_wrong_call_gives_2_and_no_traceback(arguments, capsys):
    assert main(arguments) == 2
    captured = capsys.readouterr()
    assert captured.err.strip()
    assert "Traceback" not in captured.err


def test_work_lists_every_formula_with_its_source(capsys):
    assert main(["work", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert {one["name"] for one in data["formulas"]} == set(all_formulas())
    for one in data["formulas"]:
        assert one["source"]
        assert one["unit"]
        assert one["inputs"]
    assert main(["work"]) == 0
    assert "source:" in capsys.readouterr().out


def test_work_takes_values_with_their_units(capsys):
    """30 m/min on 12 mm: 1000 v / (pi D) = 796 rpm, a sum one can do by hand."""
    assert main(["work", "spindle-speed", "cutting_speed=30 m/min", "diameter=12 mm", "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert data["value"] * 60 == pytest.approx(795.77, abs=0.01)
    assert data["unit"] == "rev/s"
    assert any("pi" in line for line in data["working"])
    assert main(["work", "spindle-speed", "cutting_speed=100 ft/min", "diameter=1/2 in"]) == 0
    assert "764 rpm" in capsys.readouterr().out  # 12 V / (pi D), the inch form


@pytest.mark.parametrize(
    ("inputs", "says"),
    [
        # 2 thou × 4 teeth × 500 rpm is 4 in a minute, in one's head; 0.05 mm likewise is 100 mm.
        (["table-feed", "feed_per_tooth=2 thou", "teeth=4", "spindle_speed=500 rpm"], "v_f = 4.00 in/min"),
        (["table-feed", "feed_per_tooth=0.05 mm", "teeth=4", "spindle_speed=500 rpm"], "v_f = 100 mm/min"),
        # 3.1416 × 0.5 / 12 × 764: 100 feet a minute.
        (["cutting-speed", "spindle_speed=764 rpm", "diameter=1/2 in"], "v_c = 100 ft/min"),
        # What was put in is repeated as it was written.
        (["table-feed", "feed_per_tooth=2 thou", "teeth=4", "spindle_speed=500 rpm"], "f_z = 2.00 thou"),
        # 10 lbf·ft at 525 rpm: a horsepower is torque times speed over 5252.
        (["power-from-torque", "torque=10 lbf ft", "spindle_speed=525.2 rpm"], "P = 1.000 hp"),
    ],
)
def test_work_answers_in_the_units_of_its_inputs(inputs, says, capsys):
    assert main(["work", *inputs]) == 0
    assert says in capsys.readouterr().out


def test_work_takes_drills_by_their_names(capsys):
    """ASME B94.11M: #49 is 0.0730 in. On M2 x 0.4 (major 2 mm) it leaves (2 −
    1.8542) / (1.299 × 0.4) = 28 %.
    """
    assert main(["work", "percent-of-thread", "hole=#49", "major=2 mm", "pitch=0.4 mm"]) == 0
    out = capsys.readouterr().out
    assert "#49 = 1.854 mm = 0.0730 in" in out
    assert "= 0.2806" in out
    assert main(["work", "cutting-speed", "spindle_speed=500 rpm", "diameter=H"]) == 0
    assert "H = 6.756 mm = 0.2660 in" in capsys.readouterr().out
    assert main(["work", "cutting-speed", "spindle_speed=500 rpm", "diameter=#99"]) == 2
    assert "There is no drill #99" in capsys.readouterr().err


def test_work_gives_both_answers_where_both_systems_were_put_in(capsys):
    assert main(["work", "cone-diameter", "depth=1/2 in", "point_angle=90°", "tip=1 mm"]) == 0
    assert "D_e = 1.04 in = 26.4 mm" in capsys.readouterr().out


def test_work_takes_units_beyond_the_table(capsys):
    assert main(["work", "spindle-speed", "cutting_speed=0.5 km/hour", "diameter=12 mm", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["value"] == pytest.approx(
        500 / 3600 / (3.14159265 * 0.012), rel=1e-6
    )


@pytest.mark.parametrize(
    ("inputs", "says"),
    [
        (["cutting_speed=30 m/min"], "still needs diameter"),
        (["cutting_speed=30 kg", "diameter=12 mm"], "is a mass"),
        (["cutting_speed", "diameter=12 mm"], "is not name=value"),
        (["cutting_spead=30 m/min", "diameter=12 mm"], "did you mean cutting_speed"),
        (["cutting_speed=30 m/min", "diameter=0 mm"], "above zero"),
        (["cutting_speed=30 m/min", "diameter=-1 mm"], "above zero"),
    ],
)
def test_work_says_what_is_missing_or_wrong(inputs, says, capsys):
    assert main(["work", "spindle-speed", *inputs]) == 2
    assert says.lower() in capsys.readouterr().err.lower()


def test_help_of_every_verb(capsys):
    for verb in ("figures", "check", "sheet", "work", "open"):
        assert main([verb, "--help"]) == 0
    assert main(["--help"]) == 0
    assert "Exit codes" in capsys.readouterr().out
