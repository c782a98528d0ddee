"""What rules ask of a plan, worked by hand: places of holes, layers, what holds after a
change, how far a cut comes in a chuck.
"""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.model.shape import Edge
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.plan import cuts, hole_chains, lengths
from jobsheet.review.plan.chucked import chucked, reaches
from jobsheet.review.plan.cut_again import cut_again, off
from jobsheet.review.plan.faces import finds_zero, plan_of, trams, width_of_limits, zero_found
from jobsheet.review.plan.full_width import given_by_the_cutter, held_by_the_cutter, own_width
from jobsheet.review.plan.gauges import measures, named, reads_to
from jobsheet.review.plan.held import backed, changed_before, changed_by, stopped, supported
from jobsheet.review.plan.hole_chains import Taken, holes_of
from jobsheet.review.plan.interrupted import opened_before
from jobsheet.review.plan.passes import passes_out
from jobsheet.review.plan.reamer_room import drill_for, room
from jobsheet.review.plan.rough_and_finish import close, finishes, last_pass, length_text
from jobsheet.review.plan.shoulders import opposite_of_shoulder, shoulders
from jobsheet.review.plan.zero_faces import letters_at_zero, zero_faces
from jobsheet.review.rule import View
from jobsheet.review.rules.holders.jack_under_thin_work import _places
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import edited

PLATE, BLOCK, SLIDE, PIVOT, COVER = (
    read_job(sample_jobs() / f"{name}.yaml")
    for name in (
        "hm-100-drilled-plate-b1", "hm-101-setting-block", "hm-102-slide-plate", "hm-103-pivot-block", "hm-104-cover-plate",
    )
)  # fmt: skip
HOLDING = "holding:set-up-1"


def view(job, *edits):
    job = edited(job, edits)
    return View(job, Reckoner().reckon(job))


def plan(job, *edits):
    return plan_of(view(job, *edits))


def step(job, key, *edits):
    return next(one for one in plan(job, *edits).steps if one.key == key)


def holes(job, *edits):
    return holes_of(view(job, *edits).reckoned)


def mm(values):
    return tuple(round(value * 1e3, 6) for value in values)


# --- sizes in words ---


def test_a_length_is_said_in_the_units_of_the_job():
    assert [lengths.length(0.0127, units) for units in ("mm", "in")] == ["12.7 mm", "0.5 in"]
    assert [lengths.fine(0.012345, units) for units in ("mm", "in")] == ["12.345 mm", "0.486 in"]
    assert [lengths.typed(0.0127, units) for units in ("mm", "in")] == ["12.7", "0.5 in"]
    assert lengths.typed(0.01274, "mm", 1) == "12.7"
    assert [length_text(0.0127, units) for units in ("mm", "in")] == ["12.7 mm", "0.5000 in"]


def test_a_reamer_s_room_goes_by_its_size():
    """Trade syllabus, cutting-data section 3.4: to 4.3, to 7.1, to 22.4 and above."""
    for size, low, high, drill in (
        (4.3, 0.10, 0.25, 4.1), (4.31, 0.10, 0.30, 4.1), (7.1, 0.10, 0.30, 6.9), (7.11, 0.15, 0.41, 6.8),
        (22.4, 0.15, 0.41, 22.1), (22.41, 0.20, 0.76, 21.9),
    ):  # fmt: skip
        assert mm(room(size * 1e-3)) == (low, high)
        assert drill_for(size * 1e-3) == pytest.approx(drill * 1e-3)


# --- holes ---


def test_a_hole_lies_where_the_drawing_has_it_whatever_corner_the_zero_stands_on():
    """HM-100: 14, 12; 66, 12; 66, 38; 14, 38 from A and B, the front and the left."""
    drawn = [(14, 12), (66, 12), (66, 38), (14, 38)]
    assert [mm(one.at) for one in holes(PLATE).chains] == drawn
    places = {
        "spot": "66, 12; 14, 12; 14, 38; 66, 38",
        "drill": "66, 12; 14, 12; 14, 38; 66, 38",
        "tap": "66, 12; 14, 12; 14, 38; 66, 38",
    }
    other = [
        ("zero:set-up-1", "x_from", "left"),
        ("zero:set-up-1", "x_counts", "right"),
        *((key, "at", at) for key, at in places.items()),
    ]
    assert [mm(one.at) for one in holes(PLATE, *other).chains] == drawn
    assert {one.face for one in holes(PLATE).chains} == {"top"}
    assert [[one.does for one in chain.steps] for chain in holes(PLATE).chains] == [
        ["spot", "drill", "tap"]
    ] * 4


