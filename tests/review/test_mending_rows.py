"""Where a step stands after a fix, and what its number is; lines of tools; remarks
that a change ends, leaves and brings.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from msgspec.structs import replace

from jobsheet.model.remark import Remark
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.mending import at_hand, fixes, line_texts
from jobsheet.review.mending.added_hole import drilled_before, spotted_before
from jobsheet.review.mending.edge_holes import breaks_out
from jobsheet.review.mending.fix_tried import FixTried, _brought
from jobsheet.review.mending.fix_words import by_hand, ends_and_leaves, refusal, together
from jobsheet.review.mending.fixes import NotMended
from jobsheet.review.mending.pilot_first import sizes
from jobsheet.review.mending.same_place import Differing, differing, place
from jobsheet.review.mending.split_cut import split_off, where_it_belongs
from jobsheet.review.mending.zero_step import finding_texts
from jobsheet.review.plan.faces import plan_of
from jobsheet.review.rule import View
from jobsheet.storage.job_file import read_job
from jobsheet.units.table import INCH
from tests.review.test_rules import edited

PLATE, BLOCK, SLIDE, COVER = (
    read_job(sample_jobs() / f"{name}.yaml")
    for name in (
        "hm-100-drilled-plate-b1",
        "hm-101-setting-block",
        "hm-102-slide-plate",
        "hm-104-cover-plate",
    )
)


def rows(job):
    return [(one.key, one.number) for _, one in job.operations()]


def keys(job):
    return [one.key for _, one in job.operations()]


# --- where it stands ---


@pytest.mark.parametrize(
    ("mend", "order"),
    [
        (fixes.moved_before("tap", "spot"), "clamp face-rough face-finish find-zero tap spot drill finish"),
        (fixes.moved_after("spot", "tap"), "clamp face-rough face-finish find-zero drill tap spot finish"),
        (fixes.all_moved_before(("drill", "tap"), "spot"), "clamp face-rough face-finish find-zero drill tap spot finish"),
        (fixes.all_moved_after(("face-rough", "face-finish"), "tap"), "clamp find-zero spot drill tap face-rough face-finish finish"),
        (fixes.moved_before("finish", "clamp"), "finish clamp face-rough face-finish find-zero spot drill tap"),
        (fixes.moved_after("clamp", "finish"), "face-rough face-finish find-zero spot drill tap finish clamp"),
        (fixes.moved_after("spot", "spot"), "clamp face-rough face-finish find-zero spot drill tap finish"),
        (fixes.all_moved_before((), "spot"), "clamp face-rough face-finish find-zero spot drill tap finish"),
        (fixes.taken_out("spot"), "clamp face-rough face-finish find-zero drill tap finish"),
    ],
)  # fmt: skip
def test_a_step_stands_right_before_or_right_behind_the_other(mend, order):
    made = mend(PLATE)
    assert keys(made) == order.split()
    if len(keys(made)) == len(keys(PLATE)):
        assert [number for _, number in rows(made)] == [10, 20, 30, 40, 50, 60, 70, 80]


@pytest.mark.parametrize(
    ("mend", "number", "position"),
    [
        (fixes.added_before("clamp", "bench-step", {}), 5, 0),
        (fixes.added_after("clamp", "bench-step", {}), 15, 1),
        (fixes.added_before("face-rough", "bench-step", {}), 15, 1),
        (fixes.added_after("finish", "bench-step", {}), 90, 8),
    ],
)
def test_a_new_step_stands_at_its_place_with_a_number_between(mend, number, position):
    assert rows(mend(PLATE))[position] == ("bench-step-1", number)


def test_where_fives_are_taken_the_middle_number_is_next_and_then_the_nearest_free_one_above():
    job = PLATE
    for expected in (15, 17, 18, 19):
        job = fixes.added_before("face-rough", "bench-step", {})(job)
        assert rows(job)[keys(job).index("face-rough") - 1][1] == expected
    job = fixes.added_before("face-rough", "bench-step", {})(job)
    assert rows(job)[keys(job).index("face-rough") - 1][1] == 21


def test_a_second_new_step_has_the_next_key():
    job = fixes.added_after("spot", "bench-step", {})(fixes.added_after("spot", "bench-step", {})(PLATE))
    assert [key for key in keys(job) if key.startswith("bench-step")] == ["bench-step-2", "bench-step-1"]


def test_a_set_up_goes_before_or_behind_another_and_they_are_numbered_anew():
    before = fixes.moved_set_up("set-up-4", "set-up-2")(BLOCK)
    assert [one.key for one in before.set_ups][:4] == ["set-up-1", "set-up-4", "set-up-2", "set-up-3"]
    behind = fixes.moved_set_up("set-up-1", "set-up-3", behind=1)(BLOCK)
    assert [one.key for one in behind.set_ups][:3] == ["set-up-2", "set-up-3", "set-up-1"]
    for job in (before, behind):
        assert [one.number for one in job.set_ups] == [1, 2, 3, 4, 5, 6, 7]
    assert fixes.moved_set_up("set-up-1", "set-up-1")(BLOCK) == BLOCK
    assert fixes.moved_set_up("set-up-1", "gone")(BLOCK) == BLOCK


def test_a_step_of_another_set_up_comes_in_a_copy_right_before_or_behind_that_set_up():
    for behind, mend in ((0, fixes.moved_before), (1, fixes.moved_after)):
        made = mend("face-4-finish", "face-2-rough")(BLOCK)
        names = [one.key for one in made.set_ups]
        assert names.index("set-up-8") == names.index("set-up-2") - 1 + 2 * behind
        copy = made.set_ups[names.index("set-up-8")]
        assert [one.key for one in copy.operations] == ["face-4-finish"]
        assert replace(copy, key="", number=0, operations=()) == replace(
            BLOCK.set_ups[2], key="", number=0, operations=()
        )


@pytest.mark.parametrize(
    ("owner", "name", "text", "read"),
    [
        ("job", "fluid", "dry", lambda job: job.fluid),
        ("job:part", "revision", "C", lambda job: job.part.revision),
        ("job:stock", "height", "14", lambda job: job.stock.height.text),
        ("holding:set-up-1", "tighten", "25 N·m", lambda job: job.set_ups[0].holding.tighten.text),
        ("holding:set-up-1", "kind", "straps", lambda job: job.set_ups[0].holding.kind),
        ("zero:set-up-1", "named", "A", lambda job: job.set_ups[0].zero.named),
        ("setup:set-up-1", "title", "Other", lambda job: job.set_ups[0].title),
        ("drill", "depth", "9", lambda job: job.find("drill")[1].fields.depth.text),
    ],
)
def test_a_field_is_set_where_it_belongs_and_nowhere_else(owner, name, text, read):
    made = fixes.set_field(owner, name, text)(PLATE)
    assert read(made) == text
    assert read(PLATE) != text


def test_a_field_of_the_job_that_is_emptied_is_an_empty_text():
    assert fixes.set_field("job", "card_hash", "")(PLATE).card_hash == ""


# --- lines of tools ---


def test_a_line_says_one_thing_otherwise_and_keeps_the_rest():
    cutter = SLIDE.find("slot")[1].fields.cutter
    assert line_texts.with_diameter(cutter, "8 mm") == "slot drill 8 mm, 30 mm out"
    assert (
        line_texts.in_a_collet("slot drill 9, in a Drill Chuck, drawer 2")
        == "slot drill 9, in a collet, drawer 2"
    )
    assert (
        line_texts.with_stick_out("end mill 10, 45 mm out, drawer 1", "30 mm")
        == "end mill 10, 30 mm out, drawer 1"
    )
    assert line_texts.with_spiral_flute("taps M8, Spiral point") == "taps M8, spiral flute"
    assert (
        line_texts.in_high_speed_steel("face mill 50, 4 teeth, carbide inserts")
        == "face mill 50, 4 teeth, HSS"
    )
    assert line_texts.without_angle("spot drill 10 mm, 90°, drawer 3") == "spot drill 10 mm, drawer 3"
    assert (
        line_texts.with_micrometer("parallel 0.02; gauge calliper; flat 0.1")
        == "parallel 0.02; gauge micrometer; flat 0.1"
    )


def test_the_tools_of_the_cabinet_lie_between_two_sizes_with_their_ends():
    """The demonstration's cabinet holds drills by tenths from 1 to 13 and the like:
    those of its file, from small to large.
    """
    found = at_hand.at_hand(PLATE, "drill", 4.9e-3, 5.1e-3)
    assert "drill 5.0 mm, drawer 3" in [line for _, line in found]
    assert [size for size, _ in found] == sorted(size for size, _ in found)
    exact = at_hand.at_hand(PLATE, "drill", 5e-3, 5e-3)
    assert [round(size * 1e3, 4) for size, _ in exact] == [5.0]
    assert at_hand.at_hand(PLATE, "spoon", 0.0, 1.0) == ()
    assert at_hand.drill_near(PLATE, 5.02e-3, 4e-3, 6e-3)[1].startswith("drill 5.0 mm")
    assert at_hand.drill_near(PLATE, 5.55e-3, 5.551e-3, 5.552e-3) == (5.55e-3, "drill 5.55 mm")


def test_without_a_cabinet_a_drill_of_an_inch_job_is_one_that_is_sold():
    """ASME B94.11M: 39/64 is 0.6094 in, F 0.257, #7 0.201; where none lies between, the size itself."""
    for wanted, low, high, line in (
        (0.6106, 0.609, 0.6172, "drill 39/64 in"), (0.4375, 0.25, 0.5, "drill 7/16 in"), (0.256, 0.2555, 0.2575, "drill F"),
        (0.2005, 0.2, 0.202, "drill #7"), (0.6118, 0.6115, 0.612, "drill 0.6118 in"),
    ):  # fmt: skip
        size, said = at_hand.drill_sold(wanted * INCH, low * INCH, high * INCH, "in")
        assert said == line
        assert low <= size / INCH <= high
    assert at_hand.drill_sold(5.55e-3, 5e-3, 6e-3, "mm") == (5.55e-3, "drill 5.55 mm")
    bare = replace(PLATE, workshop="", units="in")
    assert at_hand.drill_near(bare, 0.6106 * INCH, 0.609 * INCH, 0.6172 * INCH)[1] == "drill 39/64 in"
    # By thirty-seconds, from a web of 3/8 (0.06 in at least) up to half of it.
    assert [line for _, line in sizes(bare, 3 / 8 * INCH)][-2:] == ["drill 5/32 in", "drill 3/16 in"]


