"""Writing from right to left prints in the order typed: it is said on the page and where
somebody prints, and nowhere else.
"""

from __future__ import annotations

import pytest

from jobsheet.paths import sample_jobs
from jobsheet.report.blocks import words_of
from jobsheet.report.wording import TYPED_ORDER
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.job_file import job_from_text
from tests.report.plans import pages

PLATE = (sample_jobs() / "hm-100-drilled-plate-b1.yaml").read_text(encoding="utf-8")


@pytest.mark.parametrize("written", ["לוח", "لوحة", "plate ١٢"])
def test_it_is_said_of_any_such_text(written):
    job = job_from_text(PLATE.replace("name: Drilled plate", f"name: {written}"), "plate")
    document = pages(job, fits=fits_on("a4"))
    assert TYPED_ORDER in document.left_out
    assert all(TYPED_ORDER in page.foot for page in document.pages if page.kind in ("cover", "set-up"))


@pytest.mark.parametrize("written", ["Drilled plate", "Lochplatte 12 µm", "Плита", "穴あき板"])
def test_it_is_not_said_of_other_writing(written):
    job = job_from_text(PLATE.replace("name: Drilled plate", f"name: {written}"), "plate")
    document = pages(job, fits=fits_on("a4"))
    assert TYPED_ORDER not in document.left_out
    assert TYPED_ORDER not in list(words_of(tuple(page.foot for page in document.pages)))
