"""What is said of a step goes by its roles: a kind by another name is told the same, and one that
nobody knows is told what concerns it.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.step_commands import AddOperation
from jobsheet.operations.registry import kind, kinds, made_up
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review import engine
from jobsheet.review.engine import review, rules
from jobsheet.review.notes.notes import notes_for
from jobsheet.review.notes.reminders import reminders_for
from jobsheet.storage.job_file import read_job
from tests.operations.made_up.dovetail import KIND as DOVETAIL
from tests.review.test_rules import cases, edited, facts_named, remarks, start_of

HERE = Path(__file__).parent
SAMPLES = sorted(
    [
        *sample_jobs().glob("*.yaml"), *(HERE / "jobs").glob("*.yaml"), *(HERE.parent / "operations" / "jobs").glob("*.yaml"),
    ]
)  # fmt: skip


def other(name):
    """The same kind by another name."""
    return replace(kind(name), name=f"x-{name}")


def under_other_names(job, names):
    """A job whose steps of these kinds are of the same kind by another name."""
    return replace(
        job,
        set_ups=tuple(
            replace(
                one,
                operations=tuple(
                    replace(step, kind=f"x-{step.kind}") if step.kind in names else step
                    for step in one.operations
                ),
            )
            for one in job.set_ups
        ),
    )


def told(job, facts=None):
    """All that is said of a job; a mend by its label, for the step that it makes has a new key."""
    reckoned = Reckoner().reckon(job)
    found = review(job, reckoned, facts)
    return (
        [(one.rule, one.severity, one.message, one.operations, one.set_up, one.fix and one.fix.label) for one in found],
        {key: (one.figures, one.limits, one.rows, one.dials, one.problem) for key, one in reckoned.operations.items()},
        notes_for(job, reckoned),
        reminders_for(job, reckoned),
        minutes_of_job(reckoned),
    )  # fmt: skip


@cache
def as_it_is(path):
    """A job of the samples and all that is said of it."""
    job = read_job(path)
    return job, told(job)


@pytest.mark.parametrize("name", kinds())
def test_a_kind_by_another_name_is_told_the_same(name):
    for path in SAMPLES:
        job, said = as_it_is(path)
        if name not in {step.kind for _, step in job.operations()}:
            continue
        with made_up(other(name)):
            assert told(under_other_names(job, {name})) == said


@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_a_job_of_kinds_that_nobody_knows_is_told_the_same(path):
    job, said = as_it_is(path)
    with made_up(*(other(name) for name in kinds())):
        assert told(under_other_names(job, set(kinds()))) == said


#: Of the planted mistakes one in three is told twice in the suite, all of them in the long run.
TWICE = [
    pytest.param(*one.values, id=one.id, marks=[pytest.mark.long] if index % 3 else [])
    for index, one in enumerate(cases())
]


@pytest.mark.parametrize(("rule", "case"), TWICE)
def test_a_planted_mistake_of_a_kind_that_nobody_knows_is_told_the_same(hm100, monkeypatch, rule, case):
    start = start_of(case["job"]) if "job" in case else hm100
    # One rule alone is asked: no rule hears of another.
    monkeypatch.setattr(engine, "rules", lambda: tuple(one for one in rules() if one.id == rule))
    job = edited(start, [tuple(one) for one in case["edits"]])
    solids, facts = "solids" in case, facts_named(case)

    def said(one):
        return [
            (found.message, found.fix and found.fix.label)
            for found in remarks(one, solids=solids, facts=facts)
            if found.rule == rule
        ]

    with made_up(*(other(name) for name in kinds())):
        renamed = under_other_names(job, set(kinds()))
        assert said(renamed) == said(job)
        if "mended" in case:
            fix = next(
                found.fix for found in remarks(renamed, solids=solids, facts=facts) if found.rule == rule
            )
            assert not said(fix.mend(renamed))


class TestAMadeUpKind:
    """A dovetail, which stands in a folder of tests: nothing else was touched for it."""

    @pytest.fixture(autouse=True)
    def there(self):
        with made_up(DOVETAIL):
            yield

    def job(self, hm100, *edits, behind="tap"):
        job = AddOperation("set-up-1", DOVETAIL.name, behind).apply(hm100)
        key = f"{DOVETAIL.name}-1"
        for owner, name, text in edits:
            job = SetField(key if owner == "it" else owner, name, text).apply(job)
        return job, key

    def rules(self, job, key):
        return {one.rule for one in remarks(job) if key in one.operations}

    def test_it_has_the_limits_of_what_it_does(self, hm100):
        job, key = self.job(hm100)
        found = Reckoner().reckon(job).operations[key]
        assert not found.problem
        names = {one.name for one in found.limits}
        assert {
            "spindle-torque", "spindle-power", "speed-range", "hand-pace", "holding", "chatter", "cutter-bending", "travel",
        } <= names  # fmt: skip

    @pytest.mark.parametrize(
        ("rule", "edits"),
        [
            ("slow-enough-for-the-cutter", [("job", "material", "304"), ("it", "cutter", "end mill 50 mm, 4 teeth")]),  # speed
            ("deburr-after-last-cut", []),  # order
            ("entry-for-a-closed-slot", []),
            ("no-milling-in-a-drill-chuck", [("it", "cutter", "end mill 12 mm, 4 teeth, in a drill chuck")]),  # holding
            ("size-and-limits-entered", [("it", "measure", "12 mm")]),  # measuring
            ("gauge-finer-than-the-limits", [("it", "measure", "12 ±0.01"), ("it", "tolerances", "gauge vernier calliper")]),
            ("undersize-cutter-for-a-close-slot", [("it", "measure", "12 +0.02/0")]),
            ("slot-in-layers", [("it", "depth", "11 mm")]),
        ],
    )  # fmt: skip
    def test_it_is_told_what_concerns_it(self, hm100, rule, edits):
        # Behind everything else, so also behind the step that deburrs.
        job, key = self.job(hm100, *edits, behind=hm100.operations()[-1][1].key)
        assert rule in self.rules(job, key)

    def test_it_is_told_nothing_of_what_it_is_not(self, hm100):
        job, key = self.job(hm100, ("it", "cutter", "slot drill 12 mm, 30 mm out"))
        concerned = {"deburr-after-last-cut", "slot-in-layers", "in-the-cabinet", "pace-the-hand-can-hold"}
        assert self.rules(job, key) <= concerned

    def test_it_is_read_from_a_file_and_answered(self, hm100, tmp_path):
        from jobsheet.reckoning.answers.all_answers import answers_in_parts
        from jobsheet.storage.job_writing import save_job

        job, key = self.job(hm100)
        save_job(job, tmp_path / "one.yaml")
        again = read_job(tmp_path / "one.yaml")
        assert again == job
        reckoned = Reckoner().reckon(again)
        *_, last = answers_in_parts(*again.find(key), reckoned)
        assert last.neighbours is not None

    def test_the_registry_forgets_it(self):
        assert DOVETAIL.name in kinds()
        with made_up(replace(DOVETAIL, name="made-up-other")):
            assert kind("made-up-other").title == "Dovetail"
        assert "made-up-other" not in kinds()