def test_a_hole_is_one_over_two_set_ups():
    """HM-103: spotted, drilled thrice, chamfered and reamed at 40, 22 in set-up 6."""
    chain = next(one for one in holes(PIVOT).chains if any(each.does == "ream" for each in one.steps))
    assert [one.does for one in chain.steps] == ["spot", "drill", "drill", "drill", "countersink", "ream"]
    sizes = [round(one.diameter * 1e3, 2) for one in chain.steps]
    assert sizes[1:] == [6, 12, 15.7, 17, 16]
    ream, chamfer = chain.steps[5], chain.steps[4]
    assert chain.before(ream) == chain.steps[:5]
    assert chain.after(chamfer) == (ream,)
    assert chain.hole_before(ream) == chain.steps[3]
    assert chain.hole_before(chain.steps[1]) is None


def test_a_spot_is_as_wide_as_its_cone_and_at_most_as_its_drill():
    """A cone of 90 degrees is twice as wide as deep: 3.2 deep, 6.4 wide."""
    for depth, wide in (("3.2", 6.4), ("5", 10), ("6", 10)):
        chain = holes(PLATE, ("spot", "depth", depth)).chains[0]
        assert chain.steps[0].diameter * 1e3 == pytest.approx(wide)
    assert holes(PLATE).chains[0].steps[2].diameter == pytest.approx(6e-3)  # a thread by its major diameter


def test_as_deep_as_another():
    spot, drill, _ = holes(PLATE).chains[0].steps
    assert drill.as_deep_as(spot)
    assert not spot.as_deep_as(drill)
    assert drill.as_deep_as(drill)
    deep = replace(drill, depth=10e-3)
    assert deep.as_deep_as(replace(drill, depth=10e-3))
    assert not deep.as_deep_as(replace(drill, depth=10.1e-3))
    assert not deep.as_deep_as(drill)


def test_what_is_taken_from_a_face_is_a_line_with_round_ends_or_a_box():
    """HM-102: the slot from 25, 30 to 75, 30, cut 9 wide; in the stock it lies 2 and 1 further
    in, which come off left and front.
    """
    slot = next(one for one in holes(SLIDE).taken if one.operation.key == "slot")
    assert (mm(slot.low), mm(slot.high), mm((slot.width,))) == ((27, 31), (77, 31), (9,))
    for at, inside in (
        ((52, 31), 4.5),
        ((52, 34), 1.5),
        ((52, 35.5), 0),
        ((80, 31), 1.5),
        ((22, 31), -0.5),
        ((77, 36), -0.5),
    ):
        assert slot.inside((at[0] * 1e-3, at[1] * 1e-3)) * 1e3 == pytest.approx(inside)
    box = Taken(operation=slot.operation, set_up="", index=0, face="top", low=(0.01, 0.02), high=(0.05, 0.04))
    for at, inside in (
        ((30, 30), 10),
        ((12, 30), 2),
        ((48, 30), 2),
        ((30, 21), 1),
        ((30, 39), 1),
        ((9, 30), -1),
        ((30, 41), -1),
    ):
        assert box.inside((at[0] * 1e-3, at[1] * 1e-3)) * 1e3 == pytest.approx(inside)


def test_an_edge_cut_takes_a_strip_along_its_side():
    """Of work 80 by 50, a little over its sides."""
    for side, box in (
        ("left", (-1, -1, 3, 51)),
        ("right", (77, -1, 81, 51)),
        ("front", (-1, -1, 81, 3)),
        ("rear", (-1, 47, 81, 51)),
    ):
        edge = Edge(side=side, width=3e-3, depth=5e-3)
        assert mm(hole_chains._strip(edge, 0.08, 0.05)) == box


