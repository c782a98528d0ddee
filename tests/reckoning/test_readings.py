"""The readings of a whole set-up: HM-102 on its inch dials (demo scenario section 5)."""

from __future__ import annotations

from pathlib import Path

import pytest

from jobsheet.edit.commands import SetField
from jobsheet.operations.registry import kind
from jobsheet.reckoning.answers.readings import approaches, readings_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job

JOBS = Path(__file__).parents[1] / "operations" / "jobs"


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
    """Front wall 25.00 = 29.50 − 4.50, rear wall 35.00 = 30.50 + 4.50; from the
    lines the slot is 10.016 wide.
    """
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


def depths(job, reckoner=None):
    """Every depth dial of its first set-up by step, and from where it counts."""
    found = readings_of(job.set_ups[0], (reckoner or Reckoner()).reckon(job), find_card(job.machine))
    return {one.number: ([stop.dial for stop in one.depths], one.depth_zero) for one in found if one.depths}


@pytest.mark.parametrize("name", ["hm-100-drilled-plate-b1", "hm-100-drilled-plate-k2"])
def test_a_finishing_pass_goes_on_where_the_roughing_ended(samples, name):
    """0.4 off and then 0.1 off with the same cutter: the dial ends at 0.5, and never goes back."""
    job = read_job(samples / f"{name}.yaml")
    found = readings_of(job.set_ups[0], Reckoner().reckon(job), find_card(job.machine))
    rough, finish = (one for one in found if one.depths)
    assert rough.depths[-1].distance == pytest.approx(0.4e-3)
    assert finish.depths[-1].distance == pytest.approx(0.5e-3)
    assert rough.depth_zero == "0 where this cutter touches the top"
    assert finish.depth_zero == "0 where this cutter touched the top before step 20, 0.4 mm higher"


def test_another_cutter_is_touched_anew(hm100):
    """What goes into the spindle between takes the cutter out, and with it its zero."""
    job = SetField("face-finish", "cutter", "face mill 63 mm, 5 teeth, carbide").apply(hm100)
    assert depths(job)[30] == (["0 + 0.10"], "0 where this cutter touches the top")


def test_one_edit_moves_the_readings_after_it(hm100):
    """The reckoner takes over what is the same: depth and cutter of an earlier
    step reach the dials of a later one.
    """
    reckoner = Reckoner()
    assert depths(hm100, reckoner)[30][0] == ["0 + 0.50"]
    deeper = SetField("face-rough", "depth", "1.2").apply(hm100)
    assert depths(deeper, reckoner)[30][0] == ["0 + 1.30"]
    assert "0 + 1.30" in reckoner.reckon(deeper).operations["face-finish"].dials[2].note
    other = SetField("face-rough", "cutter", "face mill 40 mm, 3 teeth, carbide").apply(deeper)
    assert depths(other, reckoner)[30][0] == ["0 + 0.10"]
    assert depths(hm100, reckoner)[30][0] == ["0 + 0.50"]


def test_a_keyway_begins_and_ends_at_its_centres():
    """25 over round ends with a cutter of 6: the centre goes 19 on, from 15 to 34. On a dial of 0.2 in a turn (5.08 mm)
    these are 2 turns and .1906, 6 turns and .1386; 25 of Y are 4 turns and .1843 (worked by hand).
    """
    job = read_job(JOBS / "keyway.yaml")
    (keyway,) = readings_of(job.set_ups[0], Reckoner().reckon(job), find_card(job.machine))
    assert [(at.x.dial, at.y.dial) for at in keyway.places] == [
        ("2 + .1906", "4 + .1843"),
        ("6 + .1386", "4 + .1843"),
    ]


@pytest.mark.parametrize("path", sorted(JOBS.glob("*.yaml")), ids=lambda path: path.stem)
def test_whoever_says_a_place_is_given_its_readings(path):
    """What has a place to wind to has readings at both handles, whatever its field is called."""
    job = read_job(path)
    found = {
        one.key: one for one in readings_of(job.set_ups[0], Reckoner().reckon(job), find_card(job.machine))
    }
    for _, operation in job.operations():
        said = [one.name for one in kind(operation.kind).entries if one.asks == "places"]
        if any(getattr(operation.fields, name) for name in said):
            assert found[operation.key].places
            assert all(at.x is not None and at.y is not None for at in found[operation.key].places)
