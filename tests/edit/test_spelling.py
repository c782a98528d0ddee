"""Changing what a bare number means changes no size, also of fits: `16 H7` is
not a bore of sixteen inches.
"""

from __future__ import annotations

import pytest

from jobsheet.edit.commands import ChangeUnits
from jobsheet.reckoning.cabinet.cabinet_needs import needs_of
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job


@pytest.fixture
def inches(samples):
    return ChangeUnits("in").apply(read_job(samples / "hm-103-pivot-block.yaml"))


def test_a_fit_gets_the_unit_of_its_number(inches):
    reamer = inches.find("ream")[1].fields
    assert reamer.cutter.text == "reamer 16 mm H7, 6 edges, drawer 4 no. 1"
    assert reamer.measure.text == "16 mm H7"


def test_and_means_the_same_when_the_file_is_read_back(inches):
    fields = job_from_text(write_job(inches), "inches.yaml").find("ream")[1].fields
    assert fields.cutter.diameter == pytest.approx(16e-3)
    # ISO 286-1: H7 at 16 is +18 µm.
    assert (fields.measure.low, fields.measure.high) == (pytest.approx(16e-3), pytest.approx(16.018e-3))


def test_names_of_drills_and_threads_stay(inches):
    assert inches.find("tap")[1].fields.cutter.text == "taps M8, drawer 5"


def test_and_back_again_adds_nothing(inches):
    back = ChangeUnits("mm").apply(inches)
    assert back.find("ream")[1].fields.measure.text == "16 mm H7"


def test_squareness_beside_a_size_gets_its_unit(inches):
    assert inches.find("front-clean")[1].fields.tolerances.text == "square 0.05 mm"
    read = job_from_text(write_job(inches), "inches.yaml").find("front-clean")[1].fields
    assert read.tolerances.square == pytest.approx(0.05e-3)


def test_what_is_fetched_in_words_stays_what_it_was(samples):
    """A micrometer up to 50 mm does not become one of fifty inches."""
    job = read_job(samples / "hm-101-setting-block.yaml")
    assert job.also_fetch.endswith("file, micrometer 0-50")
    inches = ChangeUnits("in").apply(job)
    assert inches.also_fetch.endswith("file, micrometer 0-50 mm")
    assert needs_of(inches)[-1].high == pytest.approx(50e-3)
