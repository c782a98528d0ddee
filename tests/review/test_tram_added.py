"""A check of the tram as a fix adds it: no wider in an inch job than in millimetres."""

from __future__ import annotations

from jobsheet.review.mending.tram_added import tram_texts
from jobsheet.units.grammar import read


def test_what_it_may_show_over_its_swing_is_no_more_in_inches():
    metric, inch = (
        {
            name: read(text, "length")
            for name, text in tram_texts(units, "10 min").items()
            if name != "minutes"
        }
        for units in ("mm", "in")
    )
    assert inch["allowed"] / inch["swing"] <= metric["allowed"] / metric["swing"]
    assert inch["allowed"] <= metric["allowed"]
    assert tram_texts("in", "15 min")["minutes"] == "15 min"
