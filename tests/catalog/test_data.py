"""What is shipped is text throughout: no word of it becomes a truth, a time or another number."""

from __future__ import annotations

from jobsheet.catalog.reading.data import load, parsed, shipped
from jobsheet.paths import resources


def test_every_scalar_stays_as_it_is_written():
    """Readers of YAML 1.1 make False, 750 minutes and 15 of these."""
    assert parsed("a: No\nb: 12:30\nc: 017\nd: 1e3\ne: [~, 1_000]\n") == {
        "a": "No", "b": "12:30", "c": "017", "d": "1e3", "e": ["~", "1_000"],
    }  # fmt: skip


def test_a_file_is_found_by_its_way_below_resources():
    assert shipped(
        "materials",
        "steels.yaml"
        if (resources() / "materials" / "steels.yaml").is_file()
        else next((resources() / "materials").glob("*.yaml")).name,
    )
    assert shipped("taps.yaml") == load(resources() / "taps.yaml")
