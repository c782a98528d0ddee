"""A remark is set aside with a reason, comes back by undo, and a hazard in a trainee's job needs initials."""

from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.edit.setting_aside import Dismiss
from jobsheet.gui.forms import ask


def spoiled(window):
    """HM-100 with the drill before its spot: one remark that it wanders."""
    window.parts.edits.steps.move_to(("drill",), "set-up-1", 1)
    window.parts.review()
    window.open_key("drill")
    return next(one for one in window.desk.remarks if one.rule == "spot-before-drilling")


def rules_of(window):
    window.parts.review()
    return [one.rule for one in window.desk.remarks]


def test_a_reason_sets_it_aside_and_undo_brings_it_back(window, monkeypatch):
    remark = spoiled(window)
    monkeypatch.setattr(ask, "reason", lambda *_args, **_more: ("drilled through a bush", ""))
    window.parts.edits.remarks.dismiss(remark)
    assert "spot-before-drilling" not in rules_of(window)
    assert window.desk.job.dismissed[0].reason == "drilled through a bush"
    window.parts.edits.history.undo()
    assert "spot-before-drilling" in rules_of(window)


def test_no_answer_changes_nothing(window, monkeypatch):
    remark = spoiled(window)
    monkeypatch.setattr(ask, "reason", lambda *_args, **_more: None)
    window.parts.edits.remarks.dismiss(remark)
    assert not window.desk.job.dismissed


def test_an_empty_reason_is_refused_in_words(window, monkeypatch):
    remark = spoiled(window)
    monkeypatch.setattr(ask, "reason", lambda *_args, **_more: ("  ", ""))
    window.parts.edits.remarks.dismiss(remark)
    assert "why" in window.bench.status.message
    assert not window.desk.job.dismissed


def test_a_hazard_of_a_trainee_needs_initials(window, monkeypatch):
    window.desk.do(SetField("job", "trainee", "yes"))
    remark = replace(spoiled(window), severity="hazard")
    monkeypatch.setattr(ask, "reason", lambda *_args, **_more: ("it is fine", ""))
    window.parts.edits.remarks.dismiss(remark)
    assert not window.desk.job.dismissed
    monkeypatch.setattr(ask, "reason", lambda *_args, **_more: ("shown at the machine", "TR"))
    window.parts.edits.remarks.dismiss(remark)
    assert window.desk.job.dismissed[0].initials == "TR"


def test_all_come_back_at_once(window):
    remark = spoiled(window)
    window.desk.do(Dismiss(remark.rule, remark.operations[0], "for a test"))
    assert "spot-before-drilling" not in rules_of(window)
    window.parts.edits.remarks.bring_back()
    assert "spot-before-drilling" in rules_of(window)


def test_backwards_goes_to_the_remark_before(window):
    spoiled(window)
    window.parts.edits.walking.next_remark()
    first = window.parts.edits.walking.visited
    window.parts.edits.walking.next_remark()
    window.parts.edits.walking.previous_remark()
    assert window.parts.edits.walking.visited == first


def test_a_fix_says_beforehand_what_it_changes(window):
    spoiled(window)
    window.show_job()
    line = next(one for one in window.open_row.remark_lines if one.remark.rule == "spot-before-drilling")
    line.setFocus()
    window.parts.edits.remarks.preview(line)
    assert "Moves " in line.button.toolTip()
