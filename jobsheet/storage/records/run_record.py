"""One entry of a job's own record as text: a line a field, closed by a line with its id."""

from __future__ import annotations

from datetime import date
from typing import Any

from msgspec.structs import replace

from jobsheet.errors import Problem, QuantityError
from jobsheet.model.trials import OUTCOMES, SLIPPED
from jobsheet.model.what_ran import ABOUT, NOT_CUT, Entry
from jobsheet.storage.records.closed_records import END, closed, id_of, note_lines, one_line
from jobsheet.storage.records.proof_record import number as six_digits
from jobsheet.units.grammar import nearest, read
from jobsheet.units.table import BY_SPELLING

#: Field, key in the file: texts, whole numbers, and measured ones with what they
#: measure and their unit there.
_TEXTS = (
    ("job", "job"), ("plan", "plan"), ("machine", "machine"), ("date", "date"), ("time", "time"), ("role", "role"),
    ("about", "about"), ("key", "key"), ("step", "step"), ("outcome", "outcome"), ("slipped", "slipped"), ("size", "size"),
    ("change", "change"), ("takes_back", "takes back"),
)  # fmt: skip
_WHOLE = (("revision", "revision"), ("number", "number"), ("layer", "layer"), ("set_up", "set-up"))
_MEASURED = (
    ("speed", "speed", "spindle speed", "rpm"), ("depth", "depth", "length", "mm"), ("length", "length", "length", "mm"),
    ("seconds", "seconds", "time", "s"), ("found", "found", "length", "mm"), ("setting_up", "minutes to set up", "time", "min"),
    ("cutting", "minutes to cut", "time", "min"), ("planned_set_up", "planned to set up", "time", "min"),
    ("planned_milling", "planned milling", "time", "min"), ("planned_holes", "planned holes", "time", "min"),
    ("planned_by_hand", "planned by hand", "time", "min"),
)  # fmt: skip
_KEYS = (*(key for _, key in (*_TEXTS, *_WHOLE)), *(key for _, key, _, _ in _MEASURED), "note")


def lines_of(entry: Entry) -> list[str]:
    """The lines of an entry without its closing one; what was not said has none."""
    lines = [f"{key}: {text}" for name, key in _TEXTS if (text := one_line(str(getattr(entry, name))))]
    lines += [f"{key}: {value}" for name, key in _WHOLE if (value := getattr(entry, name))]
    for name, key, measures, unit in _MEASURED:
        value = getattr(entry, name)
        if value is not None:
            lines.append(f"{key}: {six_digits(value / BY_SPELLING[measures, unit].size)} {unit}")
    return lines + note_lines(entry.note)


def entry_text(entry: Entry) -> str:
    """The whole entry, closed."""
    return closed(lines_of(entry))


def entry_from(lines: list[str], first: int) -> tuple[Entry | None, list[Problem]]:
    """The entry of these lines, the closing one among them; `first` is the number of the first line."""
    problems: list[Problem] = []
    found: dict[str, tuple[str, int]] = {}
    notes: list[str] = []
    for index, line in enumerate(lines[:-1], first):
        key, colon, text = (part.strip() for part in line.partition(":"))
        if not colon:
            problems.append(Problem(index, "", f"“{line[:40]}” is not a field; write key: value"))
        elif key == "note":
            notes.append(text)
        elif key not in _KEYS:
            near = nearest(key, _KEYS)
            problems.append(Problem(index, key, f"unknown field{f'; did you mean {near}?' if near else ''}"))
        elif key in found:
            problems.append(Problem(index, key, "this stands twice in one entry"))
        else:
            found[key] = (text, index)
    values: dict[str, Any] = {name: found[key][0] for name, key in _TEXTS if key in found}
    for name, key in _WHOLE:
        if key in found:
            values[name] = _whole(key, *found[key], problems)
    for name, key, measures, _ in _MEASURED:
        if key in found:
            values[name] = _measured(key, measures, *found[key], problems)
    _asked(values, found, first, problems)
    there = lines[-1].partition(":")[2].strip()
    if there != id_of(lines[:-1]):
        last = first + len(lines) - 1
        problems.append(
            Problem(last, END, "this entry was changed after it was written: it does not count; take it back and enter it again")
        )  # fmt: skip
    if problems:
        return None, problems
    given = {"job": "", "plan": "", "revision": 0, "machine": "", "about": ""}
    return replace(Entry(**{**given, **values, "note": "\n".join(notes)}), id=there), []


def _whole(key: str, text: str, line: int, problems: list[Problem]) -> int:
    if text.isascii() and text.isdigit() and len(text) <= 9:
        return int(text)
    problems.append(Problem(line, key, f"“{text[:40]}” is no whole number"))
    return 0


def _measured(key: str, measures: str, text: str, line: int, problems: list[Problem]) -> float | None:
    try:
        value = read(text, measures)
    except QuantityError as error:
        problems.append(Problem(line, key, str(error)))
        return None
    if value < 0 or (value == 0 and not key.startswith(("minutes to", "planned"))):
        problems.append(Problem(line, key, f"“{text}” must be above zero"))
    return value


def _asked(
    values: dict[str, Any], found: dict[str, tuple[str, int]], first: int, problems: list[Problem]
) -> None:
    """What has to be there, and words that have to be some of a list."""

    def at(key: str) -> int:
        return found.get(key, ("", first))[1]

    day = values.get("date", "")
    try:
        values["date"] = date.fromisoformat(day).isoformat()
    except ValueError:
        problems.append(Problem(at("date"), "date", f"“{day}” is not a date; write it as 2026-11-25"))
    if values.get("takes_back"):
        return
    about = values.get("about", "")
    lists = (
        ("about", ABOUT, True),
        ("outcome", (*OUTCOMES, NOT_CUT), about == "step"),
        ("slipped", SLIPPED, False),
    )
    for key, words, needed in lists:
        text = values.get(key, "")
        if text and text not in words:
            near = nearest(text, words)
            hint = f"did you mean {near}?" if near else f"it is one of {', '.join(words)}"
            problems.append(Problem(at(key), key, f"“{text}” is unknown; {hint}"))
        elif needed and not text:
            problems.append(Problem(first, key, f"this is missing; it is one of {', '.join(words)}"))
    for kind, name, key in (("step", "key", "key"), ("size", "size", "size"), ("size", "found", "found")):
        if about == kind and not values.get(name):
            problems.append(Problem(first, key, "this is missing"))
