"""Days of a run as they are typed and said."""

import pytest

from jobsheet.errors import CommandError
from jobsheet.reckoning.run_words import day_words, read_day


@pytest.mark.parametrize(
    ("text", "day"),
    [("28 Nov", "2026-11-28"), ("1 dec", "2025-12-01"), ("today", "2026-11-29"), ("Yesterday", "2026-11-28"),
     ("3 March 2024", "2024-03-03"), ("2026-11-01", "2026-11-01"), ("3. Sept.", "2026-09-03")],
)  # fmt: skip
def test_a_day_is_read_as_it_is_typed(text, day):
    assert read_day(text, "2026-11-29") == day


@pytest.mark.parametrize(
    "text", ["", "soon", "31 Feb", "40 Nov", "2026-13-01", "5 xyz", "30 Nov 2026", "2027-01-01"]
)
def test_what_is_no_day_or_still_to_come_is_refused(text):
    with pytest.raises(CommandError):
        read_day(text, "2026-11-29")


def test_a_day_is_said_in_the_words_of_the_sheet():
    assert day_words("2026-11-05") == "5 Nov"
    assert day_words("2026-11-05", year=True) == "5 Nov 2026"
