"""Days of a run as they are typed and said."""

import pytest

from jobsheet.errors import CommandError
from jobsheet.model.what_ran import Entry, Runs
from jobsheet.reckoning.run_words import change_words, day_words, days_told, outcome_words, read_day


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


def said(about, **more):
    """One entry of the second of December."""
    base = {"job": "HM-1", "plan": "", "revision": 1, "machine": "m", "date": "2026-12-02", "about": about}
    return Entry(**base | more)


def told(*entries, units="mm"):
    return days_told(Runs(entries=entries), units)


@pytest.mark.parametrize(("today", "day"), [("2026-11-01", "2026-11-01"), ("2026-10-31", "2025-11-01")])
def test_a_day_without_a_year_is_today_or_the_last_such_day(today, day):
    assert read_day("1 Nov", today) == day


def test_minutes_to_set_up_and_to_cut_are_said_together_and_round():
    """1260 s + 1440 s = 2700 s are 45 min; 89 s are 1.48 min, 91 s are 1.52 min."""
    assert told(said("minutes", setting_up=1260.0, cutting=1440.0)) == (("2026-12-02", "45 min"),)
    assert told(said("minutes", cutting=89.0))[0][1] == "1 min"
    assert told(said("minutes", setting_up=91.0))[0][1] == "2 min"
    assert told(said("minutes", cutting=1260.0), said("minutes", setting_up=1440.0))[0][1] == "45 min"


def test_a_size_alone_is_a_number_and_several_have_their_names():
    one, other = said("size", size="40 h9", found=39.98e-3), said("size", size="12 H7", found=12.0104e-3)
    assert told(one)[0][1] == "found 39.98"
    assert told(one, other)[0][1] == "found 39.98 (40 h9), 12.01 (12 H7)"
    # 0.5006 in is 12.71524 mm
    assert told(said("size", size="1/2", found=12.71524e-3), units="in")[0][1] == "found 0.5006"


def test_of_steps_the_troubled_ones_are_said_and_clean_ones_where_none_was():
    clean, more = (said("step", key=f"k{number}", number=number, outcome="clean") for number in (70, 80))
    noisy = said("step", key="k", number=90, outcome="noisy", depth=4e-3, layer=2)
    assert told(clean)[0][1] == "step 70 clean"
    assert told(clean, more)[0][1] == "steps 70, 80 clean"
    assert told(clean, noisy, more)[0][1] == "step 90 noisy at 4 mm, layer 2"


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ({"outcome": "noisy"}, "noisy"), ({"outcome": "noisy", "layer": 1}, "noisy, layer 1"),
        ({"outcome": "slipped", "slipped": "vice", "depth": 0.5e-3}, "vice slipped at 0.5 mm"),
        ({"outcome": "not cut", "depth": 4e-3, "layer": 2}, "not cut"),
    ],
)  # fmt: skip
def test_how_a_step_went_in_words(more, words):
    assert outcome_words(said("step", **more), "mm") == words


@pytest.mark.parametrize(
    ("change", "note", "words"),
    [("lighter", "", "lighter"), ("", "turn\nit round", "turn it round"), ("other order", "40 first", "other order: 40 first"), ("", "", "")],
)  # fmt: skip
def test_a_change_is_ready_words_with_one_s_own_behind_them(change, note, words):
    assert change_words(said("change", change=change, note=note)) == words


def test_a_day_is_told_in_one_order_the_newest_day_first():
    """Minutes, steps, sizes, changes, whatever was entered first; a change without words says nothing."""
    day = (
        said("change", change="lighter"), said("change"), said("size", size="80", found=80e-3),
        said("step", key="k", number=70, outcome="noisy"), said("minutes", cutting=120.0),
        said("change", date="2026-12-03", change="slower"),
    )  # fmt: skip
    assert told(*day) == (
        ("2026-12-03", "would change: slower"),
        ("2026-12-02", "2 min; step 70 noisy; found 80; would change: lighter"),
    )
    assert told() == ()


def test_a_leap_day_without_a_year_is_the_last_that_there_was():
    assert read_day("29 Feb", "2026-11-29") == "2024-02-29"
    assert read_day("29 Feb", "2024-03-01") == "2024-02-29"
    assert read_day("29 Feb", "2024-02-28") == "2020-02-29"
    with pytest.raises(CommandError):
        read_day("31 Nov", "2026-11-29")
