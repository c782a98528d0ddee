"""What is measured in a set-up, as the sheet says it."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.measuring import how_in_words
from jobsheet.edit.commands import ChangeUnits, SetField
from jobsheet.report.rows.measured import limits
from jobsheet.storage.job_file import job_from_text, read_job
from jobsheet.storage.job_writing import write_job


def drilled(samples, text):
    job = read_job(samples / "hm-101-setting-block.yaml")
    key = next(one.key for _, one in job.operations() if one.kind == "face")
    return SetField(key, "measure", text).apply(job), key


def test_the_line_stays_in_file_and_units_and_names_the_gauge(samples):
    text = "25 ±0.05, micrometer, at both ends, between cuts, before unclamping"
    job, key = drilled(samples, text)
    assert job_from_text(write_job(job), "job") == job
    size = job.find(key)[1].fields.measure
    assert limits(size, "mm") == ("24.95", "25.05")
    assert how_in_words(size) == "micrometer, at both ends, before unclamping, between cuts"
    inches = ChangeUnits("in").apply(job).find(key)[1].fields.measure
    assert inches.low == pytest.approx(0.02495)
    assert inches.text.startswith("25 ±0.05 mm, micrometer")
