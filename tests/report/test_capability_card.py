"""The capability card on paper: one page, both machines, the words that
defer, and a place for every answer.
"""

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


def test_it_says_what_was_tried_and_when_what_never_was_and_what_to_try_next():
    """Scenario, sections 3 and 3a: five side cuts on B-1; on B-2 three and two
    taps. Neither has faced or slotted.
    """
    found = capability([find_card("bench-mill-b-1")], ("S235",))
    text = repr(capability_card(found, date="2026-11-25").pages[0])
    assert (
        "side cut 6 mm wide, 5 cuts, the newest 2026-11-12. Never tried: facing 30 mm wide, slot, drill from solid."
        in text
    )
    (card,) = found.materials[0]
    never, last = card.next[0], card.next[-1]
    facing = card.rows[0]
    assert (
        never
        == f"Facing 30 mm wide: never tried, nine in ten between {facing.low} and {facing.high}. A ladder begins at about {facing.plan}."
    )
    assert last.startswith("Side cut 6 mm wide: 5 cuts")
    assert not any(
        "rill" in one for one in card.next
    )  # the arm gives out first: test cuts would never come to the motor
    other = repr(
        capability_card(capability([find_card("bench-mill-b-2")], ("S235",)), date="2026-11-25").pages[0]
    )
    assert "side cut 6 mm wide, 3 cuts, the newest 2026-11-13; tap, 2 cuts, the newest 2026-11-17." in other


def test_a_machine_that_nobody_tried_says_so():
    text = repr(
        capability_card(capability([find_card("knee-mill-k-2")], ("S235",)), date="2026-11-25").pages[0]
    )
    assert "Knee mill K-2: nothing was tried yet, all bands are from its card." in text


def test_one_machine_in_two_metals_with_a_job_still_fits(samples_folder):
    job = read_job(samples_folder / "hm-100-drilled-plate-b1.yaml")
    found = capability([find_card("bench-mill-b-1")], ("S235", "6082-T6"), job=job)
    document = capability_card(found, date="2026-11-25")
    assert all(fits_on("a4")(page) for page in document.pages)