def test_the_metal_of_a_hole_goes_later_only_where_a_cut_lies_over_it_afterwards():
    """HM-104: the hole in the middle is where the window is cut."""
    found = holes(COVER)
    middle = next(one for one in found.chains if any(each.key == "entry" for each in one.steps))
    outer = next(one for one in found.chains if any(each.key == "drill" for each in one.steps))
    assert found.cut_away_later(middle, middle.steps[0])
    assert not found.cut_away_later(outer, outer.steps[0])
    assert {one.key for one in [each for _, each in found.by_step("entry")]} == {"entry"}
    late = replace(middle.steps[-1], index=99)
    assert not found.cut_away_later(middle, late)


def test_a_face_is_lowered_by_what_its_steps_take_off():
    found = holes(PLATE)
    assert [(one.operation.key, one.face, round(one.amount * 1e3, 6)) for one in found.lowered] == [
        ("face-rough", "top", 0.4), ("face-finish", "top", 0.1),
    ]  # fmt: skip
    chain = found.chains[0]
    assert found.lowered_later(chain, chain.steps[0]) == ()
    early = replace(chain.steps[0], index=1)
    assert [one.operation.key for one in found.lowered_later(chain, early)] == ["face-finish"]
    assert found.lowered_later(replace(chain, face="left"), early) == ()


def test_an_edge_that_was_found_inside_moves_the_places():
    """HM-104 finds its zero two inside the edges at the pins."""
    inside = COVER.find("find-zero")[1].fields.inside
    spot = next(one for one in holes(COVER).chains if any(each.key == "spot" for each in one.steps))
    plain = next(
        one
        for one in holes(COVER, ("find-zero", "inside", "")).chains
        if any(each.key == "spot" for each in one.steps)
    )
    assert mm((spot.at[0] - plain.at[0], spot.at[1] - plain.at[1])) == mm((inside.value, inside.value))


# --- milled cuts ---


def test_a_cut_goes_in_even_layers():
    """12 deep at 5 a layer is three of 4; without layers it is one."""
    for depth, layer, each in (
        ("12", "5", 4),
        ("12", "4", 4),
        ("12", "12", 12),
        ("12", "", 12),
        ("through", "5", 4),
        ("12", "13", 12),
    ):
        edits = [("slot", "depth", depth), ("slot", "layer", layer)]
        assert cuts.layer_of(step(SLIDE, "slot", *edits)) * 1e3 == pytest.approx(each)
    assert cuts.layer_of(step(SLIDE, "drill")) is None
    assert cuts.total_depth(step(SLIDE, "slot")) == pytest.approx(0.012)
    assert cuts.total_depth(step(SLIDE, "slot", ("slot", "depth", "7"))) == pytest.approx(0.007)
    assert cuts.total_depth(step(SLIDE, "find-zero")) is None


def test_a_slot_cuts_with_its_whole_width_and_a_wall_does_not():
    assert cuts.full_width(step(SLIDE, "slot")) == pytest.approx(0.009)
    assert cuts.full_width(step(SLIDE, "slot-rear")) is None


def test_soft_metals_and_hard_ones():
    assert [
        cuts.soft(step(PLATE, "drill", ("job", "material", name)).setting)
        for name in ("6082-T6", "POM", "S235", "304", "EN-GJL-250")
    ] == [True, True, False, False, False]


def test_a_hole_lies_in_the_way_of_a_slot():
    """HM-102: the ends of the slot are plunged with a cutter of 10."""
    found = plan(SLIDE)
    slot = next(one for one in found.steps if one.key == "slot")
    assert cuts.hole_within(found, slot, 10e-3)
    assert not cuts.hole_within(found, slot, 10.1e-3)
    ends = next(one for one in found.steps if one.key == "slot-ends")
    assert not cuts.hole_within(found, ends, 1e-3)
    for depth, there in (("6", True), ("5.9", False)):  # half of this cut's depth at least
        found = plan(SLIDE, ("slot-ends", "depth", depth))
        assert cuts.hole_within(found, next(one for one in found.steps if one.key == "slot"), 9e-3) is there
    found = plan(SLIDE, ("slot-ends", "at", "25, 36; 75, 36"))
    assert not cuts.hole_within(found, next(one for one in found.steps if one.key == "slot"), 9e-3)
    assert [mm(one) for one in cuts.outline(slot)] == [(25, 30), (75, 30)]
    assert cuts.outline(ends) == ()


