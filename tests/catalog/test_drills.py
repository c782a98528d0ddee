"""Drills that are named, not measured."""

from __future__ import annotations

from jobsheet.catalog.tools.drills import named_sizes, read_drill_size


def test_named_drills_are_all_there_and_fall_in_size():
    sizes = named_sizes()
    assert len(sizes) == 80 + 26
    numbers = [sizes[f"#{n}"] for n in range(1, 81)]
    assert numbers == sorted(numbers, reverse=True)
    letters = [sizes[chr(ord("A") + n)] for n in range(26)]
    assert letters == sorted(letters)
    assert read_drill_size("No. 7") == read_drill_size("#7") == sizes["#7"]
