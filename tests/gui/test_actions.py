"""The way to a place among the actions."""

from jobsheet.gui.window import actions, found_places


def test_ways_are_told_apart():
    ways = found_places.ways()
    assert len({way.id for way in ways}) == len(ways)
    assert len({way.order for way in ways}) == len(ways)
    keys = [key for way in ways for key in way.keys] + [key for row in actions.ACTIONS for key in row.keys]
    assert len(set(keys)) == len(keys)
    assert all(way.told for way in ways if way.keys)
