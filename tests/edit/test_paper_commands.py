"""Cards are documents too: every edit of typed text can be undone."""

from __future__ import annotations

import pytest

from jobsheet.edit.paper_commands import AddEntry, MoveEntry, PaperHistory, RemoveEntry, SetText
from jobsheet.errors import CommandError
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.own_paper import open_own
from jobsheet.storage.typed_paper import entries_at, text_at


@pytest.fixture
def history():
    paper, _ = open_own("machines", "bench-mill-b-1")
    return PaperHistory(paper, LAYOUT)


def test_typing_in_one_field_is_one_step(history):
    first = history.paper
    for text in ("0", "0.", "0.7 kW, plate"):
        history.do(SetText(("spindle", "power"), text, "Power"))
    assert history.changed
    assert history.undo_label == "Power"
    history.undo()
    assert history.paper is first
    assert not history.changed
    history.redo()
    assert text_at(history.paper, ("spindle", "power")) == "0.7 kW, plate"


def test_the_same_text_is_no_step(history):
    history.do(SetText(("title",), "Bench mill B-1"))
    assert not history.can_undo


def test_entries_are_added_moved_and_taken_out_and_listeners_know_the_shape_changed(history):
    told = []
    history.subscribe(told.append)
    path = ("spindle", "ranges", 0, "steps")
    history.do(AddEntry(path))
    history.do(SetText((*path, 6, "speed"), "3000 rpm"))
    history.do(MoveEntry(path, 6, 0))
    assert text_at(history.paper, (*path, 0, "speed")) == "3000 rpm"
    history.do(RemoveEntry(path, 0))
    assert len(entries_at(history.paper, path)) == 6
    assert [one.shape for one in told] == [True, False, False, True]
    for _ in range(4):
        history.undo()
    assert not history.changed


def test_an_entry_that_is_not_there_is_refused_and_nothing_changes(history):
    with pytest.raises(CommandError):
        history.do(RemoveEntry(("handles",), 7))
    assert not history.can_undo


def test_a_list_that_the_file_has_not_is_made(history):
    history.do(SetText(("table", "load"), ""))
    history.do(AddEntry(("spindle", "ranges")))
    assert len(entries_at(history.paper, ("spindle", "ranges"))) == 2
