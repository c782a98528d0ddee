"""What mends a plan keeps every step, gives numbers that nobody has twice, and never raises."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.review.mending import fixes
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job


@pytest.fixture
def block(samples):
    return read_job(samples / "hm-101-setting-block.yaml")


def keys(job):
    return [one.key for _, one in job.operations()]


def numbers(job):
    return [one.number for _, one in job.operations()]


def test_inside_a_set_up_steps_change_places_and_numbers_stay(hm100):
    job = fixes.moved_before("drill", "spot")(hm100)
    assert keys(job).index("drill") == keys(job).index("spot") - 1
    assert numbers(job) == numbers(hm100)
    assert fixes.moved_after("drill", "spot")(job) == hm100


def test_a_step_from_another_set_up_comes_in_a_copy_of_its_own(block):
    job = fixes.moved_after("edges-1", "face-2-rough")(block)
    assert sorted(keys(job)) == sorted(keys(block))
    assert [one.number for one in job.set_ups] == list(range(1, len(job.set_ups) + 1))
    home = next(one for one in job.set_ups if one.operations and one.operations[0].key == "edges-1")
    assert (home.up, home.fixed_jaw) == (block.set_ups[0].up, block.set_ups[0].fixed_jaw)


def test_a_set_up_whose_cuts_all_move_goes_as_a_whole(block):
    job = fixes.all_moved_before(("face-4-rough", "face-4-finish"), "face-2-rough")(block)
    assert [one.key for one in job.set_ups][:3] == ["set-up-1", "set-up-3", "set-up-2"]
    assert len(job.set_ups) == len(block.set_ups)


def test_a_new_step_has_a_number_between_its_neighbours_and_is_saved(hm100):
    job = fixes.added_after("spot", "bench-step", {"what": "Look"})(hm100)
    number = next(one.number for _, one in job.operations() if one.key == "bench-step-1")
    assert 50 < number < 60
    assert job_from_text(write_job(job), "made") == job


@pytest.mark.parametrize(
    "mend",
    [
        fixes.set_field("drill", "depth", "not a depth"),
        fixes.set_field("drill", "no such field", "1"),
        fixes.set_field("gone", "depth", "1"),
        fixes.set_field("zero:gone", "named", "A"),
        fixes.moved_before("gone", "drill"),
        fixes.moved_after("drill", "gone"),
        fixes.moved_set_up("gone", "set-up-1"),
        fixes.taken_out("gone"),
        fixes.added_before("gone", "bench-step", {"what": "Look"}),
        fixes.added_before("drill", "drill", {"cutter": "a spoon"}),
    ],
)
def test_what_cannot_be_done_leaves_the_job_as_it_is(hm100, mend):
    assert mend(hm100) == hm100


def test_an_empty_field_goes_back_to_what_it_is_when_never_filled_in(hm100):
    job = fixes.set_field("drill", "peck", "")(hm100)
    assert job.find("drill")[1].fields.peck is None


@pytest.mark.parametrize(
    ("numbers", "behind", "number"),
    [
        # Between 10 and 20 the middle; of two as near the first; fives before others, else what is free, else the next above.
        ((10, 20, 30), 10, 15), ((10, 20, 30), 30, 40), ((10, 20, 30), 0, 5), ((10, 15, 20), 10, 12), ((10, 15, 20), 15, 17),
        ((10, 30), 10, 20), ((10, 11, 20), 10, 12), ((10, 11, 12, 20), 10, 13), ((1, 2), 0, 3), ((10, 40), 10, 25), ((2, 20), 0, 1),
    ],
)  # fmt: skip
def test_a_new_step_has_the_middle_of_the_numbers_that_are_free(hm100, numbers, behind, number):
    steps = tuple(replace(hm100.find("drill")[1], key=f"drill-{one}", number=one) for one in numbers)
    home = replace(hm100.set_ups[0], operations=steps)
    job = replace(hm100, set_ups=(home,))
    index = numbers.index(behind) + 1 if behind else 0
    assert fixes._free_number(job, home, index) == number


def test_numbers_of_other_set_ups_are_taken_too(hm100):
    drill = hm100.find("drill")[1]
    one, two = (
        replace(
            hm100.set_ups[0],
            key=key,
            operations=tuple(replace(drill, key=f"d{n}", number=n) for n in numbers),
        )
        for key, numbers in (("one", (10, 20)), ("two", (15, 30)))
    )
    job = replace(hm100, set_ups=(one, two))
    assert fixes._free_number(job, one, 1) == 12
    assert fixes._new_set_up_key(job) == "set-up-1"
    assert [each.number for each in fixes._numbered(replace(job, set_ups=(two, one))).set_ups] == [1, 2]


def test_a_set_up_moves_before_another_or_behind_it_and_never_beside_itself(block):
    order = [one.key for one in block.set_ups]
    for behind in (0, 1):
        moved = fixes.moved_set_up(order[3], order[1], behind=behind)(block)
        rest = [one for one in order if one != order[3]]
        rest.insert(1 + behind, order[3])
        assert [one.key for one in moved.set_ups] == rest
        assert [one.number for one in moved.set_ups] == list(range(1, len(order) + 1))
    for one, other in ((order[0], order[0]), ("nowhere", order[0]), (order[0], "nowhere")):
        assert fixes.moved_set_up(one, other)(block) is block
