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
from jobsheet.review.engine import reviewed
from jobsheet.stock.all_shapes import shapes
from jobsheet.storage.job_file import read_job

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


def failures(job):
    reckoned = Reckoner().reckon(job)
    return [one.words() for one in reviewed(job, reckoned).not_checked if one.what.startswith("“")]


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
