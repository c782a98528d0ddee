"""Every field of every kind in a job, typed into: what an edit costs, whichever field it is."""

from __future__ import annotations

import re
import statistics
import time
from itertools import islice

from msgspec import Struct

from jobsheet.edit.commands import SetField
from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job
from jobsheet.operations.registry import kind
from jobsheet.reckoning.reckoner import Reckoner

#: So many rows are in sight of a window.
ROWS = 40


class Cost(Struct, frozen=True):
    """Median times of the processor [ms]: to the figures of the step alone, and
    to those of all rows in sight.
    """

    name: str
    edited: float
    in_sight: float


def walked(job: Job, rounds: int = 5) -> list[Cost]:
    """The first step of each kind, field by field; each text is a new one,
    and between two all is as it was.
    """
    reckoner = Reckoner()
    reckoner.patience = 0
    tuple(reckoner.reckon(job).operations.values())
    seen: set[str] = set()
    found = []
    for _, step in job.operations():
        if step.kind in seen:
            continue
        seen.add(step.kind)
        for entry in kind(step.kind).entries:
            held = getattr(step.fields, entry.name)
            text = held if isinstance(held, str) else getattr(held, "text", None)
            if text and (cost := _cost(reckoner, job, step.key, entry.name, text, rounds)) is not None:
                found.append(Cost(f"{step.kind} {entry.name}", *cost))
    return found


def _cost(
    reckoner: Reckoner, job: Job, key: str, name: str, text: str, rounds: int
) -> tuple[float, float] | None:
    edited, in_sight = [], []
    for index in range(rounds):
        began = time.process_time()
        try:
            other = SetField(key, name, _otherwise(text, index)).apply(job)
        except JobsheetError:
            return None
        reckoned = reckoner.reckon(other)
        _ = reckoned.operations[key]
        edited.append((time.process_time() - began) * 1e3)
        tuple(islice(reckoned.operations.values(), ROWS))
        in_sight.append((time.process_time() - began) * 1e3)
        tuple(reckoner.reckon(job).operations.values())
    return statistics.median(edited), statistics.median(in_sight)


def _otherwise(text: str, index: int) -> str:
    """Another text that can be read: its first number a little larger, or a word more."""
    number = re.search(r"\d+(\.\d+)?", text)
    if number is None:
        return f"{text} {index}"
    return f"{text[: number.start()]}{float(number[0]) * (1 + (index + 1) / 1000):.6g}{text[number.end() :]}"
