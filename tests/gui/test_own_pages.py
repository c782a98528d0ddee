"""Pages of the help that only the window can make: every place has one, and the
last says what went wrong lately.
"""

from __future__ import annotations

import pytest

from jobsheet.gui.window import found_places
from jobsheet.gui.window.own_pages import TAIL, own_pages


def _about():
    return dict(own_pages("")[-1].lines)


def test_the_keys_stand_as_they_are_told(qapp):
    page = own_pages("F1: help on what has the focus\nDel: take out: the row")[0]
    assert page.id == "keys"
    assert page.lines == (("F1", "help on what has the focus"), ("Del", "take out: the row"))


def test_every_place_has_a_page_with_the_ways_to_it(qapp):
    pages = {page.id: page for page in own_pages("")}
    for name in found_places.names():
        page = pages[f"place:{name}"]
        assert page.title == found_places.place(name).title
        assert len(page.lines) >= len(found_places.place(name).ways)
        assert all("&" not in words and not words.endswith("…") for words, _ in page.lines)


def test_the_end_of_the_log_is_shown_where_there_is_one(qapp, home):
    assert _about()["Its end"] == "no problem so far"
    home.mkdir(exist_ok=True)
    (home / "problems.log").write_text("old\n" * 900 + "the last line\n")
    assert _about()["Its end"].endswith("the last line")
    assert len(_about()["Its end"]) <= TAIL


@pytest.mark.parametrize("kept", [b"", b" \n"])
def test_an_empty_log_is_no_problem(qapp, home, kept):
    home.mkdir(exist_ok=True)
    (home / "problems.log").write_bytes(kept)
    assert _about()["Its end"] == "no problem so far"


def test_a_log_that_cannot_be_read_says_so(qapp, home):
    (home / "problems.log").mkdir(parents=True)
    assert _about()["Its end"].startswith("cannot be read: ")
    assert _about()["Version"]
