"""Places are found by walking their folder."""

from PySide6.QtWidgets import QMenu

from jobsheet.gui.desk.place import Place
from jobsheet.gui.window import found_places


def test_every_place_has_a_title_and_a_way():
    assert {"cabinet", "capability", "card", "fits", "proving", "ran"} <= set(found_places.names())
    for name in found_places.names():
        place = found_places.place(name)
        assert isinstance(place, Place)
        assert place.title
        assert place.ways


def test_the_menu_of_machines_ends_with_the_ways_in_their_order(window):
    menu = QMenu()
    window.fill_menu("[machines]", menu)
    shown = [action.text() for action in menu.actions()]
    ways = [way.text for way in found_places.ways()]
    assert shown[-len(ways) :] == ways


def test_a_file_is_a_place_too(tmp_path, monkeypatch):
    (tmp_path / "shelf.py").write_text("PLACE = None\n", encoding="utf-8")
    (tmp_path / "_not.py").write_text("", encoding="utf-8")
    monkeypatch.setattr(found_places, "_PLACES", tmp_path)
    found_places.names.cache_clear()
    assert found_places.names() == ("shelf",)
    monkeypatch.undo()
    found_places.names.cache_clear()