def test_how_far_a_point_is_from_a_line():
    for point, far in (((5, 3), 3), ((-3, 4), 5), ((13, 4), 5), ((0, 0), 0)):
        assert cuts._from_line(point, (0, 0), (10, 0)) == pytest.approx(far)
        assert hole_chains._from_line(point, (0, 0), (10, 0)) == pytest.approx(far)
    assert cuts._from_line((3, 4), (0, 0), (0, 0)) == 5
    assert hole_chains._from_line((3, 4), (0, 0), (0, 0)) == 5


def test_a_groove_is_as_wide_as_its_cutter_within_the_limits():
    for size, own in (
        ("10 +0.05/0", False),
        ("9 +0.05/0", True),
        ("9.05 +0/-0.05", True),
        ("9.06 +0/-0.05", False),
        ("8.95 +0.05/0", True),
    ):
        assert own_width(step(SLIDE, "slot"), read_size(size)) is own
    assert not own_width(step(SLIDE, "drill"), read_size("6.6 ±0.1"))
    for size, given in (("9 +0.1/0", True), ("9 +0.09/0", False), ("9.01 +0.2/0", False)):
        assert given_by_the_cutter(step(SLIDE, "slot"), read_size(size)) is given
    assert given_by_the_cutter(step(SLIDE, "drill"), read_size("6.6 +0.1/0"))
    assert not given_by_the_cutter(step(SLIDE, "counterbore"), read_size("11 ±0.2"))
    assert not held_by_the_cutter(step(SLIDE, "slot"), read_size("9 +0.1/0"))  # no keyway


# --- faces ---


def test_what_is_left_open_by_an_earlier_step():
    """HM-102: the end is milled after holes and slot, all from the top."""
    found = plan(SLIDE)
    end = found.steps[-2]
    assert end.key == "end-right"
    assert opened_before(found, end, own_holes=True).key == "drill"
    assert opened_before(found, end, own_holes=False).key == "slot"
    first = found.steps[0]
    assert opened_before(found, first, own_holes=True) is None
    turned = plan(SLIDE, ("setup:set-up-4", "up", "bottom"))
    assert opened_before(turned, turned.steps[-2], own_holes=False).key == "drill"
    shallow = [(key, "depth", "5") for key in ("drill", "slot", "slot-ends", "slot-front", "slot-rear")]
    blind = plan(SLIDE, ("setup:set-up-4", "up", "bottom"), *shallow)
    assert opened_before(blind, blind.steps[-2], own_holes=True) is None


def test_a_face_that_is_cut_twice_from_two_set_ups_is_known_by_how_much_comes_off():
    found = plan(BLOCK)
    assert off(found.first_cut("top"), "top") * 1e3 == pytest.approx(
        BLOCK.find("face-1-rough")[1].fields.depth.value * 1e3
    )
    assert off(found.first_cut("top"), "left") == 0
    assert list(cut_again(found, 0.6e-3)) == []


def test_shoulders_lie_at_the_side_of_the_face_they_are_cut_into():
    """HM-103: the step 20 wide at the right, 12 deep."""
    assert [(face, round(wide * 1e3, 6)) for face, wide in shoulders(step(PIVOT, "step"))] == [("right", 20)]
    assert opposite_of_shoulder(step(PIVOT, "step")) == ("left",)
    assert list(shoulders(step(PIVOT, "end-right"))) == []


