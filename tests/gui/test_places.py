"""A place is found by walking its folder, has its way in the menu, and is read only when menus are made."""

import subprocess
import sys

import pytest
from PySide6.QtWidgets import QDialog, QMenu

from jobsheet.gui.desk.place import Place
from jobsheet.gui.window import actions, found_places


def test_every_place_has_a_title_and_a_way():
    assert {"cabinet", "capability", "card", "fits", "proving", "ran"} <= set(found_places.names())
    for name in found_places.names():
        place = found_places.place(name)
        assert isinstance(place, Place)
        assert place.title
        assert place.ways


def test_ways_are_told_apart():
    ways = found_places.ways()
    assert len({way.id for way in ways}) == len(ways)
    assert len({way.order for way in ways}) == len(ways)
    keys = [key for way in ways for key in way.keys] + [key for row in actions.ACTIONS for key in row.keys]
    assert len(set(keys)) == len(keys)
    assert all(way.told for way in ways if way.keys)


def test_the_menu_of_machines_ends_with_the_ways_in_their_order(window):
    menu = QMenu()
    window.fill_menu("[machines]", menu)
    shown = [action.text() for action in menu.actions()]
    ways = [way.text for way in found_places.ways()]
    assert shown[-len(ways) :] == ways


def test_the_list_of_keys_has_those_of_the_places(window):
    window.actions_by_id["keys"].trigger()
    shown = next(one for one in window.findChildren(QDialog) if one.isVisible()).shown.text
    assert (
        "Ctrl + Down, Ctrl + Up: next or previous remark or problem\nF6: prove the machine\nF7: what it will carry\n"
        "Ctrl + M: the job on another machine\nCtrl + H: what happened at the machine\nCtrl + Shift + O: the shelf: find a job again\n"
        "Ctrl + Shift + P: plans of this job that were printed or made\n"
        "Ctrl + Shift + L: a lesson: put the steps in order\n"
        "F9: the work after, before, as stock\n" in shown
    )


@pytest.mark.parametrize("code", ["found_places.names()", "found_places.ways()"])
def test_to_find_a_place_is_not_to_load_what_it_shows(code):
    script = f"import sys; from jobsheet.gui.window import found_places; {code}; print(*sys.modules)"
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.split())
    assert not {name for name in loaded if name.startswith("jobsheet.gui.") and name.endswith("_window")}
    if "names" in code:
        assert "jobsheet.gui.places.fits" not in loaded


def test_a_file_is_a_place_too(tmp_path, monkeypatch):
    (tmp_path / "shelf.py").write_text("PLACE = None\n", encoding="utf-8")
    (tmp_path / "_not.py").write_text("", encoding="utf-8")
    monkeypatch.setattr(found_places, "_PLACES", tmp_path)
    found_places.names.cache_clear()
    assert found_places.names() == ("shelf",)
    monkeypatch.undo()
    found_places.names.cache_clear()