def test_without_a_cabinet_a_pilot_is_taken_by_half_millimetres_up_to_half_the_drill():
    found = [round(size * 1e3, 3) for size, _ in sizes(replace(PLATE, workshop=""), 8e-3)]
    assert found[-1] == 4.0
    assert all(abs(two - one - 0.5) < 1e-9 for one, two in pairwise(found))


# --- holes that are added ---


def test_a_drill_is_put_before_a_step_as_deep_as_ten_of_its_diameters():
    drill = COVER.find("drill")[1]
    setting = Reckoner().reckon(COVER).settings["drill"]
    for cutter, depth, short in (("drill 3.0", "30", False), ("drill 3.0", "30.1", True)):
        texts = {"cutter": cutter, "at": "8, 8", "depth": depth}
        mend = drilled_before(drill, setting, texts)
        if short:
            with pytest.raises(NotMended, match="its flutes end after ten diameters"):
                mend(COVER)
        else:
            assert keys(mend(COVER))[keys(COVER).index("drill")] == "drill-1"


def test_a_spot_is_as_wide_as_asked_and_at_most_nine_tenths_of_its_drill():
    for asked, wide in ((6.4e-3, 6.4e-3), (12e-3, 9e-3)):
        mend, found = spotted_before(PLATE, "drill", "14, 12", asked)
        assert found == pytest.approx(wide)
        made = mend(PLATE).find("spot-drill-1")[1]
        assert made.fields.cutter.text == PLATE.find("spot")[1].fields.cutter.text
    bare = replace(edited(PLATE, [("spot", "take out", "")]), workshop="nobody's")
    assert spotted_before(bare, "drill", "14, 12", 6.4e-3)[0](bare).find("spot-drill-1")[1].fields.cutter.text


