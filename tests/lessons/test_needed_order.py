"""What must come before what: against the reference's own orders, plans whose
authors knew no rule, and the review.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from random import Random

import pytest
import yaml
from msgspec.structs import replace

from jobsheet.lessons.needed_order import NoOrder, needed_order
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.storage.job_file import read_job

UNSEEN = Path(__file__).parent.parent / "unseen"
SAMPLES = (
    "hm-100-drilled-plate-b1",
    "hm-101-setting-block",
    "hm-102-slide-plate",
    "hm-103-pivot-block",
    "hm-104-cover-plate",
)


def needed(job):
    return needed_order(Reckoner().reckon(job))


def by_number(found, pairs):
    numbers = {operation.key: operation.number for _, operation in found.job.operations()}
    return {(numbers[one.first], numbers[one.then]): one.rule for one in pairs}


@pytest.fixture
def pivot(samples):
    return needed(read_job(samples / "hm-103-pivot-block.yaml"))


# --- the reference ---


def test_the_bore_of_the_reference(pivot):
    """Sequencing rules, section 6: zero, spot, pilot 6, 12, 15.7, ream; the chamfer
    after 15.7, before or after the reamer.

    The sample gauges and deburrs in one step, which takes both ends: of its three right orders two are left.
    """
    inside = pivot.inside("set-up-6")
    assert inside.count() == 2
    order = ["find-a-c", "spot-bore", "pilot", "bore-12", "bore-15-7"]
    assert inside.moves([*order, "chamfer", "ream", "gauge"]) == 0
    assert inside.moves([*order, "ream", "chamfer", "gauge"]) == 0
    assert inside.moves([*order, "ream", "gauge", "chamfer"]) == 1
    broken = by_number(pivot, pivot.pairs)
    assert broken[130, 145] == broken[115, 120] == "hole-steps-in-rising-order"
    assert broken[110, 115] == "spot-before-drilling"
    assert broken[145, 150] == "measured-after-it-is-cut"


def test_the_setting_block_of_the_reference(samples):
    """Section 6 and its correction: the rear is sized from the front, end 6 from end
    5; the sides come before the ends.
    """
    found = needed(read_job(samples / "hm-101-setting-block.yaml"))
    pairs = by_number(found, found.pairs)
    assert pairs[45, 50] == pairs[70, 80] == "face-before-its-use"
    assert pairs[55, 70] == "sides-before-ends"
    assert found.set_ups.before("set-up-1", "set-up-2")
    assert found.set_ups.before("set-up-3", "set-up-5")


def test_the_step_and_the_threads_of_the_picture(pivot):
    """The drawn lesson on set-up 5: end, then step; spot, drill, tap; either lane
    first; the step before the tap is habit.
    """
    inside = pivot.inside("set-up-5")
    assert {("end-right", "step"), ("spot-threads", "drill-threads"), ("drill-threads", "tap")} <= set(
        inside.needed()
    )
    assert inside.before("find-b-c", "end-right")
    assert inside.before("find-b-c", "spot-threads")
    free = {frozenset(one) for one in inside.free()}
    assert free == {
        frozenset((one, other))
        for one in ("end-right", "step")
        for other in ("spot-threads", "drill-threads", "tap")
    }
    assert (70, 90) in by_number(pivot, pivot.habits)


def test_no_habit_says_what_is_needed_or_the_other_way_round(pivot):
    for one in pivot.habits:
        assert not pivot.steps.before(one.first, one.then)
        assert not pivot.steps.before(one.then, one.first)


def test_two_sides_of_a_slot_and_the_corners_of_a_plate_are_free(samples):
    found = needed(read_job(samples / "hm-102-slide-plate.yaml"))
    assert ("slot-front", "slot-rear") in found.inside("set-up-3").free()
    cover = needed(read_job(samples / "hm-104-cover-plate.yaml"))
    assert ("outside-front", "outside-left") in cover.inside("set-up-1").free()


# --- plans that others wrote ---


@pytest.mark.parametrize("folder", sorted(path.name for path in UNSEEN.iterdir() if (path / "good").is_dir()))
def test_plans_whose_authors_knew_no_rule_are_in_order(folder):
    for path in sorted((UNSEEN / folder / "good").glob("*.yaml")):
        found = needed(read_job(path))
        order = [operation.key for _, operation in found.job.operations()]
        assert found.steps.moves(order) == 0, path.name


def test_every_pair_says_why(samples):
    for name in SAMPLES:
        found = needed(read_job(samples / f"{name}.yaml"))
        for one in (*found.pairs, *found.habits):
            assert one.because.endswith("."), one.rule
            assert one.title != one.rule
            assert one.source
            assert one.severity in ("hazard", "scrap", "rework", "habit")


# --- the review reads what is said to be free ---


def remarks(job):
    found = Reckoner().reckon(job)
    read = reviewed(job, found)
    return Counter(
        one.rule for one in (*read.open, *(one for one, _ in read.aside)) if one.severity != "habit"
    )


def arranged(job, order):
    place = {key: at for at, key in enumerate(order)}
    set_ups = [
        replace(one, operations=tuple(sorted(one.operations, key=lambda step: place[step.key])))
        for one in job.set_ups
    ]
    return replace(job, set_ups=tuple(sorted(set_ups, key=lambda one: place[one.operations[0].key])))


def some_right_order(precedence, random):
    """Any right order: again and again one of those whose forerunners all stand."""
    order: list[str] = []
    while len(order) < len(precedence.items):
        ready = [
            one
            for one in precedence.items
            if one not in order
            and all(other in order or not precedence.before(other, one) for other in precedence.items)
        ]
        order.append(random.choice(ready))
    return order


@pytest.mark.parametrize("name", SAMPLES)
def test_any_right_order_is_one_that_the_review_has_nothing_against(samples, name):
    job = read_job(samples / f"{name}.yaml")
    found, before, random = needed(job), remarks(job), Random(name)
    for _ in range(6):
        order = [
            step
            for key in some_right_order(found.set_ups, random)
            for step in some_right_order(found.inside(key), random)
        ]
        # A cut of which it is said that its edges are broken counts for those before it only where it comes
        # last: a side of the slot, so turned round, is no other order of the work.
        gained = remarks(arranged(job, order)) - before
        gained.pop("burrs-off-before-the-next-hold", None)
        assert not gained, [job.find(key)[1].number for key in order]


# --- circles ---


def test_set_ups_that_ask_for_each_other_are_refused_with_both_rules(samples):
    """Spotted and tapped in one set-up, drilled in another: neither can be first."""
    job = read_job(samples / "hm-100-drilled-plate-b1.yaml")
    one = job.set_ups[0]
    drill = next(step for step in one.operations if step.key == "drill")
    rest = tuple(step for step in one.operations if step is not drill)
    other = replace(one, key="set-up-2", number=2, operations=(drill,))
    with pytest.raises(NoOrder) as caught:
        needed(replace(job, set_ups=(replace(one, operations=rest), other)))
    said = str(caught.value)
    assert "circle" in said
    assert "before 60 (" in said  # what the drill waits for
    assert "step 60 before" in said  # and what waits for the drill


# --- orders that others spoilt ---


def spoilt_orders():
    """Plans of others in which steps or set-ups were only put in another order, each beside its good twin."""
    for folder in sorted(path for path in UNSEEN.iterdir() if (path / "spoilt").is_dir()):
        raw = yaml.load((folder / "key.yaml").read_text(encoding="utf-8"), Loader=yaml.CBaseLoader)
        for one in next(iter(raw.values())) if isinstance(raw, dict) else raw:
            bad = folder / "spoilt" / Path(one["file"]).name
            good = folder / "good" / Path(one["twin"]).name
            if bad.is_file() and good.is_file():
                yield bad, good


def test_every_order_that_was_spoilt_is_refused():
    """Marked by what the good twin needs: the spoilt order is some moves away,
    and the broken pair has its reason.
    """
    refused, let_through = [], []
    for bad, good in spoilt_orders():
        spoilt, twin = read_job(bad), read_job(good)
        order = [operation.key for _, operation in spoilt.operations()]
        right = [operation.key for _, operation in twin.operations()]
        if sorted(order) != sorted(right) or order == right:
            continue
        found = needed(twin)
        broken = [one for one in found.pairs if order.index(one.first) > order.index(one.then)]
        (refused if broken else let_through).append(bad.name)
        assert bool(found.steps.moves(order)) is bool(broken)
    assert not let_through
    assert len(refused) >= 23


#: A step of a sample put before another one, and the rule that refuses it: each as a trade text would have it
#: (the rows of the reference on the order of work, section 6, with their sources).
SPOILT = [
    ("hm-100-drilled-plate-b1", "tap", "drill", "tap-drill-before-tap"),
    ("hm-100-drilled-plate-b1", "spot", "find-zero", "find-the-zero-here"),
    ("hm-100-drilled-plate-b1", "face-finish", "face-rough", "rough-before-finish"),
    ("hm-100-drilled-plate-b1", "spot", "face-rough", "face-before-holes"),
    ("hm-101-setting-block", "face-4-finish", "face-4-rough", "rough-before-finish"),
    ("hm-101-setting-block", "end-6", "end-5", "face-before-its-use"),
    ("hm-101-setting-block", "chamfer", "end-6", "chamfer-after-both-faces"),
    ("hm-101-setting-block", "end-5", "face-4-rough", "sides-before-ends"),
    ("hm-102-slide-plate", "slot", "slot-ends", "entry-for-a-closed-slot"),
    ("hm-102-slide-plate", "slot-front", "slot", "walls-after-their-middle"),
    ("hm-102-slide-plate", "measure-slot", "slot-front", "measured-after-it-is-cut"),
    ("hm-102-slide-plate", "find-zero", "end-b", "face-before-its-use"),
    ("hm-102-slide-plate", "counterbore", "drill", "hole-before-its-counterbore"),
    ("hm-102-slide-plate", "deburr", "end-right", "deburr-after-last-cut"),
    ("hm-103-pivot-block", "ream", "bore-15-7", "hole-steps-in-rising-order"),
    ("hm-103-pivot-block", "chamfer", "bore-15-7", "hole-before-its-counterbore"),
    ("hm-103-pivot-block", "step", "end-right", "shoulder-after-its-end"),
    ("hm-103-pivot-block", "gauge", "ream", "measured-after-it-is-cut"),
    ("hm-103-pivot-block", "drill-threads", "spot-threads", "spot-before-drilling"),
    ("hm-104-cover-plate", "window", "slug", "hold-the-slug"),
    ("hm-104-cover-plate", "outside-front", "screw", "each-cut-in-its-own-hold"),
    ("hm-104-cover-plate", "window-wall", "window", "walls-after-their-middle"),
    ("hm-104-cover-plate", "slug", "drill-middle", "hold-the-slug"),
]


@pytest.mark.parametrize(("name", "key", "before", "rule"), SPOILT)
def test_a_spoilt_order_is_refused_for_its_reason(samples, name, key, before, rule):
    found = needed(read_job(samples / f"{name}.yaml"))
    order = [operation.key for _, operation in found.job.operations()]
    order.remove(key)
    order.insert(order.index(before), key)
    assert found.steps.moves(order) >= 1
    assert rule in {one.rule for one in found.pairs if order.index(one.first) > order.index(one.then)}