def test_passes_that_miss_their_size_by_more_than_a_twentieth():
    """40 of 64 after what both passes leave; within the limits nothing is out."""
    assert list(passes_out(plan(BLOCK))) == []
    ((late, left, out),) = passes_out(plan(BLOCK, ("face-4-rough", "depth", "3")))
    assert late.key == "face-4-finish"
    nominal = late.fields.measure.nominal
    assert left - nominal == pytest.approx(out)
    assert out > 0
    for more, told in (("0.25", False), ("0.26", True)):
        edits = [("face-4-finish", "measure", "40 ±0.03"), ("face-4-finish", "depth", more)]
        assert bool(list(passes_out(plan(BLOCK, *edits)))) is told


def test_the_last_pass_of_a_face_and_whether_something_roughed_before_it():
    found = plan(BLOCK)
    rough, finish = found.steps[0:2]
    rough = next(one for one in found.steps if one.key == "face-1-rough")
    finish = next(one for one in found.steps if one.key == "face-1-finish")
    assert last_pass(found, rough).rough is None
    assert last_pass(found, finish).rough.key == "face-1-rough"
    assert last_pass(found, finish).thick == pytest.approx(finish.fields.depth.value)
    wall = plan(PIVOT)
    left = next(one for one in wall.steps if one.key == "step")
    assert (last_pass(wall, left).thick, last_pass(wall, left).rough) == (left.fields.leave.value, left)
    assert last_pass(found, next(one for one in found.steps if not one.cuts)) is None


def test_limits_closer_than_a_width():
    one = step(BLOCK, "face-4-finish")
    assert width_of_limits(one) == pytest.approx(0.06e-3)
    assert (close(one, 0.0601e-3), close(one, 0.06e-3)) == (True, False)
    assert (finishes(one, 0.1e-3), finishes(step(SLIDE, "measure-slot"), 0.1e-3)) == (True, False)
    assert width_of_limits(step(BLOCK, "face-1-rough")) is None
    assert width_of_limits(step(BLOCK, "face-4-finish", ("face-4-finish", "measure", "40"))) is None
    assert not close(step(BLOCK, "face-1-rough"), 1.0)


def test_the_step_that_found_the_zero_is_the_last_before():
    found = plan(PLATE)
    drill = next(one for one in found.steps if one.key == "drill")
    assert zero_found(found, drill).key == "find-zero"
    assert zero_found(found, found.steps[1]).key == "face-rough"
    again = plan(PLATE, ("spot", "do", "find zero"))
    assert zero_found(again, next(one for one in again.steps if one.key == "drill")).key == "bench-step-1"
    assert zero_found(again, next(one for one in again.steps if one.key == "spot")).key == "find-zero"
    assert [one.key for one in found.steps if finds_zero(one)] == ["find-zero"]
    told = step(PLATE, "find-zero", ("find-zero", "does", ""))
    assert finds_zero(told)  # an edge finder is in the spindle
    assert not finds_zero(step(PLATE, "find-zero", ("find-zero", "does", ""), ("find-zero", "cutter", "")))
    assert not any(trams(one) for one in found.steps)
    assert trams(step(PLATE, "bench-step-1", ("clamp", "do", "check head")))


def test_the_datums_at_a_zero():
    """HM-100 is turned round: its right rear corner as it lies is the left
    front one of the stock, B and A.
    """
    seen = view(PLATE)
    assert zero_faces(seen, PLATE.set_ups[0]) == ("left", "front")
    assert letters_at_zero(seen, PLATE.set_ups[0]) == "A and B"
    other = view(PLATE, ("zero:set-up-1", "x_from", "left"))
    assert zero_faces(other, other.job.set_ups[0]) == ("right", "front")
    assert letters_at_zero(other, other.job.set_ups[0]) == ""
    third = view(PLATE, ("zero:set-up-1", "y_from", "front"))
    assert zero_faces(third, third.job.set_ups[0]) == ("left", "rear")


def test_faces_have_areas_and_letters():
    found = plan(PLATE)
    assert [round(found.area(face) * 1e6) for face in ("top", "left", "front")] == [4000, 600, 960]
    assert found.named("front") == "datum A, the front face"
    assert found.named("rear") == "the rear face"
    assert plan(BLOCK).made_later(step(BLOCK, "face-1-rough")).key == "face-1-finish"
    assert plan(BLOCK).made_later(step(BLOCK, "face-1-finish")) is None


