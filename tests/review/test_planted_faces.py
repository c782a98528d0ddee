"""The planted mistakes of the demonstration (demo scenario, sections 3b to 7) that have to do
with faces, order, cuts and measuring.

Each brings its remark, its fix mends it, and the plan without the mistake has no remark at all.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.edit.step_commands import MoveSetUp
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import review
from jobsheet.storage.job_file import read_job

HM100, HM101, HM102, HM103, HM104 = (
    "hm-100-drilled-plate-b1", "hm-101-setting-block", "hm-102-slide-plate", "hm-103-pivot-block", "hm-104-cover-plate",
)  # fmt: skip


def remarks(job):
    return review(job, Reckoner().reckon(job))


def sides_swapped(job):
    return MoveSetUp("set-up-3", 1).apply(job)


def threads_before_the_left_end(job):
    """Steps 80 to 90 in a hold of their own before set-up 4, where the left end is cut."""
    home = next(one for one in job.set_ups if one.key == "set-up-5")
    index = next(i for i, one in enumerate(job.set_ups) if one.key == "set-up-4")
    cut = tuple(one for one in home.operations if one.number < 80)
    alone = replace(home, key="threads", operations=tuple(one for one in home.operations if one.number >= 80))
    rest = tuple(replace(one, operations=cut) if one.key == home.key else one for one in job.set_ups)
    return replace(job, set_ups=(*rest[:index], alone, *rest[index:]))


def fields(*edits):
    def plant(job):
        for owner, name, text in edits:
            job = SetField(owner, name, text).apply(job)
        return job

    return plant


def slot_in_one_pass(job):
    job = SetField("slot", "cutter", "slot drill 10 mm, 30 mm out, drawer 2 no. 1").apply(job)
    for key in ("slot-front", "slot-rear"):
        job = DeleteSteps((key,)).apply(job)
    return job


def without(key):
    return lambda job: DeleteSteps((key,)).apply(job)


#: Sample, mistake, the remark's id, words of it, whether it has a fix (table of the sequencing rules).
PLANTED = [
    pytest.param(HM101, sides_swapped, "face-before-its-use", "Datum B, the front face, does not exist yet", True, id="sides 40 and 50 swapped"),
    pytest.param(HM101, fields(("setup:set-up-3", "fixed_jaw", "bottom")), "machined-face-to-fixed-jaw", "Machined face to the fixed jaw", True, id="raw face to the fixed jaw"),
    pytest.param(HM101, fields(("face-1-rough", "depth", "0.1")), "first-cut-under-the-skin", "get under the skin", True, id="first cut 0.1 on the black face"),
    pytest.param(HM101, lambda job: MoveSetUp("set-up-5", 0).apply(job), "best-face-first", "Face the largest or flattest face first", True, id="an end first"),
    pytest.param(HM101, lambda job: MoveSetUp("set-up-5", 0).apply(job), "sides-before-ends", "Square the sides before the ends", True, id="an end stood up by raw sides"),
    pytest.param(HM101, fields(("holding:set-up-3", "bar", "no")), "bar-at-the-moving-jaw", "Round bar between", True, id="no round bar"),
    pytest.param(HM101, fields(("face-4-finish", "how", "")), "measure-before-unclamping", "Measure now, before you unclamp", True, id="not measured"),
    pytest.param(HM101, fields(("job:stock", "width", "60"), ("face-4-rough", "depth", "18.8")), "saw-the-bulk-first", "Much metal here", True, id="a larger bar"),
    pytest.param(HM102, slot_in_one_pass, "undersize-cutter-for-a-close-slot", "Smaller cutter: middle first", True, id="slot in one pass with the 10 mm cutter"),
    pytest.param(HM103, threads_before_the_left_end, "face-before-its-use", "Datum C, the left face, does not exist yet", True, id="threads before the left end"),
    pytest.param(HM103, fields(("base-skin", "depth", "0.2")), "first-cut-under-the-skin", "on a cast skin, under it is 1 mm or more", True, id="0.2 on the cast skin"),
    pytest.param(HM104, without("entry"), "entry-for-a-closed-slot", "Drill an entry hole", True, id="entry hole taken out"),
    pytest.param(HM104, fields(("holding:set-up-1", "rests_on", "")), "back-up-thin-sheet", "Back it with wood or scrap", True, id="no backing"),
]  # fmt: skip


@pytest.mark.parametrize(("sample", "plant", "rule", "words", "mends"), PLANTED)
def test_a_planted_mistake_brings_its_remark_and_the_fix_mends_it(samples, sample, plant, rule, words, mends):
    job = plant(read_job(samples / f"{sample}.yaml"))
    found = next(one for one in remarks(job) if one.rule == rule)
    assert words in found.message
    assert (found.fix is not None) == mends
    if found.fix is not None:
        after = found.fix.mend(job)
        assert rule not in {one.rule for one in remarks(after)}


@pytest.mark.parametrize("sample", [HM100, HM101, HM102, HM103, HM104])
def test_the_right_plan_has_no_remark(samples, sample):
    assert remarks(read_job(samples / f"{sample}.yaml")) == ()


def test_a_depth_that_rang_before_is_beyond_or_warned_of(samples):
    """HM-101: 2.5 typed in step 20 asks 9.93 N/µm, and B-1 rang at 7.55 with another
    cutter (scenario, sections 3 and 4).
    """
    job = SetField("face-1-rough", "depth", "2.5").apply(read_job(samples / f"{HM101}.yaml"))
    found = review(job, Reckoner(learns=True).reckon(job))
    about = [one for one in found if one.operations[:1] == ("face-1-rough",) and one.rule == "nothing-beyond"]
    assert about
    assert "beyond" in about[0].message
    after = about[0].fix.mend(job)
    assert not [
        one for one in review(after, Reckoner(learns=True).reckon(after)) if one.rule == "nothing-beyond"
    ]
