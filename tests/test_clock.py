"""One clock for the whole program."""

from __future__ import annotations

import re
from datetime import datetime, timedelta, timezone
from pathlib import Path

import jobsheet
from jobsheet import clock

#: A minute after midnight, two hours east of Greenwich, where it is still the day before.
_NIGHT = datetime(2026, 12, 1, 0, 1, 2, 3000, tzinfo=timezone(timedelta(hours=2)))


def test_the_day_is_that_of_the_place_also_a_minute_after_midnight(monkeypatch):
    monkeypatch.setattr(clock, "now", lambda: _NIGHT)
    assert (clock.today(), clock.time_of_day()) == ("2026-12-01", "00:01:02.003")


def test_this_moment_has_a_zone():
    assert clock.now().utcoffset() is not None


def test_the_clock_is_asked_nowhere_else():
    home = Path(jobsheet.__file__).parent
    asks = re.compile(r"datetime\.now|date\.today|utcnow")
    found = [
        str(path.relative_to(home)) for path in home.rglob("*.py") if asks.search(path.read_text("utf-8"))
    ]
    assert found == ["clock.py"]