# --- holding ---


def test_what_comes_off_no_longer_holds_and_what_goes_on_does():
    change = [
        ("spot", "do", "change holding"),
        ("bench-step-1", "removes", "straps"),
        ("bench-step-1", "stays", "screws"),
    ]
    job = edited(PLATE, change)
    step_ = job.find("bench-step-1")[1]
    assert changed_by(step_) == changed_before(job.set_ups[0], "drill")
    assert (changed_by(step_).off, changed_by(step_).on) == ({"straps"}, {"screws"})
    assert changed_before(job.set_ups[0], "spot") == changed_before(job.set_ups[0], "bench-step-1")
    assert not changed_before(job.set_ups[0], "spot").off
    back = edited(
        job,
        [
            ("drill", "add bench-step", ""),
            *(
                ("bench-step-2", *one)
                for one in (("does", "change holding"), ("removes", "screws"), ("stays", "straps"))
            ),
        ],
    )
    after = changed_before(back.set_ups[0], "tap")
    assert (after.off, after.on) == ({"screws"}, {"straps"})
    assert changed_by(PLATE.find("drill")[1]).off == frozenset()


def test_what_lies_under_stands_behind_and_stops():
    def held(*edits):
        return edited(PLATE, edits).set_ups[0]

    assert backed(held((HOLDING, "rests_on", "backing")))
    assert not backed(held())
    assert backed(held((HOLDING, "kind", "fixture plate")))
    assert not backed(held((HOLDING, "kind", "hand vice")))
    assert backed(held((HOLDING, "kind", "hand vice"), (HOLDING, "support", "wood")))
    assert not supported(held())
    assert supported(held((HOLDING, "supported_by", "jack")))
    assert supported(held((HOLDING, "kind", "angle plate")))
    assert not stopped(held((HOLDING, "kind", "straps")))
    assert stopped(held((HOLDING, "kind", "straps"), (HOLDING, "stops", "rear, left")))
    assert stopped(held((HOLDING, "kind", "fixture plate"), (HOLDING, "dowels", "2")))
    assert not stopped(held((HOLDING, "kind", "fixture plate")))


def test_the_gauge_of_a_step_is_the_one_it_names():
    assert named(step(SLIDE, "measure-slot")) == "gap gauge"
    assert reads_to(step(SLIDE, "measure-slot")) is None
    assert named(step(PIVOT, "step")) == "calliper"
    assert named(step(PLATE, "drill")) == ""
    asked = step(
        PLATE,
        "face-finish",
        ("face-finish", "tolerances", "gauge micrometer"),
        ("face-finish", "measure", "11.5 ±0.1, calliper"),
    )
    assert named(asked) == "micrometer"
    assert reads_to(asked) == pytest.approx(0.01e-3)
    assert measures(step(SLIDE, "measure-slot"))
    assert not measures(step(PLATE, "face-finish"))


def test_what_stands_out_of_a_chuck():
    """80 x 50 x 12 in a chuck: along its length, or upright by its height."""
    chuck = (HOLDING, "kind", "chuck")

    def found(*edits):
        seen = plan(PLATE, chuck, *edits)
        return chucked(seen.job.set_ups[0], seen.steps[0])

    assert chucked(PLATE.set_ups[0], plan(PLATE).steps[0]) is None
    lies = found((HOLDING, "grip_length", "30 mm"))
    assert (lies.upright, mm((lies.length, lies.grip, lies.out, lies.diameter))) == (False, (80, 30, 50, 12))
    stands = found((HOLDING, "lies", "upright"), (HOLDING, "grip_length", "8 mm"))
    assert (stands.upright, mm((stands.length, stands.out, stands.diameter))) == (True, (12, 4, 50))
    assert found((HOLDING, "grip_length", "80 mm")).out is None
    assert found((HOLDING, "out", "55 mm")).out == pytest.approx(0.055)
    assert found((HOLDING, "diameter", "20 mm")).diameter == pytest.approx(0.020)
    assert (found().free, found((HOLDING, "tailstock", "yes")).tailstock, found().tailstock) == (
        0,
        True,
        False,
    )
    assert found(("find-zero", "take out", "")).free is None
    assert found(("zero:set-up-1", "x_from", "left")).free == 1


