"""An answer of the pivot block as a trainee would give it, marked."""

from __future__ import annotations

from random import Random
from time import perf_counter

import pytest

from jobsheet.lessons.marking import Asked, marked
from jobsheet.lessons.needed_order import needed_order
from jobsheet.lessons.precedence import closed
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.job_file import read_job


@pytest.fixture
def pivot(samples):
    needed = needed_order(Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml")))
    steps = {one.key: tuple(step.key for step in one.operations) for one in needed.job.set_ups}
    return needed, steps


def test_the_answer_of_the_picture(pivot):
    """Drill before spot: one move, one rule, with what it costs; the step after
    the tap is habit and costs nothing.
    """
    needed, steps = pivot
    asked = Asked(needed=needed, steps={"set-up-5": steps["set-up-5"]})
    found = marked(
        asked, {"set-up-5": ("find-b-c", "end-right", "drill-threads", "spot-threads", "tap", "step")}
    )
    assert found.total == 1
    assert [(one.first, one.then, one.rule) for one in found.broken] == [
        ("spot-threads", "drill-threads", "spot-before-drilling")
    ]
    assert (
        found.broken[0].because
        == "A long drill walks before it bites, and the hole is then where it should not be."
    )
    assert [one.rule for one in found.habits] == ["heavy-cut-before-the-holes"]
    assert not found.good
    # find before five, end before step, spot before drill and tap, drill before tap
    assert (found.kept, found.of) == (8, 9)


def test_a_right_answer(pivot):
    needed, steps = pivot
    asked = Asked(needed=needed, steps=steps)
    found = marked(asked, steps)
    assert (found.total, found.broken, found.mark, found.good) == (0, (), 1.0, True)
    assert found.kept == found.of
    assert asked.count() == needed.count() == 60


def test_set_ups_the_wrong_way_round_cost_one_and_say_the_rule(pivot):
    needed, steps = pivot
    asked = Asked(needed=needed, steps=steps)
    answer = {
        key: steps[key] for key in ("set-up-1", "set-up-3", "set-up-2", "set-up-4", "set-up-5", "set-up-6")
    }
    found = marked(asked, answer)
    assert found.total == found.astray == 1
    assert [(one.first, one.then, one.rule) for one in found.broken] == [
        ("front-clean", "rear-rough", "face-before-its-use")
    ]


def test_a_reason_is_found_through_a_step_that_is_missing(pivot):
    """Without its middle step a pair still stands, by the rule that ends the way."""
    needed, steps = pivot
    asked = Asked(needed=needed, steps={"set-up-6": steps["set-up-6"]})
    found = marked(
        asked, {"set-up-6": ("find-a-c", "ream", "bore-12", "chamfer", "gauge", "spot-bore", "pilot")}
    )
    assert found.tallies["set-up-6"].missing == ("bore-15-7",)
    rules = {(one.first, one.then): one.rule for one in found.broken}
    assert rules["bore-12", "ream"] == "hole-steps-in-rising-order"
    assert not found.good


def test_what_only_more_work_mends_leaves_the_part_good(samples):
    needed = needed_order(Reckoner().reckon(read_job(samples / "hm-100-drilled-plate-b1.yaml")))
    steps = [step.key for step in needed.job.set_ups[0].operations]
    asked = Asked(needed=needed, steps={needed.job.set_ups[0].key: tuple(steps)})
    turned = [*steps[:-2], steps[-1], steps[-2]]
    found = marked(asked, {needed.job.set_ups[0].key: turned})
    assert [one.severity for one in found.broken] == ["rework"]
    assert found.good
    assert found.mark < 1


def test_sixty_steps_are_marked_in_twenty_milliseconds():
    random = Random(60)
    items = [f"s{place}" for place in range(60)]
    pairs = [
        (items[one], items[other])
        for one in range(60)
        for other in range(one + 1, 60)
        if random.random() < 0.1
    ]
    found = closed(items, pairs)
    answer = random.sample(items, 60)
    best = min(_timed(found, answer) for _ in range(5))
    assert best < 0.020


def _timed(found, answer):
    before = perf_counter()
    found.moves(answer)
    return perf_counter() - before
