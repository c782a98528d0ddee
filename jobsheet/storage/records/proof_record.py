"""One record of a proof log as text: a line a field, in units that people read, closed by a line with its id.

The closing line is what makes a record whole: a crash while writing leaves one without it. The id is a hash
of the lines above it, so that two logs know a record again and a changed one is noticed.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import date
from typing import Any

from msgspec.structs import replace

from jobsheet.errors import Problem, QuantityError
from jobsheet.model.trials import CHANGES, LEARNED, OUTCOMES, PROCESSES, SLIPPED, WORKED, Asked, Trial
from jobsheet.storage.older_words import SLIPPED as OLD_SLIPPED
from jobsheet.storage.records.closed_records import END, closed, id_of, note_lines, one_line
from jobsheet.units.grammar import nearest, read
from jobsheet.units.show import plain
from jobsheet.units.table import BY_SPELLING

NOTHING_OLDER: Mapping[str, str] = {}
#: Numbers: field, key in the file, what it measures, its unit there.
_NUMBERS = (
    ("stick_out", "stick-out", "length", "mm"),
    ("speed", "speed", "spindle speed", "rpm"),
    ("tachometer", "tachometer", "spindle speed", "rpm"),
    ("length", "length", "length", "mm"),
    ("seconds", "seconds", "time", "s"),
)
_TEXTS = (
    ("process", "process"), ("kind", "kind"), ("cutter", "cutter"), ("cutter_kind", "cutter kind"),
    ("material", "material"), ("holding", "holding"), ("units", "units"),
)  # fmt: skip
#: The unit of a limit's demand, and of what its share is.
_DEMANDS = {"spindle-torque": ("torque", "N·m", "peak"), "chatter": ("stiffness", "N/µm", "class")}
_KEYS = (
    "strikes", "keeps", "changed", "job", "entry", "machine", "date", "time", "role", *(key for _, key in _TEXTS), *(key for _, key, _, _ in _NUMBERS),
    "outcome", "slipped", "note",
)  # fmt: skip
_DEMAND = re.compile(r"^(?P<demand>.+?),\s*(?P<share>[\d.]+) of the (?P<of>peak|class)$")


def number(value: float) -> str:
    """Six significant digits without powers of ten: read and written again it is the same text."""
    from math import floor, log10

    if value == 0:
        return "0"
    text = plain(value, max(0, min(12, 5 - floor(log10(abs(value))))))
    return (text.rstrip("0").rstrip(".") if "." in text else text).replace("−", "-")


def _amount(value: float, measures: str, unit: str) -> str:
    return f"{number(value / BY_SPELLING[measures, unit].size)} {unit}"


def lines_of(trial: Trial) -> list[str]:
    """The lines of a record without its closing one."""
    marks = (("strikes", trial.strikes), ("keeps", trial.keeps), ("changed", trial.changed))
    lines = [f"{name}: {word}" for name, word in marks if word]
    lines += [f"machine: {one_line(trial.machine)}", f"date: {trial.date}"]
    lines += [
        f"{name}: {one_line(text)}"
        for name, text in (
            ("time", trial.time),
            ("role", trial.role),
            ("job", trial.job),
            ("entry", trial.entry),
        )
        if text.strip()
    ]
    if trial.is_cut:
        lines += _cut_lines(trial)
    lines += note_lines(trial.note)
    return lines


def _cut_lines(trial: Trial) -> list[str]:
    """What was cut, what it asked and how it ended."""
    lines = [
        f"{key}: {one_line(text)}" for field, key in _TEXTS if (text := str(getattr(trial, field))).strip()
    ]
    lines += [
        f"step {name.replace('_', ' ')}: {one_line(text)}" for name, text in trial.step if one_line(text)
    ]
    for field, key, measures, unit in _NUMBERS:
        value = getattr(trial, field)
        if value is not None:
            lines.append(f"{key}: {_amount(value, measures, unit)}")
    for asked in trial.asked:
        measures, unit, of = _DEMANDS[asked.limit]
        amount = _amount(asked.demand, measures, unit)
        lines.append(f"demand {asked.limit}: {amount}, {number(asked.share)} of the {of}")
    lines.append(f"outcome: {trial.outcome}")
    if trial.slipped:
        lines.append(f"slipped: {trial.slipped}")
    return lines


def record_text(trial: Trial) -> str:
    """The whole record, closed."""
    return closed(lines_of(trial))


class _Reading:
    """Reads one record; every problem with its line."""

    def __init__(self, lines: list[str], first: int) -> None:
        self.problems: list[Problem] = []
        self.found: dict[str, tuple[str, int]] = {}
        self.steps: list[tuple[str, str]] = []
        self.demands: list[tuple[str, str, int]] = []
        self.notes: list[str] = []
        self.first = first
        for index, line in enumerate(lines, first):
            key, colon, text = (part.strip() for part in line.partition(":"))
            if not colon:
                self.wrong(index, "", f"“{line[:40]}” is not a field; write key: value")
            elif key == "note":
                self.notes.append(text)
            elif key.startswith("step "):
                self.steps.append((key[5:].strip().replace(" ", "_"), text))
            elif key.startswith("demand "):
                self.demands.append((key[7:].strip(), text, index))
            elif key not in _KEYS:
                near = nearest(key, _KEYS)
                self.wrong(index, key, f"unknown field{f'; did you mean {near}?' if near else ''}")
            elif key in self.found:
                self.wrong(index, key, "this stands twice in one record")
            else:
                self.found[key] = (text, index)

    def wrong(self, line: int, path: str, sentence: str) -> None:
        self.problems.append(Problem(line, path, sentence))

    def text(self, key: str) -> str:
        return self.found.get(key, ("", 0))[0]

    def among(
        self,
        key: str,
        words: tuple[str, ...],
        *,
        needed: bool = True,
        older: Mapping[str, str] = NOTHING_OLDER,
    ) -> str:
        text, line = self.found.get(key, ("", self.first))
        text = older.get(text, text)
        if text and text not in words:
            near = nearest(text, words)
            hint = f"did you mean {near}?" if near else f"it is one of {', '.join(words)}"
            self.wrong(line, key, f"“{text}” is unknown; {hint}")
        elif needed and not text:
            self.wrong(self.first, key, f"this is missing; it is one of {', '.join(words)}")
        return text

    def needed(self, key: str) -> str:
        text = self.text(key)
        if not text:
            self.wrong(self.first, key, "this is missing")
        return text

    def day(self) -> str:
        text, line = self.found.get("date", ("", self.first))
        try:
            return date.fromisoformat(text).isoformat()
        except ValueError:
            self.wrong(line, "date", f"“{text}” is not a date; write it as 2026-11-25")
            return text

    def amount(self, key: str, measures: str) -> float | None:
        if key not in self.found:
            return None
        text, line = self.found[key]
        return self._read(text, measures, line, key)

    def _read(self, text: str, measures: str, line: int, key: str) -> float | None:
        try:
            value = read(text, measures)
        except QuantityError as error:
            self.wrong(line, key, str(error))
            return None
        if value <= 0:
            self.wrong(line, key, f"“{text}” must be above zero")
        return value

    def asked(self) -> tuple[Asked, ...]:
        found = []
        for limit, text, line in self.demands:
            key = f"demand {limit}"
            match = _DEMAND.match(text)
            if limit not in LEARNED:
                self.wrong(line, key, f"no such limit is learned; known are {', '.join(LEARNED)}")
                continue
            measures, unit, of = _DEMANDS[limit]
            if match is None or match["of"] != of:
                self.wrong(line, key, f"“{text}” is no demand; write, for example, 3 {unit}, 0.6 of the {of}")
                continue
            demand = self._read(match["demand"], measures, line, key)
            share = self._read(match["share"], "share", line, key)
            if demand is not None and share is not None:
                found.append(Asked(limit, demand, share))
        return tuple(found)


def trial_from(lines: list[str], first: int) -> tuple[Trial | None, list[Problem]]:
    """The record of these lines, the closing one among them; `first` is the number of the first line.

    A record that is not closed is not for here: `storage.proof_log` reports it as torn.
    """
    reading = _Reading(lines[:-1], first)
    there = lines[-1].partition(":")[2].strip()
    machine, day = reading.needed("machine"), reading.day()
    marks: dict[str, Any] = {
        "strikes": reading.text("strikes"),
        "keeps": reading.text("keeps"),
        "changed": reading.among("changed", tuple(CHANGES), needed=False),
    }
    note = "\n".join(reading.notes)
    same: dict[str, Any] = {
        "machine": machine,
        "date": day,
        "role": reading.text("role"),
        "time": reading.text("time"),
        "job": reading.text("job"),
        "entry": reading.text("entry"),
        "note": note,
    }
    if any(marks.values()):
        trial = Trial(
            process="", cutter="", cutter_kind="", material="", outcome="", asked=(), **marks, **same
        )
    else:
        amounts: dict[str, Any] = {
            field: reading.amount(key, measures) for field, key, measures, _ in _NUMBERS
        }
        trial = Trial(
            process=reading.among("process", (*PROCESSES, *WORKED)), cutter=reading.needed("cutter"),
            cutter_kind=reading.needed("cutter kind"), material=reading.needed("material"),
            outcome=reading.among("outcome", OUTCOMES), slipped=reading.among("slipped", SLIPPED, needed=False, older=OLD_SLIPPED),
            asked=reading.asked(), holding=reading.text("holding"), kind=reading.text("kind"),
            units=reading.among("units", ("mm", "in"), needed=False) or "mm", step=tuple(reading.steps), **amounts, **same,
        )  # fmt: skip
    if there != id_of(lines[:-1]):
        last = first + len(lines) - 1
        reading.wrong(
            last,
            END,
            "this record was changed after it was written: it does not count; strike it out and enter it again",
        )
    return (None, reading.problems) if reading.problems else (replace(trial, id=there), [])
