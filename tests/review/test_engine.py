"""What is set aside stands in the file, on the command line and on paper; a hazard of a
trainee stays open without initials.
"""

import json

from msgspec.structs import replace

from jobsheet.__main__ import main
from jobsheet.edit.setting_aside import Dismiss
from jobsheet.edit.several_steps import MoveSteps
from jobsheet.model.job import Dismissed
from jobsheet.model.remark import Remark
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.review import engine
from jobsheet.review.engine import about, counts, reviewed
from jobsheet.review.notes.notes import notes_for
from jobsheet.review.rule import Needs, Rule
from jobsheet.sheet.printing import document_for
from jobsheet.storage.job_file import read_job
from jobsheet.storage.job_writing import save_job, write_job


def drilled_first(job):
    """The drill before its spot."""
    return MoveSteps(("drill",), "set-up-1", 1).apply(job)


def test_a_dismissed_remark_is_saved_read_and_told_apart(hm100, tmp_path, capsys):
    job = Dismiss("spot-before-drilling", "drill", "through a drill bush", "TR").apply(drilled_first(hm100))
    path = tmp_path / "plate.yaml"
    save_job(job, path)
    assert write_job(read_job(path)) == path.read_text()
    read = reviewed(job, Reckoner().reckon(job))
    assert [(remark.rule, why.reason) for remark, why in read.aside] == [
        ("spot-before-drilling", "through a drill bush")
    ]
    assert "spot-before-drilling" not in {remark.rule for remark in read.open}
    main(["check", str(path), "--json"])
    told = json.loads(capsys.readouterr().out)
    assert told["set aside"][0]["reason"] == "through a drill bush"


def test_it_is_printed_with_its_reason(hm100):
    job = Dismiss("spot-before-drilling", "drill", "through a drill bush", "TR").apply(drilled_first(hm100))
    found = Reckoner().reckon(job)
    document = document_for(job, found, notes_for(job, found), reviewed(job, found).open)
    printed = "\n".join(words_of(tuple(page.blocks for page in document.pages)))
    assert "through a drill bush (TR)" in printed


def test_a_hazard_in_a_trainees_job_needs_initials(hm100):
    job = drilled_first(replace(hm100, trainee=True))
    remark = replace(reviewed(job, Reckoner().reckon(job)).open[0], severity="hazard")
    without = Dismissed(rule=remark.rule, about="drill", reason="it is fine")
    assert not counts(without, remark, job)
    assert counts(replace(without, initials="TR"), remark, job)
    assert counts(without, remark, replace(job, trainee=False))


def test_every_rule_explains_itself(capsys):
    from jobsheet.review.engine import rules

    for rule in rules():
        assert main(["why", rule.id]) == 0
        said = capsys.readouterr().out
        for part in ("Because:", "Not so:", "So:", "From:"):
            assert part in said, rule.id


def test_a_remark_is_about_its_first_step_else_its_set_up_else_its_line():
    """The sizes of a part are line 0, its features lines from 1."""
    for more, what in (
        ({"operations": ("drill", "tap"), "set_up": "set-up-1", "line": 2}, "drill"), ({"set_up": "set-up-1", "line": 2}, "set-up-1"),
        ({"line": 2}, "line 2"), ({"line": 0}, "line 0"), ({}, ""),
    ):  # fmt: skip
        assert about(Remark(rule="a", severity="habit", message="b", why="c", **more)) == what


def test_of_one_severity_the_step_that_is_cut_first_comes_first(hm100, monkeypatch):
    """By the first of its steps; what is about no step of the job stands before."""

    def says(severity, *steps):
        return Remark(rule="a", severity=severity, message=" ".join(steps), why="", operations=steps)

    said = (
        says("rework", "tap"),
        says("rework", "clamp"),
        says("rework", "tap", "drill"),
        says("scrap", "tap"),
        says("rework"),
    )
    only = Rule(id="a", title="A", severity="rework", needs=Needs.ORDER, check=lambda _view: said)
    monkeypatch.setattr(engine, "rules", lambda: (only,))
    found = reviewed(hm100, Reckoner().reckon(hm100)).open
    assert [(one.severity, one.operations) for one in found] == [
        ("scrap", ("tap",)), ("rework", ()), ("rework", ("clamp",)), ("rework", ("tap", "drill")), ("rework", ("tap",)),
    ]  # fmt: skip
