"""The planted mistakes of the demo scenario that concern holes, places, dials and holding: each
brings its remark, and its fix mends it.

Messages and numbers are the scenario's (demo scenario, the tables under each
part, and sequencing rules section 7).
"""

from __future__ import annotations

import pytest

from jobsheet.review.engine import rules
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import edited, remarks

PLATE, SLIDE, PIVOT, COVER = (
    "hm-100-drilled-plate-b1",
    "hm-102-slide-plate",
    "hm-103-pivot-block",
    "hm-104-cover-plate",
)
PLANTED = {
    "tap under power on B-1": (
        PLATE,
        [("tap", "method", "under power")],
        "no-power-tap-without-reverse",
        "This machine does not reverse: tap by hand",
    ),
    "op 60 before op 50": (
        PLATE,
        [("drill", "move to", "4")],
        "spot-before-drilling",
        "Spot before drilling",
    ),
    "spot taken out": (
        PIVOT,
        [("spot-bore", "take out", "")],
        "spot-before-drilling",
        "Spot before drilling: the drill will wander",
    ),
    "drill 5.5 for 5.0": (
        PLATE,
        [("drill", "cutter", "drill 5.5")],
        "thread-height-in-bounds",
        "Thread would be 38 %",
    ),
    "chamfer taken out before the tap": (
        PIVOT,
        [("spot-threads", "to", "4")],
        "chamfer-before-tap",
        "before M8 is tapped",
    ),
    "facing after the holes": (
        PLATE,
        [("face-finish", "move to", "5")],
        "face-before-holes",
        "Face first, then drill",
    ),
    "parallels under a hole": (
        SLIDE,
        [("holding:set-up-3", "parallel_width", "8 mm")],
        "clear-below-a-through-hole",
        "No room under step",
    ),
    "rear side from the high side": (
        SLIDE,
        [("slot-rear", "how", "from the high side")],
        "slack-taken-up",
        "Backlash is not taken up: back off 0.015 in or more and come up",
    ),
    "holes from hole 1": (
        SLIDE,
        [("zero:set-up-3", "stands_on", "another hole")],
        "positions-from-the-datum",
        "measure each place from the datum",
    ),
    "counterbore before its hole": (
        SLIDE,
        [("counterbore", "move to", "3")],
        "hole-before-its-counterbore",
        "Drill the hole first",
    ),
    "finder without its tip": (
        SLIDE,
        [("find-zero", "cutter", "edge finder, drawer 6 no. 1")],
        "half-the-edge-finder",
        "half of it goes into the zero",
    ),
    "12.0 deleted": (
        PIVOT,
        [("bore-12", "take out", "")],
        "small-step-before-the-reamer",
        "15.7 mm after 6 mm takes much at once; from solid the hand would need 356 N",
    ),
    "ream before drill 15.7": (
        PIVOT,
        [("ream", "move to", "4")],
        "hole-steps-in-rising-order",
        "Nothing to ream yet: drill 15.7",
    ),
    "reamed hole drilled to size": (
        PIVOT,
        [("ream", "take out", ""), ("bore-15-7", "cutter", "drill 16.0"), ("bore-15-7", "measure", "16 H7")],
        "ream-or-bore-a-close-hole",
        "A drill does not hold 16 H7",
    ),
    "too little for the reamer": (
        PIVOT,
        [("bore-15-7", "cutter", "drill 15.9")],
        "reaming-allowance",
        "0.1 mm on the diameter",
    ),
    "deep pilot in one go": (PIVOT, [("pilot", "peck", "")], "pecks-for-depth", "in pecks"),
    "no room below the thread": (
        PIVOT,
        [("drill-threads", "depth", "17")],
        "room-below-the-thread",
        "drill 19.75 mm deep",
    ),
    "pilot 3.0 deleted before 9.0": (
        COVER,
        [("pilot-middle", "take out", ""), ("drill-middle", "take out", "")],
        "pilot-for-a-large-drill",
        "the hand would need 278 N: drill a pilot of 3 mm first",
    ),
    "all straps off before the screws": (
        COVER,
        [("screw", "one_at_a_time", "no")],
        "one-clamp-at-a-time",
        "free between these two steps",
    ),
    "slug screw deleted": (
        COVER,
        [("slug", "take out", "")],
        "hold-the-slug",
        "The loose middle will jam and fly: hold it or leave tabs",
    ),
    "sheet on blocks under straps": (
        COVER,
        [("holding:set-up-1", "rests_on", "packing"), ("holding:set-up-1", "supported", "")],
        "support-under-each-clamp",
        "Support the work under each clamp",
    ),
}


