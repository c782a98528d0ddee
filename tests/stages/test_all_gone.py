"""A slip that cuts all the stock away, and a question that fails: said of that
one step, and all else is still said.
"""

from __future__ import annotations

from queue import SimpleQueue

import pytest
from click.testing import CliRunner

from jobsheet.cli.main import group
from jobsheet.edit.commands import SetField
from jobsheet.gui.desk.stage_work import StageWork, Wanted
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.cover import open_lines
from jobsheet.report.plan import Plan, courses
from jobsheet.review.engine import reviewed, rules
from jobsheet.review.notes.notes import notes_for
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.stages import checks, pictures, solids
from jobsheet.stages.course import course_of
from jobsheet.stages.pictures import VIEWS, picture
from jobsheet.stages.solids import Modeller
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_writing import write_job
from tests.report.plans import pages


@pytest.fixture
def gone(hm100):
    """Depth 60 where 0.4 was meant, on stock 12 high."""
    return SetField("face-rough", "depth", "60").apply(hm100)


def read_through(job):
    reckoned = Reckoner().reckon(job)
    return reviewed(job, reckoned, facts_of(job, reckoned))


def test_all_stock_cut_away_is_a_remark_of_the_step_that_does_it_and_of_no_other(gone):
    found = [one for one in read_through(gone).open if one.rule in ("something-is-left", "cuts-only-air")]
    assert [(one.rule, one.operations) for one in found] == [("something-is-left", ("face-rough",))]
    assert not read_through(gone).not_checked


@pytest.mark.parametrize("view", VIEWS)
def test_every_stage_of_it_has_its_picture(gone, view):
    reckoned = Reckoner().reckon(gone)
    for stage in Modeller().stages(course_of(gone, reckoned.settings)):
        for hidden in (False, True):
            picture(stage, view, 200, 100, hidden=hidden)


def test_its_sheets_are_made(gone):
    assert "could not be drawn" not in "\n".join(words_of(pages(gone).pages))


def answers(work, job, serial=1):
    """What the worker says of a job: pictures by key, and facts."""
    reckoned = Reckoner().reckon(job)
    queue = SimpleQueue()
    keys = tuple(operation.key for _, operation in job.operations())
    course = course_of(job, reckoned.settings)
    for current in keys[:3]:
        work.ask(Wanted(serial, course, keys, current, "mm", "after", (job, reckoned), queue))
        drawn = {}
        while (answer := queue.get(timeout=20)).facts is None:
            drawn |= answer.drawings
    return drawn, answer.facts


def test_the_worker_draws_it_and_answers_what_comes_after(gone, hm100):
    work = StageWork()
    drawn, facts = answers(work, gone)
    assert set(drawn) == {one.key for _, one in gone.operations()}
    assert "nothing-left" in {one.kind for one in facts}
    assert not [one for one in answers(work, hm100)[1] if one.kind in ("nothing-left", "not-checked")]
    work.finish()


def broken(*_, **__):
    raise ZeroDivisionError("as if")


def test_the_worker_outlives_whatever_breaks(hm100, monkeypatch):
    work = StageWork()
    for owner, name in ((Modeller, "in_turn"), (solids, "_step"), (pictures, "stage_items")):
        with monkeypatch.context() as patch:
            patch.setattr(owner, name, broken)
            kinds = [one.kind for one in answers(work, SetField("face-rough", "note", name).apply(hm100))[1]]
            assert "not-checked" in kinds, name
    assert not [one for one in answers(work, hm100)[1] if one.kind == "not-checked"]
    work.finish()


def test_a_step_that_the_modeller_cannot_cut_is_said_and_the_others_are_looked_at(hm100, monkeypatch):
    whole = solids._step

    def step(before, cut):
        return broken() if cut.key == "face-finish" else whole(before, cut)

    monkeypatch.setattr(solids, "_step", step)
    monkeypatch.setattr(solids, "_SHARED", [])
    stages = Modeller().stages(course_of(hm100, Reckoner().reckon(hm100).settings))
    failed = [one for one in read_through(hm100).not_checked if one.operation == "face-finish"]
    assert failed
    assert (
        failed[0]
        .words(30)
        .startswith("solids not checked: step 30: the program failed here: ZeroDivisionError: as if")
    )
    assert stages[-1].volume < stages[0].volume


def test_a_fact_that_fails_fails_for_its_own_step(hm100, monkeypatch):
    whole = checks._place_facts

    def place(stage, cut):
        return broken() if cut.key == "face-rough" else whole(stage, cut)

    monkeypatch.setattr(checks, "_place_facts", place)
    deep = SetField("drill", "at", "14, 12; 200, 12").apply(hm100)
    read = read_through(deep)
    assert [one.operation for one in read.not_checked] == ["face-rough"]
    assert "hole-off-the-work" in {one.rule for one in read.open}


def test_a_rule_that_raises_is_said_by_its_title_and_takes_no_other_with_it(gone, monkeypatch):
    first = rules()[0]
    others = {one.rule for one in read_through(gone).open}
    made = tuple(
        type(one)(id=one.id, title=one.title, severity=one.severity, needs=one.needs, check=broken)
        if one is first
        else one
        for one in rules()
    )
    monkeypatch.setattr("jobsheet.review.engine.rules", lambda: made)
    read = read_through(gone)
    assert [one.what for one in read.not_checked] == [f"“{first.title}”"]
    assert {one.rule for one in read.open} == others - {first.id}


def test_what_is_not_checked_is_said_by_check_and_stops(hm100, tmp_path, monkeypatch):
    path = tmp_path / "plate.yaml"
    path.write_text(write_job(hm100), "utf-8")
    monkeypatch.setattr(checks, "_place_facts", broken)
    said = CliRunner().invoke(group, ["check", str(path)], standalone_mode=False)
    assert said.return_value == 1
    assert "solids not checked: step 20: " in said.output
    assert "No remarks" not in said.output
    assert '"not checked": [\n    {' in CliRunner().invoke(group, ["check", str(path), "--json"]).output


def test_what_is_not_checked_stands_on_the_cover(hm100, monkeypatch):
    monkeypatch.setattr(checks, "_place_facts", broken)
    reckoned = Reckoner().reckon(hm100)
    missing = reviewed(hm100, reckoned, facts_of(hm100, reckoned)).not_checked
    plan = Plan(
        job=hm100, reckoned=reckoned, notes=notes_for(hm100, reckoned), remarks=(), card=find_card(hm100.machine),
        acknowledged=(), fits=lambda _: True, courses=courses(hm100, reckoned.settings), not_checked=missing,
    )  # fmt: skip
    assert any(one.text.startswith("Solids not checked: step 20: ") for one in open_lines(plan))


def test_a_picture_that_cannot_be_drawn_leaves_the_page_whole(hm100, monkeypatch):
    monkeypatch.setattr(pictures, "stage_items", broken)
    said = "\n".join(words_of(pages(hm100).pages))
    assert "Finished: this picture could not be drawn" in said
    assert "After this set-up: this picture could not be drawn" in said