def test_a_hole_breaks_out_where_its_edge_lies_over_a_side():
    for at, out in (("2.5, 12", False), ("2.49, 12", True), ("40, 47.5", False), ("40, 47.51", True)):
        job = edited(PLATE, [("drill", "at", at)])
        plan = plan_of(View(job, Reckoner().reckon(job)))
        assert breaks_out(next(one for one in plan.steps if one.key == "drill").cut) is out


def test_a_last_pass_is_split_off_where_there_is_more_than_it():
    """Three tenths are left for a last pass."""
    job = edited(BLOCK, [("face-4-rough", "depth", "0.3")])
    for depth, left in (("0.3", None), ("2", "1.7 mm")):
        job = edited(BLOCK, [("face-4-rough", "depth", depth)])
        step = next(
            one for one in plan_of(View(job, Reckoner().reckon(job))).steps if one.key == "face-4-rough"
        )
        mend = split_off(step, "mm")
        if left is None:
            assert mend is None
            continue
        made = mend(job)
        first, last = (made.find(key)[1].fields for key in ("face-4-rough", "face-1"))
        assert (first.depth.text, last.depth.text) == (left, "0.3 mm")
        assert keys(made).index("face-1") == keys(made).index("face-4-rough") + 1
        assert (last.cutter.text, last.along, last.spindle) == (first.cutter.text, first.along, first.spindle)
    wall = plan_of(View(SLIDE, Reckoner().reckon(SLIDE)))
    end = next(one for one in wall.steps if one.key == "end-b")
    assert split_off(end, "mm")(SLIDE).find("end-b")[1].fields.leave.text == "0.3 mm"
    for wide, there in (("0.3", False), ("0.31", True)):
        job = edited(SLIDE, [("end-b", "width", wide)])
        thin = next(one for one in plan_of(View(job, Reckoner().reckon(job))).steps if one.key == "end-b")
        assert (split_off(thin, "mm") is not None) is there
    assert where_it_belongs(end) == "write the size at step 30, which cuts this face last"
    assert where_it_belongs(None) == ""