@pytest.mark.parametrize("name", list(PLANTED))
def test_a_planted_mistake_brings_its_remark_and_its_fix_mends_it(samples, name):
    sample, edits, rule, words = PLANTED[name]
    job = edited(read_job(samples / f"{sample}.yaml"), edits)
    found = [one for one in remarks(job) if one.rule == rule]
    assert found
    assert words in found[0].message
    assert found[0].fix is not None
    assert rule not in {one.rule for one in remarks(found[0].fix.mend(job))}


@pytest.mark.parametrize("sample", [PLATE, "hm-101-setting-block", SLIDE, PIVOT, COVER])
def test_the_plans_themselves_bring_none_of_these_remarks_with_the_solids_asked(samples, sample):
    found = {one.rule for one in remarks(read_job(samples / f"{sample}.yaml"), solids=True)}
    ours = {
        rule.id
        for rule in rules()
        if rule.check.__module__.split(".")[3] in ("holes", "threads", "holding", "position", "stages")
    }
    assert len(ours) > 50
    assert not found & ours


@pytest.mark.parametrize(
    ("edits", "rule"),
    [
        # Hole 4 counted over the far edge of a plate that was milled to 60.
        ([("drill", "at", "10, 62"), ("counterbore", "take out", "")], "hole-off-the-work"),
        # 6.6 and 6.6 with centres 5 apart.
        ([("drill", "at", "10, 10; 50, 10"), ("spot", "take out", ""), ("counterbore", "take out", ""), ("drill", "add drill", ""), ("drill-1", "at", "15, 10")], "holes-run-together"),
        # 3.3 of radius at 3.8 from the edge leaves half a millimetre.
        ([("drill", "at", "10, 3.8"), ("counterbore", "take out", "")], "thin-metal-beside-a-hole"),
        # The end is 60 long, and 20 are reckoned.
        ([("end-b", "length", "20")], "removal-agrees-with-the-figures"),
        # A smaller drill at the same place.
        ([("counterbore", "take out", ""), ("drill", "add drill", ""), ("drill-1", "cutter", "drill 5"), ("drill-1", "at", "10, 10")], "cuts-only-air"),
    ],
)  # fmt: skip
def test_what_the_real_solids_find(samples, edits, rule):
    job = edited(read_job(samples / "hm-102-slide-plate.yaml"), edits)
    told = {one.rule for one in remarks(job, solids=True)}
    assert rule in told


def test_a_step_that_is_deeper_than_the_work_stands_out_meets_the_jaws(samples):
    """The side at the fixed jaw, 4 over the jaws, milled 5 deep after 0.5 came off the top;
    the mend sets it a millimetre clear.

    5 + 0.4 + 0.1 + 1 = 6.5 over the jaws as it was set in.
    """
    job = edited(
        read_job(samples / "hm-100-drilled-plate-b1.yaml"),
        [
            ("face-finish", "add side-mill", ""),
            ("side-mill-1", "cutter", "end mill 12, 4 teeth"),
            ("side-mill-1", "side", "rear"),
            ("side-mill-1", "width", "3"),
            ("side-mill-1", "depth", "5"),
            ("holding:set-up-1", "above_jaws", "4"),
        ],
    )
    found = [one for one in remarks(job, solids=True) if one.rule == "keep-clear-of-the-jaws"]
    assert found
    assert found[0].fix is not None
    mended = found[0].fix.mend(job)
    assert mended.set_ups[0].holding.above_jaws.text == "6.5"
    assert "keep-clear-of-the-jaws" not in {one.rule for one in remarks(mended, solids=True)}
