"""What is set aside stands in the file, on the command line and on paper; a hazard of a
trainee stays open without initials.
"""

import json

from msgspec.structs import replace

from jobsheet.__main__ import main
from jobsheet.edit.setting_aside import Dismiss
from jobsheet.edit.several_steps import MoveSteps
from jobsheet.model.job import Dismissed
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.review.engine import counts, reviewed
from jobsheet.review.notes.notes import notes_for
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
