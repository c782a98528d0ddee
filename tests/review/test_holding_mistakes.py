"""The mistakes in holding and zero that the trade knows best, each planted
alone: each is said, and said once.
"""

from __future__ import annotations

import json

import pytest

from jobsheet.__main__ import main
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import write_job
from tests.review.test_rules import edited

H = "holding:set-up-1"
LIST = [
    ("edge finding forgotten", "hm-100-drilled-plate-b1", [("find-zero", "take out", "")], "find-the-zero-here"),
    (
        "unequal parallels", "hm-100-drilled-plate-b1",
        [(H, "parallels", "10 mm"), (H, "other_parallel", "9 mm")], "parallels-of-one-height",
    ),
    ("packing lower than the work", "hm-100-drilled-plate-b1", [(H, "kind", "straps"), (H, "heel_level", "-3 mm")], "packing-not-lower"),
    ("wider than the vice opens", "hm-100-drilled-plate-b1", [("job:stock", "width", "120 mm")], "wider-than-the-vice-opens"),
    ("170 mm in a vice of 150", "hm-100-drilled-plate-k2", [("job:stock", "width", "170 mm")], "wider-than-the-vice-opens"),
    ("drill longer than the room below", "hm-100-drilled-plate-b1", [(H, "parallels", "2 mm")], "room-for-the-point"),
    (
        "stud in the path", "hm-100-drilled-plate-b1",
        [
            (H, "kind", "straps"), (H, "press_on", "a step"), (H, "at", "5, 25; 75, 25"), (H, "bolt_to_nose", "28 mm"),
            (H, "strap_width", "30 mm"), (H, "strap_thickness", "6 mm"), (H, "stud_above", "45 mm"),
        ],
        "clamps-out-of-the-path",
    ),
    ("screw in the path", "hm-100-drilled-plate-b1", [(H, "kind", "fixture plate"), (H, "at", "40, 25"), (H, "screw", "M6")], "clamps-out-of-the-path"),
    ("speed of the edge finder", "hm-100-drilled-plate-b1", [("find-zero", "spindle", "1450 rpm")], "slow-down-for-the-edge"),
    ("bar forgotten at the moving jaw", "hm-101-setting-block", [("holding:set-up-2", "bar", "no")], "bar-at-the-moving-jaw"),
    ("half the held length hanging over", "hm-100-drilled-plate-b1", [(H, "over_left", "40 mm"), (H, "over_right", "0 mm")], "overhang-past-the-jaws"),
    ("held by hand", "hm-100-drilled-plate-b1", [(H, "kind", "hand vice")], "hand-vice-for-small-drills"),
    ("nothing holds it", "hm-100-drilled-plate-b1", [(H, "kind", "nothing yet")], "hold-before-drilling"),
    (
        "40 deep with 3 above the jaws", "hm-100-drilled-plate-b1",
        [
            ("job:stock", "height", "60 mm"), (H, "above_jaws", "3 mm"), (H, "over_left", "0 mm"), (H, "over_right", "0 mm"),
            ("drill", "add side-mill", ""), ("side-mill-1", "side", "left"), ("side-mill-1", "depth", "40 mm"), ("side-mill-1", "width", "5 mm"),
        ],
        "cutter-clear-of-the-jaw-ends",
    ),
    (
        "straps left in the path", "hm-104-cover-plate",
        [("screw", "take out", ""), ("slug", "take out", ""), (H, "at", "8, 42; 118, 42; 62, 8; 62, 76")], "clamps-out-of-the-path",
    ),
    ("zero lost when unclamped", "hm-100-drilled-plate-b1", [("spot", "do", "take out, put back")], "zero-again-after-taking-out"),
    ("burrs left before the next hold", "hm-101-setting-block", [("edges-1", "take out", "")], "burrs-off-before-the-next-hold"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "job", "edits", "rule"), LIST, ids=[one[0] for one in LIST])
def test_check_says_it_once(samples, tmp_path, capsys, name, job, edits, rule):
    path = tmp_path / f"{job}.yaml"
    path.write_text(write_job(edited(read_job(samples / path.name), edits)), encoding="utf-8")
    main(["check", str(path), "--json"])
    said = [one["rule"] for one in json.loads(capsys.readouterr().out)["remarks"]]
    assert said.count(rule) == 1, (name, said)


def test_what_is_not_said_of_a_holding_is_said_once(samples, tmp_path, capsys):
    """How high it stands and how tight the vice is was left out: what rests on that was
    not checked, and the answer says so.
    """
    path = tmp_path / "plate.yaml"
    edits = [(H, "above_jaws", ""), (H, "tighten", "")]
    path.write_text(
        write_job(edited(read_job(samples / "hm-100-drilled-plate-b1.yaml"), edits)), encoding="utf-8"
    )
    main(["check", str(path)])
    line = "to be said yet of the holding in set-up 1: above the jaws, tighten to; what rests on that was not checked"
    assert capsys.readouterr().out.count(line) == 1
