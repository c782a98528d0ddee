"""How high what the work lies on is, where jaws and work say it: numbers done by hand."""

from __future__ import annotations

import pytest

from jobsheet.holdings.placed import height_under
from jobsheet.model.lying import lying, stock_box
from jobsheet.paths import sample_jobs
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job


def under(name: str, index: int = 0) -> float | None:
    job = read_job(sample_jobs() / f"{name}.yaml")
    set_up = job.set_ups[index]
    return height_under(set_up, lying(set_up, stock_box(job)), find_card(job.machine))


@pytest.mark.parametrize(
    ("name", "high"),
    [
        # Jaws 25 deep, work 12, 6 of it over the jaws: 25 − (12 − 6).
        ("hm-100-drilled-plate-b1", 19e-3),
        # Jaws 40 deep, casting 46, 15 of it over the jaws: 40 − (46 − 15).
        ("hm-103-pivot-block", 9e-3),
    ],
)
def test_jaws_less_what_lies_in_them(name, high):
    assert under(name) == pytest.approx(high)


def test_without_jaws_nothing_is_said():
    assert under("hm-104-cover-plate") is None
