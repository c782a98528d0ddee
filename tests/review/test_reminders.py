"""Reminders: every row can be read, the demo jobs print what the scenario
lists, and none is a wall of text.
"""

import re

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.paths import resources, sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.notes import reminders
from jobsheet.review.notes.reminders import BESIDE, reminders_for, rows
from jobsheet.review.notes.trigger_text import parsed
from jobsheet.storage.job_file import read_job


def found(name):
    job = read_job(sample_jobs() / f"{name}.yaml")
    return job, reminders_for(job, Reckoner().reckon(job))


def ids(said):
    return {
        row.id
        for group in (*said.set_ups.values(), *said.ticks.values(), *said.steps.values(), said.sheet)
        for row in group
    }


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.id)
def test_every_row_can_be_read(row):
    parsed(row.trigger)
    assert row.where in ("sheet", "set-up", "step", "tick", "trainee")
    assert row.source
    assert not any(word in row.text.lower().split() for word in ("safe", "approved", "guaranteed"))


@pytest.mark.parametrize(
    ("name", "wanted"),
    [
        # Demo scenario: "Reminders printed" of each part, as far as they are reminders and not safety notes.
        ("hm-101-setting-block", {"third-side-hold", "same-pair-of-parallels", "upright-by-a-square", "clean-up-then-measure"}),
        ("hm-102-slide-plate", {"slack-before-the-second-side", "every-position-from-zero", "zero-the-dials-too", "say-which-turn"}),
        (
            "hm-103-pivot-block",
            {"clean-out-before-tapping", "start-the-tap-in-line", "back-off-the-hand-tap", "never-turn-a-reamer-back", "finish-the-hole-before-moving", "cast-iron-dry"},
        ),
        ("hm-104-cover-plate", {"keep-the-drill-cutting", "inside-walls-clockwise", "bolt-close-to-the-work"}),
    ],
)  # fmt: skip
def test_the_demo_jobs_print_what_the_scenario_lists(name, wanted):
    assert wanted - ids(found(name)[1]) == set()


@pytest.mark.parametrize("path", sorted(sample_jobs().glob("*.yaml")), ids=lambda path: path.stem)
def test_each_is_said_once_in_a_set_up_and_few_stand_beside_a_step(path):
    job, said = found(path.stem)
    for set_up in job.set_ups:
        told = [row.id for operation in set_up.operations for row in said.steps[operation.key]]
        assert len(told) == len(set(told))
        assert all(len(said.steps[operation.key]) <= BESIDE for operation in set_up.operations)


BENCH, KNEE = "hm-100-drilled-plate-b1", "hm-103-pivot-block"


@pytest.mark.parametrize(("size", "said"), [("7.6", False), ("7.7", True)])
def test_a_card_may_note_its_largest_drill_in_inches(own_home, size, said):
    """Eight tenths of 3/8 in (9.525 mm) are 7.62 mm."""
    card = (resources() / "machines" / "bench-mill-b-1.yaml").read_text("utf-8")
    (own_home / "machines").mkdir(parents=True)
    (own_home / "machines" / "inch-mill.yaml").write_text(
        re.sub("^largest drill: .*$", "largest drill: 3/8 in in steel", card, flags=re.MULTILINE), "utf-8"
    )
    job = SetField("drill", "cutter", f"drill {size} mm").apply(
        replace(read_job(sample_jobs() / f"{BENCH}.yaml"), machine="inch-mill")
    )
    found = reminders_for(job, Reckoner().reckon(job))
    assert ("near-the-largest-drill" in {row.id for row in found.steps["drill"]}) is said


@pytest.mark.parametrize(
    ("name", "key", "edits", "row", "said"),
    [
        # Eight tenths of what the card notes as the largest drill: 8 of 10 mm, 16 of 20 mm, and only a drill.
        (BENCH, "drill", {"cutter": "drill 8 mm"}, "near-the-largest-drill", False),
        (BENCH, "drill", {"cutter": "drill 8.1 mm"}, "near-the-largest-drill", True),
        (KNEE, "bore-15-7", {"cutter": "drill 16 mm"}, "near-the-largest-drill", False),
        (KNEE, "bore-15-7", {"cutter": "drill 16.1 mm"}, "near-the-largest-drill", True),
        (KNEE, "chamfer", {}, "near-the-largest-drill", False),
        # Deep from eight diameters: 40 in a hole of 5 is not, 40.5 is.
        (KNEE, "drill-threads", {"cutter": "drill 5 mm", "depth": "40"}, "deep-hole", False),
        (KNEE, "drill-threads", {"cutter": "drill 5 mm", "depth": "40.5"}, "deep-hole", True),
        # Ten degrees more are 12e-5 of steel, 23e-5 of aluminium: said where they are
        # over a quarter of the limits' width.
        ("hm-101-setting-block", "face-4-finish", {"measure": "40 ±0.0097"}, "let-it-cool", False),
        ("hm-101-setting-block", "face-4-finish", {"measure": "40 ±0.0095"}, "let-it-cool", True),
        ("hm-102-slide-plate", "edge-opposite", {"measure": "60 ±0.0277"}, "let-it-cool", False),
        ("hm-102-slide-plate", "edge-opposite", {"measure": "60 ±0.0275"}, "let-it-cool", True),
    ],
)
def test_what_a_step_reminds_of_begins_right_behind_its_limit(monkeypatch, name, key, edits, row, said):
    monkeypatch.setattr(reminders, "BESIDE", 99)
    job = read_job(sample_jobs() / f"{name}.yaml")
    for field, text in edits.items():
        job = SetField(key, field, text).apply(job)
    found = reminders_for(job, Reckoner().reckon(job))
    assert (row in {one.id for one in found.steps[key]}) is said
