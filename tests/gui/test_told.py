"""What the menu Help tells: the keys of the window and of its places, single ones before joined ones."""

from __future__ import annotations

from jobsheet.gui.desk.place import Way
from jobsheet.gui.window.told import Told


def _way(told, *keys):
    return Way(id=told, text=told, keys=keys, told=told, opens_on="job", order=1, open=lambda _: None)


def test_places_stand_among_the_keys_the_single_ones_first(qapp):
    told = Told(
        (_way("the card", "Ctrl+M"), _way("what ran", "F5", "Ctrl+F5"), _way("without a key")), lambda _: None
    )
    words = told.keys()
    assert "{places}" not in words
    assert "\nF5: what ran\nCtrl + M: the card\n" in words
    assert "without a key" not in words
    assert "Ctrl + F5" not in words


def test_every_line_is_a_key_and_what_it_does(qapp):
    for line in Told((), lambda _: None).keys().splitlines():
        key, _, said = line.partition(": ")
        assert key
        assert said


def test_both_are_pages_of_the_help(qapp):
    opened = []
    told = Told((), opened.append)
    told.show_keys()
    told.show_about()
    assert opened == ["keys", "about"]
