"""A job read line by line for the index."""

from __future__ import annotations

from jobsheet.shelf.scanned_job import scanned


def test_a_job_in_inches_is_found_in_millimetres():
    text = "units: in\npart:\n  number: X\nset-ups:\n  - key: a\n    operations:\n      - key: b\n        kind: slot\n        width: 0.5\n"
    assert [(one.micrometres, one.before, one.kind) for one in scanned(text).sizes] == [
        (12700, "width", "slot")
    ]
