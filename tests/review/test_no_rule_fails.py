"""No rule fails on a plan that says little or odd things: what is not said is no fault, and a
rule that fails says nothing at all.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.errors import JobsheetError
from jobsheet.holdings.all_holdings import holdings as kinds
from jobsheet.model.job import NOTHING, SetUp
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import reviewed, rules
from jobsheet.review.rule import Needs
from jobsheet.stock.all_shapes import shapes
from jobsheet.storage.job_file import read_job
from tests.review.test_rules import CASES, cases_of, edited, facts_named, start_of

UNSEEN = Path(__file__).parents[1] / "unseen"
#: The plate is the same on three machines.
PLANS = [path for path in sorted(sample_jobs().glob("*.yaml")) if not path.stem.endswith(("b2", "k2"))]
MANY = [*PLANS, *sorted(UNSEEN.glob("*/good/*.yaml"))[::9]]
#: Fields of a step that may be empty, or that a step can do without while it is being written.
EMPTIED = (
    "cutter",
    "depth",
    "at",
    "measure",
    "tolerances",
    "how",
    "spindle",
    "feed",
    "within",
    "layer",
    "cut",
    "width",
    "path",
    "ends",
)

#: What the solids find only once for a step.
ONCE_FOR_A_STEP = ("cuts-only-air",)


def failures(job, facts=None):
    reckoned = Reckoner().reckon(job)
    return [one.words() for one in reviewed(job, reckoned, facts).not_checked if one.what.startswith("“")]


def set_all(job, owners, name, text):
    """One field of all of these; where one has no such field, or may not be without it, that one stays."""
    for owner in owners:
        try:
            job = SetField(owner, name, text).apply(job)
        except JobsheetError:
            continue
    return job


def owners_of(job):
    return [f"holding:{one.key}" for one in job.set_ups]


@pytest.mark.parametrize("path", MANY, ids=lambda path: f"{path.parts[-3]}-{path.stem}")
def test_a_set_up_without_steps_fails_none(path):
    job = read_job(path)
    empty = SetUp(key="set-up-empty", number=99, up="top", operator="front", fixed_jaw="rear")
    assert not failures(replace(job, set_ups=(empty, *job.set_ups)))
    assert not failures(replace(job, set_ups=(*job.set_ups, empty)))
    for kind in kinds():
        held = SetField("holding:set-up-empty", "kind", kind).apply(
            replace(job, set_ups=(*job.set_ups, empty))
        )
        assert not failures(held), kind


@pytest.mark.parametrize("kind", ["", *kinds()])
@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_any_holding_of_which_nothing_is_said_fails_none(path, kind):
    job = read_job(path)
    assert not failures(set_all(job, owners_of(job), "kind", kind))
    bare = replace(job, set_ups=tuple(replace(one, holding=NOTHING) for one in job.set_ups))
    assert not failures(set_all(bare, owners_of(bare), "kind", kind))


@pytest.mark.parametrize("field", EMPTIED)
@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_steps_that_leave_a_field_empty_fail_none(path, field):
    job = read_job(path)
    assert not failures(set_all(job, [step.key for _, step in job.operations()], field, ""))


@pytest.mark.parametrize("shape", shapes())
@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
def test_any_shape_of_stock_fails_none(path, shape):
    assert not failures(SetField("job:stock", "shape", shape).apply(read_job(path)))


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
@pytest.mark.parametrize(
    ("owner", "name"),
    [("job", "planned_on"), ("job", "workshop"), ("job", "fluid"), ("job:finished", "sizes"), ("job:stock", "surfaces"), ("job", "datums")],
)  # fmt: skip
def test_what_the_job_does_not_say_fails_none(path, owner, name):
    assert not failures(set_all(read_job(path), [owner], name, ""))


@pytest.mark.parametrize("path", PLANS, ids=lambda path: path.stem)
@pytest.mark.parametrize("name", ["x_from", "y_from", "x_counts", "y_counts", "named", "found"])
def test_a_zero_of_which_little_is_said_fails_none(path, name):
    job = read_job(path)
    owners = [f"{owner}:{one.key}" for one in job.set_ups for owner in ("zero", "setup")]
    assert not failures(set_all(job, owners, name, ""))


@pytest.mark.parametrize("rule", [one.id for one in rules()])
def test_a_fault_of_which_less_is_said_fails_no_rule(monkeypatch, rule):
    """Each plan in which the rule finds something: with its set-ups emptied, and its steps without each of their fields in turn."""
    alone = tuple(one for one in rules() if one.id == rule)
    monkeypatch.setattr(engine, "rules", lambda: alone)
    for case in [one for one in cases_of(CASES / f"{rule}.yaml") if one["remark"] != "none"][:4]:
        job = edited(
            start_of(case.get("job", "hm-100-drilled-plate-k2")), [tuple(one) for one in case["edits"]]
        )
        facts = facts_named(case) or ()
        there = {operation.key for _, operation in job.operations()}
        empty = replace(job, set_ups=tuple(replace(one, operations=()) for one in job.set_ups))
        assert not failures(empty, ())
        for field in EMPTIED:
            for key in case["steps"]:
                less = set_all(job, [key] if key in there else [], field, "")
                if less is not job:
                    assert not failures(less, facts), (case["edits"], key, field)


@pytest.mark.parametrize("rule", [one.id for one in rules() if one.needs is Needs.STAGES])
def test_a_fact_of_the_solids_is_told_once_and_of_no_step_that_is_gone(monkeypatch, rule):
    """The solids may speak of a step that was taken out meanwhile, and twice of the same one."""
    alone = tuple(one for one in rules() if one.id == rule)
    monkeypatch.setattr(engine, "rules", lambda: alone)
    for case in cases_of(CASES / f"{rule}.yaml"):
        facts = facts_named(case)
        if case["remark"] == "none" or facts is None:
            continue
        job = edited(
            start_of(case.get("job", "hm-100-drilled-plate-k2")), [tuple(one) for one in case["edits"]]
        )
        reckoned = Reckoner().reckon(job)
        once = engine.reviewed(job, reckoned, facts)
        gone = [replace(one, key="nowhere") for one in facts]
        more = engine.reviewed(job, reckoned, [*facts, *gone])
        assert [one.message for one in more.open] == [one.message for one in once.open]
        assert not more.not_checked
        assert not engine.reviewed(job, reckoned, gone).open
        if rule not in ONCE_FOR_A_STEP:
            twice = engine.reviewed(job, reckoned, [*facts, *facts])
            assert [one.message for one in twice.open] == [one.message for one in once.open]
