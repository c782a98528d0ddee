"""The clock of the program set, by a test that keeps what was said on one day, or for a whole run of tests.

What a test cut taught counts a little less every day, a tram check grows old, a form of the law comes into force:
what is kept is kept with its day (`on_day`). That no other test knows the day it was written on is asked by a
run some days on: `DAYS_ON=400 python -m pytest -p tests.later`.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from unittest.mock import patch

from jobsheet import clock


@contextmanager
def on_day(day: str) -> Iterator[None]:
    """Noon of that day, as long as this lasts."""
    noon = datetime.fromisoformat(day).replace(hour=12, tzinfo=UTC)
    with patch.object(clock, "now", lambda: noon):
        yield


def pytest_configure() -> None:
    """The day is as many days on as `DAYS_ON` says."""
    here, days = clock.now, timedelta(days=int(os.environ.get("DAYS_ON", "0")))
    clock.now = lambda: here() + days
