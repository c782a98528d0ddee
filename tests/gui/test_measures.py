"""Where the columns stand: in the order of the sheet at every width, and what has no room is left out."""

from __future__ import annotations

import pytest

from jobsheet.gui.column.measures import MARGIN, columns
from jobsheet.gui.ink.look import Look
from jobsheet.gui.ink.tokens import LIGHT


@pytest.mark.parametrize(
    ("width", "form"), [(1500, "wide"), (1182, "wide"), (1181, "medium"), (882, "medium"), (881, "narrow")]
)
def test_the_form_goes_by_the_width_with_its_scroll_bar(qapp, width, form):
    """Below 1200 and 900 px the narrower layouts begin (`look`); the list is
    18 px narrower than the window.
    """
    at = columns(Look(LIGHT), width)
    assert at.form == form
    assert at.margin == width - MARGIN[form]


@pytest.mark.parametrize("factor", [1.0, 1.5])
@pytest.mark.parametrize("width", [700, 1000, 1400, 2000])
def test_from_left_to_right_nothing_stands_before_what_comes_before_it(qapp, width, factor):
    at = columns(Look(LIGHT, factor), width)
    row = [
        at.sign,
        at.number_right,
        at.icon,
        at.text,
        at.cutter,
        at.margin,
        at.rpm_right,
        at.pace_right,
        at.depth_right,
    ]
    row = [place for place in (*row, at.mark, at.share) if place]
    assert row == sorted(row)
    assert row[-1] < width


def test_the_cutter_has_a_column_only_where_it_is_wide(qapp):
    look = Look(LIGHT)
    assert columns(look, 1400).cutter > 0
    assert columns(look, 1000).cutter == 0
    narrow = columns(look, 700)
    assert (narrow.rpm_right, narrow.pace_right, narrow.depth_right) == (0, 0, 0)
