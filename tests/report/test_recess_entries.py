"""Where the cutter goes down into a pocket: the hole that was drilled for it,
in the row and in the picture.
"""

from __future__ import annotations

from jobsheet.paths import sample_jobs
from jobsheet.report.blocks import words_of
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.job_file import job_from_text, read_job
from tests.report.plans import pages

NAME = "hm-104-cover-plate"


def told(job):
    return list(words_of(tuple(page.blocks for page in pages(job, fits=fits_on("a4")).pages)))


def test_the_window_of_the_cover_plate_is_entered_at_its_own_hole():
    """Step 58 opens point 7 to 9.0 for the 10 mm cutter of step 60; the wall of step 70 is in the open."""
    said = told(read_job(sample_jobs() / f"{NAME}.yaml"))
    assert "in, step 60" in said
    assert "in, step 70" not in said
    assert [one for one in said if "goes in at point 7, card" in one and "middle 60, 40" in one]


def test_without_a_hole_wide_enough_nothing_is_said():
    text = (sample_jobs() / f"{NAME}.yaml").read_text(encoding="utf-8")
    job = job_from_text(text.replace("cutter: drill 9.0, drawer 3", "cutter: drill 7.0, drawer 3"), NAME)
    assert not [one for one in told(job) if "goes in at point" in one or one.startswith("in, step")]
