"""The readings of a whole set-up: HM-102 on its inch dials (demo scenario section 5)."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.answers.readings import approaches, readings_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job


@pytest.fixture
def slide(samples):
    job = read_job(samples / "hm-102-slide-plate.yaml")
    found = readings_of(job.set_ups[2], Reckoner().reckon(job), find_card(job.machine))
    return {one.number: one for one in found}


def test_holes_of_hm_102_with_the_drawing_behind(slide):
    rows = [
        (at.x.dial, at.x.reading.line, at.y.dial, at.y.reading.line, at.x.drawing) for at in slide[60].places
    ]
    assert rows == [
        ("1 + .1937", 194, "1 + .1937", 194, "10"),
        ("17 + .1433", 143, "1 + .1937", 194, "90"),
        ("17 + .1433", 143, "9 + .1685", 169, "90"),
        ("1 + .1937", 194, "9 + .1685", 169, "10"),
    ]


def test_the_two_walls_of_the_slot(slide):
    """Front wall 25.00 = 29.50 − 4.50, rear wall 35.00 = 30.50 + 4.50; from the lines the slot is 10.016 wide."""
    front, rear = slide[100].wall, slide[105].wall
    assert (front.wall, rear.wall) == (pytest.approx(25e-3), pytest.approx(35e-3))
    assert (rear.comes_out - front.comes_out) * 1e3 == pytest.approx(10.016, abs=5e-4)
    assert "its two walls fall on different turns, 5 and 6: count them aloud" in slide[105].warnings
    assert not any("two walls" in words for words in slide[100].warnings)


def test_layers_are_counted_from_the_top(slide):
    """Four layers of 3 mm on a knee of 0.100 in a turn: 12 mm is 0.47244 in, 4 turns and 72."""
    assert [one.reading.line for one in slide[90].depths] == [18, 36, 54, 72]
    assert slide[90].depth_handle == "knee"
    assert slide[90].depths[-1].dial == "4 + .0724"


def test_a_place_that_is_come_to_from_above_is_marked(slide):
    """The fourth hole lies at X 10 after X 90; the wall's other end is reached in the cut."""
    assert [at.back for at in slide[60].places] == [("x", "y"), (), (), ("x",)]
    assert slide[100].places[1].back == ()


def test_how_places_are_come_to():
    assert [name for name, _ in approaches(find_card("knee-mill-k-2"))] == ["x", "y"]
