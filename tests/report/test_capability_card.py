"""The capability card on paper: one page, both machines, the words that defer, and a place for every answer."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.answers.capability_answer import capability
from jobsheet.report.capability_card import capability_card
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job


@pytest.fixture(scope="module")
def samples_folder():
    from jobsheet.paths import sample_jobs

    return sample_jobs()


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("units", ["mm", "in"])
def test_two_machines_and_a_job_stand_on_one_page(samples_folder, paper, units):
    machines = [find_card("bench-mill-b-1"), find_card("knee-mill-k-2")]
    job = read_job(samples_folder / "hm-100-drilled-plate-b1.yaml")
    document = capability_card(capability(machines, ("S235",), units=units, job=job), date="2026-11-25")
    assert len(document.pages) == 1
    assert fits_on(paper)(document.pages[0])


def test_one_machine_in_two_metals_stands_on_one_page_and_says_what_it_defers_to():
    found = capability([find_card("bench-mill-b-1")], ("S235", "6082-T6"))
    document = capability_card(found, date="2026-11-25")
    assert len(document.pages) == 1
    assert fits_on("a4")(document.pages[0])
    text = repr(document.pages[0])
    assert "One cut in ten ends badly at a planned limit" in text
    assert "manual" in text
    assert make_pdf((document,), "a4").startswith(b"%PDF")
