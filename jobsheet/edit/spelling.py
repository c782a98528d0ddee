"""Writes the unit behind every bare number of a job, so that changing what a bare number means changes no size."""

from __future__ import annotations

import re
from typing import Any

from msgspec.structs import replace

from jobsheet.errors import QuantityError
from jobsheet.model.job import Job
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.storage import layout

_BARE = re.compile(r"^[\s\d.,/½¼¾⅛⅜⅝⅞+\-−]+$")


def _spelled(entry: Entry, text: str, units: str) -> str:
    """The text with its unit where it has none."""
    unit = entry.unit(units)
    if entry.asks == "cutter":
        return _cutter(text, units)
    if not unit or not _BARE.match(text):
        if (
            entry.asks == "size"
            and unit
            and re.search(r"[\d)]\s*$", text)
            and not re.search(r"[A-Za-z]", text)
        ):
            return f"{text.rstrip()} {unit}"
        return text
    return f"{text.rstrip()} {unit}"


def _cutter(text: str, units: str) -> str:
    """The unit behind a cutter's own size, where that is a bare number."""
    first, comma, rest = text.partition(",")
    match = re.search(r"\d[\d.,/]*\s*$", first)
    if match and not re.search(r"#|[A-Za-z]\d", first):
        first = f"{first.rstrip()} {units}"
    return f"{first}{comma}{rest}"


def _group(fields: Any, entries: tuple[Entry, ...], units: str) -> Any:
    """The same fields with every bare number spelled out; a text that no longer reads stays as it was."""
    changed: dict[str, Any] = {}
    for entry in entries:
        value = getattr(fields, entry.name)
        if value is None or isinstance(value, (str, int, bool)):
            continue
        if entry.asks == "places":
            text = "; ".join(
                f"{_spelled(_LENGTH, place.x.text, units)}, {_spelled(_LENGTH, place.y.text, units)}"
                for place in value
            )
        else:
            text = _spelled(entry, entry.text(value), units)
        if text != entry.text(value):
            try:
                changed[entry.name] = entry.read(text, units)
            except QuantityError:
                continue
    return replace(fields, **changed) if changed else fields


_LENGTH = Entry(name="length", title="Length", asks="length")


def with_units_written(job: Job) -> Job:
    """The same job, every bare number with its unit behind it."""
    set_ups = tuple(
        replace(
            _group(set_up, layout.SET_UP, job.units),
            holding=_group(set_up.holding, layout.HOLDING, job.units),
            operations=tuple(
                replace(
                    operation, fields=_group(operation.fields, kind_of(operation.kind).entries, job.units)
                )
                for operation in set_up.operations
            ),
        )
        for set_up in job.set_ups
    )
    return replace(job, stock=_group(job.stock, layout.STOCK, job.units), set_ups=set_ups)
