"""What the solids say: nothing of the plate, and each planted fault by its kind and its step."""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages.checks import contact, made_facts, masses, not_checked, place_facts, volume_facts
from jobsheet.stages.course import course_of
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import read_job

PLATE = read_job(sample_jobs() / "hm-100-drilled-plate-b1.yaml")


def stages(job=PLATE):
    reckoned = Reckoner().reckon(job)
    return Modeller().stages(course_of(reckoned.job, reckoned.settings))


def test_the_plate_has_no_fault():
    found = stages()
    assert place_facts(found) == []
    assert made_facts(found) == []


def test_a_hole_beside_the_work_lies_off_it():
    found = place_facts(stages(SetField("drill", "at", "200, 12").apply(PLATE)))
    assert {(fact.kind, fact.key) for fact in found} >= {("off-the-work", "drill")}


def test_a_figure_that_is_not_the_volume_is_told():
    found = stages()
    right = {one.cut.key: one.removed for one in found[1:] if one.cut is not None}
    assert [fact for fact in volume_facts(found, right) if fact.kind == "volume-differs"] == []
    wrong = {**right, "face-rough": 3 * right["face-rough"]}
    assert [
        (fact.kind, fact.key) for fact in volume_facts(found, wrong) if fact.kind == "volume-differs"
    ] == [("volume-differs", "face-rough")]


def test_stock_is_part_and_chips():
    """7850 kg/m³ of a block."""
    found = stages()
    stock, part, chips = masses(found, 7850)
    assert stock == pytest.approx(part + chips)
    assert stock == pytest.approx(found[0].volume * 7850)
    assert 0 < chips < stock


def test_all_of_a_raw_face_is_there():
    found = stages()
    lie = found[1].cut.before
    assert contact(found[0], lie, "front") == pytest.approx(1.0, abs=1e-6)
    assert not_checked("drill", "why").about == "why"
