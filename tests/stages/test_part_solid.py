"""The finished part as a solid, in closed form."""

from __future__ import annotations

import pytest

from jobsheet.storage.job_file import read_job

from .parts_made import PIVOT, SAMPLES, by_solids, typed, without

SLIDE = next(path for path in SAMPLES if "102" in path.name)


def test_metal_left_in_a_step_names_its_line():
    found = by_solids(without(read_job(PIVOT), "step"))
    assert [one.what for one in found] == ["left"]
    assert found[0].lines == (1,)
    assert found[0].volume == pytest.approx(20e-3 * 12e-3 * 50e-3)


def test_a_slot_cut_too_long_names_the_step():
    found = by_solids(typed(read_job(SLIDE), "slot", ends="25, 30; 78, 30"))
    assert [one.what for one in found] == ["cut away"]
    assert found[0].steps == ("slot",)


def test_a_wall_left_in_a_slot_is_found_to_a_hundredth():
    """0.5 a side: left out it leaves a wall that thick over the whole length of the slot."""
    found = by_solids(without(read_job(SLIDE), "slot-rear"))
    assert [one.what for one in found] == ["left"]
    assert found[0].lines == (1,)
    assert 0.1e-3 < found[0].thick < 0.5e-3
