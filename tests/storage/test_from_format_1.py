"""A file of format 1 as a whole: what its words say twice is kept once."""

from __future__ import annotations

from jobsheet.storage.job_file import job_from_text

OLD = """
format: 1
units: mm
part: {number: X-1, later: hardened}
material: S235
machine: bench-mill-b-1
note: General limits ±0.1. Mineral oil only.
stock: {length: 80, width: 50, height: 12}
set-ups:
  - key: one
    number: 1
    title: in the drill jig
    holding: {device: 80 mm vice, packing: "two 6 mm parallels, at the left end of the jaws", note: against an angle plate}
    zero: {named: centre of the bore}
    operations:
      - {key: d, number: 10, kind: drill, cutter: drill 5, at: [[10, 10]], depth: through, feed: "0.1", note: plugged}
      - {key: b, number: 20, kind: bench-step, what: "Measure the hole, plug gauge"}
"""


def test_words_that_are_repeated_are_kept_once():
    """Device and packing alike: the note has the words once, and its own behind them."""
    plate = OLD.replace("device: 80 mm vice", "device: angle plate").replace(
        '"two 6 mm parallels, at the left end of the jaws"', "angle plate"
    )
    assert job_from_text(plate, "old").set_ups[0].holding.note == "angle plate; against an angle plate"
