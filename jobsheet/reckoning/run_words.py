"""Days of a run as they are said and typed, and what happened last time in one line."""

from __future__ import annotations

import re
from calendar import monthrange
from collections.abc import Iterable
from datetime import date, timedelta
from pathlib import Path

from jobsheet.errors import CommandError, DocumentError
from jobsheet.model.job import Job, SetUp
from jobsheet.model.what_ran import NOT_CUT, Entry, Runs
from jobsheet.storage.records.run_log import read_runs
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: As they are written on a sheet, whatever the language of the computer is.
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_TYPED = re.compile(r"(\d{1,2})\.?\s*([a-z]{3,9})\.?\s*(\d{4})?", re.IGNORECASE)


def day_words(day: str, *, year: bool = False) -> str:
    """`2026-11-28` as `28 Nov`, or `28 Nov 2026`."""
    read = date.fromisoformat(day)
    words = f"{read.day} {MONTHS[read.month - 1]}"
    return f"{words} {read.year}" if year else words


def read_day(text: str, today: str) -> str:
    """A day as it is typed: `28 Nov`, `28 November 2026`, `2026-11-28`, `today`,
    `yesterday`; without a year the last such day.

    Raises
    ------
    CommandError
        If it is no day, or one to come.
    """
    words = " ".join(text.split()).lower()
    now = date.fromisoformat(today)
    try:
        found = _day(words, now)
    except ValueError:
        raise CommandError(f"“{text}” is not a day; write 28 Nov, 2026-11-28, today or yesterday.") from None
    if found > now:
        raise CommandError(
            f"{day_words(found.isoformat(), year=True)} is still to come; write the day on which it was cut."
        )
    return found.isoformat()


def _day(words: str, now: date) -> date:
    if words in ("today", "yesterday"):
        return now - timedelta(days=words == "yesterday")
    typed = _TYPED.fullmatch(words)
    if typed is None:
        return date.fromisoformat(words)
    month = next((at for at, name in enumerate(MONTHS, 1) if typed[2].startswith(name.lower())), 0)
    if typed[3]:
        return date(int(typed[3]), month, int(typed[1]))
    # A leap day is eight years back at most.
    for year in range(now.year, now.year - 9, -1):
        if int(typed[1]) <= monthrange(year, month)[1] and (found := date(year, month, int(typed[1]))) <= now:
            return found
    raise ValueError


def of_set_up(job: Job, set_up: SetUp, entries: Iterable[Entry]) -> tuple[Entry, ...]:
    """The entries that are about a set-up: its steps, the sizes they make, its
    minutes, what would be changed in it.

    Of a job with one set-up what is said of the whole job is said of it.
    """
    keys = {operation.key for operation in set_up.operations}
    numbers = (set_up.number, 0) if len(job.set_ups) == 1 else (set_up.number,)
    return tuple(
        entry for entry in entries if entry.key in keys or (not entry.key and entry.set_up in numbers)
    )


def last_times(job: Job, path: Path | str | None) -> dict[str, str]:
    """Last time's line of each set-up, by its key, from the record beside a job; nothing where
    there is none or it cannot be read.
    """
    if path is None:
        return {}
    try:
        runs = read_runs(path)[0]
    except DocumentError:
        return {}  # it is said where it is written to and listed; a sheet is printed without it
    found = {set_up.key: last_time(job, set_up, runs) for set_up in job.set_ups}
    return {key: words for key, words in found.items() if words}


def last_time(job: Job, set_up: SetUp, runs: Runs) -> str:
    """`28 Nov; 45 min; step 70 noisy at 4 mm; found 39.98; would change: lighter`; empty where
    nothing is recorded of that set-up.
    """
    units = job.units
    there = of_set_up(job, set_up, runs.standing)
    if not there:
        return ""
    newest = max(entry.date for entry in there)
    return "; ".join((day_words(newest), *_told([entry for entry in there if entry.date == newest], units)))


def days_told(runs: Runs, units: str) -> tuple[tuple[str, str], ...]:
    """Every day on which something was said, the newest first, with what was said of the whole job on it."""
    return tuple(
        (day, "; ".join(_told([entry for entry in runs.standing if entry.date == day], units)))
        for day in runs.dates
    )


def _told(day: list[Entry], units: str) -> list[str]:
    """Minutes, steps, sizes and changes of one day."""
    minutes = sum(
        value
        for entry in day
        for value in (entry.setting_up, entry.cutting)
        if entry.about == "minutes" and value is not None
    )
    said = [f"{minutes / 60:.0f} min"] if minutes else []
    said += _steps([entry for entry in day if entry.about == "step"], units)
    found = [
        (number_of(entry.found, units), entry.size)
        for entry in day
        if entry.about == "size" and entry.found is not None
    ]
    if found:
        sizes = [f"{number} ({size})" for number, size in found] if len(found) > 1 else [found[0][0]]
        said.append(f"found {', '.join(sizes)}")
    return said + [
        f"would change: {words}"
        for entry in day
        if entry.about == "change" and (words := change_words(entry))
    ]


def _steps(entries: list[Entry], units: str) -> list[str]:
    """Each step that gave trouble or was left out; `clean` where none did."""
    other = [entry for entry in entries if entry.outcome != "clean"]
    if not entries or other:
        return [f"step {entry.number} {outcome_words(entry, units)}" for entry in other]
    several = len(entries) > 1
    numbers = ", ".join(str(entry.number) for entry in entries)
    return [f"step{'s' if several else ''} {numbers} clean"]


def outcome_words(entry: Entry, units: str) -> str:
    """`noisy at 4 mm, layer 2`, or `vice slipped`: how a step went, with what was said of it."""
    words = f"{entry.slipped} slipped" if entry.slipped else entry.outcome
    if entry.outcome == NOT_CUT:
        return words
    at = f" at {number_of(entry.depth, units)} {units}" if entry.depth is not None else ""
    layer = f", layer {entry.layer}" if entry.layer else ""
    return f"{words}{at}{layer}"


def change_words(entry: Entry) -> str:
    """What would be changed: ready words, and one's own behind them."""
    note = " ".join(entry.note.split())
    return ": ".join(part for part in (entry.change, note) if part)


def number_of(length: float, units: str) -> str:
    """A length [m] as a number in the units of the job, with as many decimals as were found."""
    return trimmed(length * 1e3, 3) if units == "mm" else trimmed(length / INCH, 4)
