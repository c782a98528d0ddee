"""The largest drill, tap and face mill of each machine: it is carried, and the next
is not (scenario sections 2 and 9).
"""

from __future__ import annotations

import pytest

from jobsheet.reckoning.answers import largest
from jobsheet.reckoning.answers.inverse import best, is_carried
from jobsheet.reckoning.answers.largest import largest_drill, largest_tap, widest_face_mill
from tests.reckoning.steps import around

from .machines_asked import MACHINES


@pytest.mark.parametrize(
    ("machine", "way"),
    [
        ("bench-mill-b-1", "by hand only"),
        ("bench-mill-b-2", "under power"),
        ("knee-mill-k-2", "by hand or with a tapping head that slips"),
    ],
)
def test_largest_tap_of_the_scenario(machine, way):
    """Section 2: the yes-or-no limits are asked first, whatever the torque."""
    assert largest_tap(around(machine)).way == way


def test_b2_taps_m6_under_power_and_not_m10():
    """Story 8: M6 becomes possible under power (1.92 N·m against a peak of
    4.97); M10 asks 7.3 and is beyond.
    """
    found = largest_tap(around("bench-mill-b-2"))
    assert 6e-3 <= found.expected_size < 10e-3
    assert found.tight_size < 10e-3
    assert found.stopped.name == "spindle-torque"
    assert "by hand up to" in found.note


def test_by_hand_it_ends_where_usual_wrenches_end():
    """The longest usual wrench is for M16 (cutting-data 1.6): above it nothing is said."""
    found = largest_tap(around("bench-mill-b-1", "6082-T6"))
    assert found.tight == "M16"
    assert "usual wrench" in found.stops
    # A comfortable 8.4 N·m on 280 mm: M10 asks 7.3 in mild steel, M12 12.6.
    assert largest_tap(around("bench-mill-b-1")).expected == "M10"


def test_largest_drill_agrees_with_the_push_on_the_lever():
    """Section 9: 10 mm at 0.13 is beyond the hand on B-1; section 2 notes 10 mm
    in steel, from 8 mm with a pilot.
    """
    setting = around("bench-mill-b-1")
    found = largest_drill(setting, feed=0.13e-3)
    assert 8e-3 <= found.tight_size < 10e-3
    assert found.stopped.name == "quill-push"
    assert largest_drill(setting).tight_size < 10e-3
    assert largest_drill(setting, pilot=True).tight_size >= 10e-3


def test_largest_drill_of_b2_is_the_noted_one():
    """Section 2: 8 mm with a pilot, at the 0.0055 in of the published band that it was noted with."""
    found = largest_drill(around("bench-mill-b-2"), feed=0.0055 * 25.4e-3, pilot=True)
    assert found.tight_size == pytest.approx(8.1e-3, abs=0.15e-3)


@pytest.mark.parametrize("machine", MACHINES)
@pytest.mark.parametrize("pilot", [False, True])
def test_the_next_larger_drill_is_not_carried(machine, pilot):
    from jobsheet.catalog.tools.drill_sets import drill_set

    setting = around(machine)
    found = largest_drill(setting, pilot=pilot)
    larger = next(size for size in drill_set("metric") if size.diameter > found.tight_size * 1.0001)
    assert larger.diameter <= found.tight_size * 1.05

    def carried(size):
        there = largest.replace(setting, pilot=largest.usual_pilot(size.diameter).high if pilot else None)
        usual = largest.drill_feed(size.diameter, there.material).value
        # At the usual feed, or as little as still cuts where that is too much (0.4 of the curve).
        feeds = (usual, usual * 0.65, usual * 0.4)
        return any(
            best("drill", largest._drilled(size, there, feed), there, is_carried).carried for feed in feeds
        )

    assert not carried(larger)
    assert carried(next(size for size in drill_set("metric") if size.name == found.tight))
    assert found.expected_size <= found.tight_size


@pytest.mark.parametrize("machine", MACHINES)
def test_widest_face_mill_passes_and_the_next_does_not(machine):
    found = widest_face_mill(around(machine))
    assert found.tight_size >= found.expected_size >= 32e-3
    assert found.stops


# --- which row of a list is the largest ---


@pytest.mark.parametrize("rows", [0, 1, 2, 15, 16, 17, 18, 40])
def test_of_rows_that_grow_harder_the_last_that_passes_is_found(rows):
    """The index of the last that passes is one less than how many pass; −1 where none does, and of an empty list."""
    for passing in range(rows + 1):
        found = largest._most(range(rows), lambda row, _judge: row, lambda row, most=passing: row < most)
        assert found == passing - 1, (rows, passing)


def test_where_the_smallest_break_the_larger_are_found_all_the_same():
    """The first ten of forty break, those up to the thirty-first go: a list is sampled before it is bisected."""
    assert largest._most(range(40), lambda row, _judge: row, lambda row: 10 <= row <= 31) == 31


def test_of_an_empty_list_nothing_is_the_largest():
    found = largest._largest("largest drill", (), lambda row, _judge: row, lambda row: (row, 0.0))
    assert (found.expected, found.expected_size, found.tight, found.tight_size) == ("", None, "", None)
    assert (found.at, found.stopped, found.end) == (None, None, "")


def test_face_mills_have_preferred_diameters():
    """ISO 3, R10 in whole millimetres: 25, 32 (31.5), 40, 50, 63, 80, 100, 125; inches within a seventh of them, teeth never fewer."""
    assert [size for size, _ in largest._FACE_MILLS["mm"]] == [25, 32, 40, 50, 63, 80, 100, 125]
    assert [size for size, _ in largest._FACE_MILLS["in"]] == [1, 1.25, 1.5, 2, 2.5, 3, 4, 5]
    for rows in largest._FACE_MILLS.values():
        teeth = [one for _, one in rows]
        assert teeth == sorted(teeth)
        assert (teeth[0], teeth[-1]) == (2, 8)
