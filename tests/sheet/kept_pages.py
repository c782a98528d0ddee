"""Kept pictures of every A4 page of the samples, small and grey: `python -m tests.sheet.kept_pages` makes
them anew after a look at the pages.

One picture a sample, its pages side by side. They are compared in `test_kept_pages.py`.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path
from typing import Any
from unittest.mock import patch

import numpy as np
from PIL import Image

from jobsheet.paths import sample_jobs
from jobsheet.report.heed import safety
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job
from tests.report.plans import pages
from tests.sheet.on_paper import Paper

KEPT = Path(__file__).parent / "kept"
#: Dots an inch: letters are grey specks, blocks and lines are seen.
DOTS = 40.0
#: Lines of law say how old they are: they are kept for one day.
DAY = date(2026, 11, 25)


def samples() -> tuple[str, ...]:
    """The names of the samples."""
    return tuple(sorted(path.stem for path in sample_jobs().glob("*.yaml")))


def pictures(name: str) -> list[Any]:
    """The A4 pages of a sample as grey values."""
    with patch.object(safety, "today", lambda: DAY):
        document = pages(read_job(sample_jobs() / f"{name}.yaml"), fits=fits_on("a4"))
    read = Paper(make_pdf((document,), "a4"))
    return [read.grey(index, DOTS) for index in range(len(read))]


def kept(name: str) -> list[Any]:
    """The kept pages of a sample; none where there are none."""
    path = KEPT / f"{name}.png"
    if not path.is_file():
        return []
    whole = np.asarray(Image.open(path).convert("L"))
    count = round(whole.shape[1] / (210 / 25.4 * DOTS))
    return np.split(whole, count, axis=1)


def differs(one: Any, other: Any) -> float:
    """The share of a page whose grey has become another, each dot with its
    neighbours: what moved, came or went.
    """
    if one.shape != other.shape:
        return 1.0
    apart = np.abs(_soft(one) - _soft(other))
    return float((apart > 40).mean())


def _soft(page: Any) -> Any:
    """Each dot as the mean of four: what another way of smoothing letters changes is no difference."""
    values = page.astype(float)
    return (values[:-1, :-1] + values[1:, :-1] + values[:-1, 1:] + values[1:, 1:]) / 4


def main() -> None:
    """Make all of them anew."""
    KEPT.mkdir(exist_ok=True)
    for name in samples():
        whole = np.concatenate(pictures(name), axis=1)
        Image.fromarray(whole).quantize(16).save(KEPT / f"{name}.png", optimize=True)
    for path in KEPT.glob("*.png"):
        if path.stem not in samples():
            path.unlink()


if __name__ == "__main__":
    main()
