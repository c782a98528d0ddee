"""Figures of a step, asked by name."""

from __future__ import annotations

from jobsheet.model.figure import VERDICTS, Figure, Figures

FOUND = Figures((Figure("spindle_speed", 10.0, "rev/s", "600"), Figure("torque", 0.0, "N*m", "0.00")))


def test_what_is_there_is_found_though_it_is_nought():
    assert FOUND.value("spindle_speed") == 10.0
    assert FOUND.value("torque") == 0.0
    assert FOUND.get("torque") is FOUND.items[1]
    assert FOUND.shown("torque", "none") == "0.00"


def test_what_is_not_there_is_none_and_shows_what_stands_in_its_place():
    assert FOUND.get("power") is None
    assert FOUND.value("power") is None
    assert FOUND.shown("power") == ""
    assert FOUND.shown("power", "–") == "–"


def test_verdicts_go_from_the_mildest_to_the_worst():
    assert (
        VERDICTS.index("cut before")
        < VERDICTS.index("expected")
        < VERDICTS.index("tight")
        < VERDICTS.index("beyond")
    )


def test_where_a_number_must_be_there_is_nought_and_a_count_is_one_at_least():
    counted = Figures((Figure("layers", 3.0, "-", "3"), Figure("passes", 0.0, "-", "0")))
    assert [FOUND.number(name) for name in ("spindle_speed", "torque", "power")] == [10.0, 0.0, 0.0]
    assert [counted.count(name) for name in ("layers", "passes", "strokes")] == [3, 1, 1]
