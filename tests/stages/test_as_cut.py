"""What is said of the sizes alone is what the solids say: never that all is as drawn where a piece is left or cut away."""

from __future__ import annotations

import pytest

from jobsheet.errors import JobsheetError
from jobsheet.finished.finished_part import finished_part
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.stages import part_facts
from jobsheet.stages.course import course_of
from jobsheet.stages.part_solid import as_cut, differences
from jobsheet.stages.solids import Modeller
from jobsheet.storage.job_file import read_job
from tests.stages.parts_made import PIVOT, SAMPLES, typed, without

#: Fields that say where a step cuts and how far, and what is typed into them.
SPOILT = {
    "depth": ("0.7 mm", "4.95 mm", "5.02 mm", "9.5 mm", "14 mm"),
    "width": ("19.98 mm", "20.02 mm", "3 mm"),
    "diameter": ("4.1 mm", "5.05 mm", "6 mm", "9.8 mm", "12.5 mm"),
    "size": ("0.2 mm", "3 mm"),
    "at": ("10 mm, 10 mm", "20.02 mm, 15 mm"),
    "tool": ("drill 4.5 mm", "drill 9 mm"),
    "cutter": ("drill 4.5 mm", "drill 5.3 mm", "reamer 10 mm", "countersink 16 mm, 90°"),
}


def made(job):
    reckoned = Reckoner().reckon(job)
    return Modeller().stages(course_of(reckoned.job, reckoned.settings)), finished_part(reckoned.job)


def pieces(stages, part):
    return [one for one in differences(stages, part, within_limits=True) if one.what in ("left", "cut away")]


@pytest.mark.parametrize("number", ["100-drilled-plate-b1", "100-drilled-plate-k2", "101", "103"])
def test_of_samples_of_plain_holes_and_steps_it_is_certain(number):
    (path,) = (one for one in SAMPLES if number in one.name)
    stages, part = made(read_job(path))
    assert as_cut(stages, part)
    assert pieces(stages, part) == []


@pytest.mark.parametrize("number", ["102", "104"])
def test_of_slots_and_windows_the_solids_are_asked(number):
    (path,) = (one for one in SAMPLES if number in one.name)
    stages, part = made(read_job(path))
    assert not as_cut(stages, part)
    assert pieces(stages, part) == []


def test_the_solids_of_the_part_are_not_made_where_it_is_certain(monkeypatch):
    stages, part = made(read_job(PIVOT))
    monkeypatch.setattr(part_facts, "differences", lambda *_, **__: pytest.fail("they were made"))
    assert part_facts.part_facts(stages, part) == []


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_where_a_step_is_out_or_cuts_elsewhere_it_is_never_said_against_the_solids(path):
    job = read_job(path)
    asked = certain = 0
    for _, step in job.operations():
        spoilt = [without(job, step.key)]
        for name, texts in SPOILT.items():
            for text in texts if hasattr(step.fields, name) else ():
                try:
                    spoilt.append(typed(job, step.key, **{name: text}))
                except JobsheetError:
                    continue
        for one in spoilt:
            stages, part = made(one)
            if len(stages) < 2 or any(stage.failed for stage in stages):
                continue
            asked += 1
            if as_cut(stages, part):
                certain += 1
                assert pieces(stages, part) == [], step.key
    assert asked > 5
    assert certain < asked
