"""The day and the time of day by the clock of the place: asked here alone, so that a plan, its paper and what is
learned from a machine never disagree about the day, and a test can say which day it is.
"""

from __future__ import annotations

from datetime import datetime


def now() -> datetime:
    """The moment, with the zone of the place."""
    return datetime.now().astimezone()


def today() -> str:
    """The day as it is written, such as `2026-11-28`."""
    return now().date().isoformat()


def time_of_day() -> str:
    """The time of day as it is written, to the thousandth: what is entered one after the other keeps its order."""
    return now().time().isoformat("milliseconds")
