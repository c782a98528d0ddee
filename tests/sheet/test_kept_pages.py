"""Every page of the samples looks as it was kept. Where a change is meant: look at the pages, then
`python -m tests.sheet.kept_pages`.
"""

from __future__ import annotations

import numpy as np
import pytest

from tests.sheet.kept_pages import KEPT, differs, kept, pictures, samples

#: So much of a page may differ: some dots of letters that another build smooths otherwise; a
#: word that moved is ten times as much.
TOLERANCE = 0.0004
#: All of them together [bytes].
MOST = 2_000_000


@pytest.mark.parametrize("name", samples())
def test_the_pages_of_a_sample_look_as_they_were_kept(name):
    before, now = kept(name), pictures(name)
    again = "look at them, then: python -m tests.sheet.kept_pages"
    assert len(before) == len(now), f"{name}: {len(now)} pages, {len(before)} are kept; {again}"
    for number, (one, other) in enumerate(zip(before, now, strict=True), 1):
        share = differs(one, other)
        assert share <= TOLERANCE, f"{name}, page {number}: {share:.2%} of it changed; {again}"


def test_a_line_that_moved_and_a_word_that_went_are_seen():
    page = pictures("hm-100-drilled-plate-b1")[0]
    moved = page.copy()
    moved[200:, :] = np.roll(page[200:, :], 2, axis=0)
    assert differs(page, moved) > 10 * TOLERANCE
    without = page.copy()
    without[155:162, 25:75] = 255  # a heading of the first page
    assert differs(page, without) > TOLERANCE
    assert differs(page, page) == 0


def test_kept_pictures_are_small_and_none_is_left_over():
    assert sum(path.stat().st_size for path in KEPT.iterdir()) < MOST
    assert {path.stem for path in KEPT.iterdir()} == set(samples())