def test_a_step_that_finds_the_zero_is_like_the_one_of_its_set_up():
    assert finding_texts(SLIDE, SLIDE.set_ups[2])["cutter"] == SLIDE.find("find-zero")[1].fields.cutter.text
    other = finding_texts(SLIDE, SLIDE.set_ups[3])
    assert set(other) == {"cutter", "edges"}
    assert other["cutter"] == SLIDE.find("find-zero")[1].fields.cutter.text
    assert finding_texts(PLATE, PLATE.set_ups[0]) == {"cutter": "edge finder, 10 mm tip", "edges": "A and B"}
    unnamed = replace(PLATE.set_ups[0], zero=replace(PLATE.set_ups[0].zero, named=""))
    assert finding_texts(PLATE, unnamed)["edges"] == "the right and the rear edge"


# --- what a change ends, leaves and brings ---


def said(rule, *steps, set_up="set-up-1", line=None):
    return Remark(
        rule=rule, severity="scrap", message="m", why="w", operations=steps, set_up=set_up, line=line
    )


def test_a_remark_is_told_by_its_rule_and_first_step_else_its_set_up_else_its_line():
    assert place(said("one", "drill", "tap")) == ("one", "drill")
    assert place(said("one")) == ("one", "set-up-1")
    assert place(said("one", set_up="", line=2)) == ("one", "line 2")
    assert place(said("one", set_up="")) == ("one", "")


def test_each_remark_is_ended_left_or_brought_as_often_as_it_was_said():
    twice, once = said("one", "drill"), said("two", "tap")
    found = differing((twice, twice), (twice, once), PLATE, PLATE)
    assert (found.ends, found.leaves, found.brings) == ((twice,), (twice,), (once,))
    assert differing((twice,), (twice,), PLATE, PLATE).ends == ()


def test_a_remark_that_an_added_step_of_the_same_set_up_takes_over_is_neither_new_nor_ended():
    changed = fixes.added_before("drill", "drill", {"cutter": "drill 3", "at": "14, 12", "depth": "5"})(PLATE)
    old, new = said("spot", "drill"), said("spot", "drill-1")
    found = differing((old,), (new,), PLATE, changed)
    assert (found.ends, found.brings, found.leaves) == ((), (), (new,))
    of_another_rule = said("other", "drill-1")
    assert differing((old,), (of_another_rule,), PLATE, changed).brings == (of_another_rule,)
    elsewhere = fixes.added_before("face-2-rough", "bench-step", {})(BLOCK)
    one, other = said("spot", "face-1-rough"), said("spot", "bench-step-1", set_up="set-up-2")
    assert differing((one,), (other,), BLOCK, elsewhere).brings == (other,)


