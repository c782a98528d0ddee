"""Threads, drills and fits as people write them."""

from __future__ import annotations

import pytest

from jobsheet.catalog.metals.materials import find, own_names
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import read_thread, tap_drill, thread_table
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import NoSuchEntry, QuantityError


@pytest.mark.parametrize(
    ("text", "major_mm", "pitch_mm"),
    [
        ("M6", 6, 1),
        ("M8", 8, 1.25),
        ("M8x1", 8, 1),
        ("M8x1.25", 8, 1.25),
        ("5/16-18 UNC", 7.9375, 25.4 / 18),
        ("1/4-20", 6.35, 1.27),
        ("#10-32", 4.826, 25.4 / 32),
        ("#10-24 UNC", 4.826, 25.4 / 24),
    ],
)
def test_threads_of_the_standards(text, major_mm, pitch_mm):
    """ISO 261 coarse pitches, ASME B1.1 majors."""
    thread = read_thread(text)
    assert thread.major == pytest.approx(major_mm * 1e-3)
    assert thread.pitch == pytest.approx(pitch_mm * 1e-3)


@pytest.mark.parametrize("text", ["M", "M0", "M6x9", "5/16-18 UNF", "#40-20", "M9.7", "wing nut"])
def test_what_is_no_thread_is_refused(text):
    with pytest.raises(QuantityError):
        read_thread(text)


def test_every_thread_of_the_table_reads_back_and_its_drill_exists():
    for row in thread_table().values():
        thread = read_thread(row.name)
        assert thread.major == pytest.approx(row.major)
        assert thread.fine == row.fine
        drill = tap_drill(thread)
        assert drill is not None
        assert 0.7 < read_drill_size(drill) / row.major < 1


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("40 ±0.03", 39.97, 40.03),
        ("16 H7", 16.0, 16.018),  # ISO 286-1, 10-18 mm, IT7 18 µm
        ("12 H9", 12.0, 12.043),
        ("25 h6", 24.987, 25.0),
        ("10 +0.05/0", 10.0, 10.05),
        ("11.5 ±0.1 mm", 11.4, 11.6),
        ("1.000 ±0.001 in", 25.3746, 25.4254),
        ("12", 12, 12),
    ],
)
def test_sizes_with_their_limits(text, low, high):
    size = read_size(text)
    assert size.low * 1e3 == pytest.approx(low)
    assert size.high * 1e3 == pytest.approx(high)


@pytest.mark.parametrize("text", ["16 k6", "16 H1", "0 ±0.1", "±0.1", "600 H7"])
def test_limits_that_are_not_known_are_refused(text):
    with pytest.raises(QuantityError):
        read_size(text)


def test_a_material_is_found_by_any_of_its_names():
    assert find("A36") is find("S235JR") is find("s235")
    with pytest.raises(NoSuchEntry, match="Did you mean S235"):
        find("S253")
    assert "S235" in own_names()
