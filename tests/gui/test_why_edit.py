"""Why this order, from the menu: written from the facts, undone in a press, and
never over what a person wrote.
"""

from jobsheet.edit.commands import SetField


def test_it_is_written_once_and_undone(window):
    desk = window.desk
    before = desk.job.why
    assert before
    window.actions_by_id["why"].trigger()
    assert desk.job.why == before  # a person wrote it
    desk.do(SetField("job", "why", ""))
    window.actions_by_id["why"].trigger()
    assert "50 before 60: a long drill walks before it bites" in desk.job.why
    window.actions_by_id["undo"].trigger()
    assert desk.job.why == before  # one step with the text that was taken out