def test_two_remarks_of_one_rule_pass_on_to_two_added_steps_and_a_third_is_new():
    changed = PLATE
    for _ in range(3):
        changed = fixes.added_before("drill", "drill", {"cutter": "drill 3", "at": "14, 12", "depth": "5"})(
            changed
        )
    old = (said("spot", "drill"), said("spot", "tap"))
    new = tuple(said("spot", f"drill-{one}") for one in (1, 2, 3))
    found = differing(old, new, PLATE, changed)
    assert (found.ends, len(found.brings), len(found.leaves)) == ((), 1, 2)


# --- in words ---


def tried(**more):
    return FixTried(fix=None, job=PLATE, **more)


def test_what_a_fix_ends_and_leaves_is_named_with_its_steps_and_only_four_of_them():
    mine = said("pecks-for-depth", "drill")
    assert ends_and_leaves(mine, tried(ends=(mine,)), PLATE) == "Ends this; leaves no remark."
    two = tried(ends=(mine, said("spot-before-drilling", "tap")), leaves=(said("tight-enough"),))
    assert (
        ends_and_leaves(mine, two, PLATE)
        == "Ends this and “Spot before drilling” (step 70); leaves “Tight enough”."
    )
    rules = (
        "pecks-for-depth",
        "spot-before-drilling",
        "tight-enough",
        "face-before-holes",
        "hole-missing",
        "hole-to-its-size",
    )
    for count, end in (
        (4, "“Face before the holes” (step 60)."),
        (5, "“Face before the holes” (step 60), and 1 more."),
        (6, ", and 2 more."),
    ):
        many = tried(ends=(mine,), leaves=tuple(said(rule, "drill") for rule in rules[:count]))
        assert ends_and_leaves(mine, many, PLATE).endswith(end)
    places = tried(
        ends=(mine,),
        leaves=(
            said("face-before-holes", "tap"),
            said("face-before-holes", "spot"),
            said("face-before-holes", "tap"),
        ),
    )
    assert ends_and_leaves(mine, places, PLATE) == "Ends this; leaves “Face before the holes” (steps 50, 70)."


def test_where_no_fix_is_offered_the_right_way_of_the_rule_is_named():
    one = said("small-step-before-the-reamer", "drill")
    right = "for example drill 6.0, drill 12.0, drill 15.7, ream 16"
    assert by_hand(one) == right
    assert by_hand(replace(one, by_hand="do it")) == "do it"
    assert by_hand(replace(one, by_hand=lambda: "do that")) == "do that"
    assert by_hand(replace(one, rule="gone")) == ""
    assert (
        refusal(one, tried(why_not="it would not go"))
        == f"No fix is offered: it would not go. By hand: {right}."
    )
    assert refusal(replace(one, rule="gone"), tried(why_not="no")) == "No fix is offered: no."


def test_lines_of_the_job_stand_behind_those_of_its_steps():
    assert together(["set-up 2, holding: vice → straps"]) == "Changes set-up 2: holding vice → straps."
    assert together(["stock, height: 12 → 14"]) == "Changes stock: height 12 → 14."
    assert together(["fluid: dry → oil"]) == "Fluid: dry → oil."
    assert (
        together(["step 5, a: 1", "step 6, a: 1", "step 5, b: 2"])
        == "Changes step 5: a 1, b 2; changes step 6: a 1."
    )


def test_what_a_fix_would_bring_is_said_with_its_step_where_it_has_one():
    for remark, words in (
        (said("one", "drill"), "step 60: m"),
        (said("one", "gone"), "m"),
        (said("one"), "m"),
    ):
        found = Differing(ends=(), leaves=(), brings=(remark, said("two", "tap")))
        assert _brought(found, PLATE) == f"it would bring another remark, {words}"
    assert _brought(Differing(ends=(), leaves=(), brings=()), PLATE) == ""
