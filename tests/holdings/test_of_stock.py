"""What the stock says for its holding."""

from __future__ import annotations

from jobsheet.holdings.of_stock import at_odds

from .round_stock import BAR, CHUCK, job_of


def test_another_diameter_is_said_with_what_to_do():
    job = job_of(BAR, f"{CHUCK}; diameter: 35")
    assert at_odds(job.set_ups[0], job.stock) == (
        "the chuck is said to hold 35, and the stock is ⌀40:"
        " leave the diameter of the work empty, or write that of the stock"
    )
    assert at_odds(job_of(BAR, f"{CHUCK}; diameter: 1.575 in").set_ups[0], job.stock) == ""
