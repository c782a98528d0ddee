"""A place and the ways to it: what a visit has without being told, and that every
place of the program can be reached.
"""

from __future__ import annotations

from jobsheet.gui.desk.place import Visit
from jobsheet.gui.window import found_places


def test_what_a_visit_is_not_told_does_nothing(qapp):
    visit = Visit(
        desk=None, parent=None, say=print, proof_changed=print, machines_changed=print, tools_changed=print
    )
    assert (visit.save(), visit.on(), visit.at(), visit.show("a"), visit.open_job("a")) == (
        False,
        "",
        "",
        None,
        False,
    )
    assert visit.begin_exercise(None, None) is False
    assert visit.pages() == ()


def test_no_two_ways_have_one_name_or_one_key(qapp):
    ways = [way for name in found_places.names() for way in found_places.place(name).ways]
    keys = [key for way in ways for key in way.keys]
    assert len({way.id for way in ways}) == len(ways) > 5
    assert len(set(keys)) == len(keys)


def test_a_way_with_a_key_is_told_in_the_list_of_keys(qapp):
    for name in found_places.names():
        for way in found_places.place(name).ways:
            assert callable(way.open)
            assert bool(way.told) >= bool(way.keys)