def test_how_far_a_cut_comes_from_the_free_end():
    """Holes at 14 and 66 with a drill of 5: their edges 16.5 and 68.5 from either end of 80."""
    seen = plan(PLATE, (HOLDING, "kind", "chuck"), (HOLDING, "grip_length", "10 mm"))
    first, drill = seen.steps[0], next(one for one in seen.steps if one.key == "drill")
    sits = chucked(seen.job.set_ups[0], first)
    assert {mm(one) for one in reaches(sits, first, drill)} == {(68.5, 16.5), (16.5, 68.5)}
    face = next(one for one in seen.steps if one.key == "face-rough")
    assert [mm(one) for one in reaches(sits, first, face)] == [(80, 80)]
    up = plan(
        PLATE,
        (HOLDING, "kind", "chuck"),
        (HOLDING, "lies", "upright"),
        (HOLDING, "diameter", "30 mm"),
        ("drill", "depth", "5"),
    )
    first, drill = up.steps[0], next(one for one in up.steps if one.key == "drill")
    stands = chucked(up.job.set_ups[0], first)
    point = 2.5 / math.tan(math.radians(118 / 2))
    assert {tuple(round(value * 1e3, 3) for value in one) for one in reaches(stands, first, drill)} == {
        (round(0.5 + 5 + point, 3),) * 2
    }
    inside = plan(
        PLATE,
        (HOLDING, "kind", "chuck"),
        (HOLDING, "lies", "upright"),
        (HOLDING, "diameter", "30 mm"),
        ("drill", "at", "40, 25"),
    )
    drill = next(one for one in inside.steps if one.key == "drill")
    assert list(reaches(chucked(inside.job.set_ups[0], inside.steps[0]), inside.steps[0], drill)) == []


def test_between_centres_a_cut_goes_as_near_to_the_middle_of_the_bar_as_it_reaches():
    """A slot from 25 to 75 along the work as it lies; a face goes over the
    middle, and so does a side of it.
    """
    slot = step(SLIDE, "slot")
    low, high = sorted(at[0] for at in slot.cut.shapes[0].corners)
    for long in (0.2, (low + high), 0.04):
        (place,) = _places(slot, long)
        assert place == pytest.approx(min(max(long / 2, low), high, long))
    assert list(_places(step(PLATE, "face-rough"), 0.2)) == [0.1]
    edge = step(PLATE, "side-mill-1", ("drill", "add side-mill", ""), ("side-mill-1", "side", "front"))
    assert list(_places(edge, 0.2)) == [0.1]


def test_slots_pockets_and_walls_come_so_far_from_the_free_end():
    """80 long, places from its right end: as it lies a slot from 20 to 50 with 10 of
    cutter goes from 25 to 65 from the left.
    """
    chuck = [(HOLDING, "kind", "chuck"), (HOLDING, "grip_length", "10 mm")]

    def reached(key, *edits):
        seen = plan(PLATE, *chuck, *edits)
        cut = next(one for one in seen.steps if one.key == key)
        return [mm(one) for one in reaches(chucked(seen.job.set_ups[0], seen.steps[0]), seen.steps[0], cut)]

    slot = [
        ("drill", "add slot", ""),
        ("slot-1", "ends", "20, 25; 50, 25"),
        ("slot-1", "cutter", "slot drill 10 mm"),
    ]
    assert reached("slot-1", *slot) == [(55, 65)]
    pocket = [
        ("drill", "add pocket", ""),
        ("pocket-1", "centre", "30, 25"),
        ("pocket-1", "length", "20"),
        ("pocket-1", "width", "14"),
    ]
    assert reached("pocket-1", *pocket) == [(40, 60)]
    wall = [("drill", "add side-mill", ""), ("side-mill-1", "width", "3")]
    for side, far in (("left", (80, 3)), ("right", (3, 80)), ("front", (80, 80)), ("rear", (80, 80))):
        assert reached("side-mill-1", *wall, ("side-mill-1", "side", side)) == [far]
