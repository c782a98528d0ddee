"""Writes the unit behind every bare number of a job, so that changing what a
bare number means changes no size.
"""

from __future__ import annotations

import re
from typing import Any

from msgspec.structs import replace

from jobsheet.catalog.tools.measuring import PARTS
from jobsheet.errors import QuantityError
from jobsheet.holdings.all_holdings import entries_of
from jobsheet.model.finished import Finished
from jobsheet.model.job import Job
from jobsheet.model.quantity import Pattern, Place, Several
from jobsheet.model.stock import Faces, Surfaces
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.cabinet.cabinet_needs import sizes_with_units
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.stock.all_shapes import sized
from jobsheet.storage import layout

#: A bare number with a fit behind it: `16 H7` is a bore of 16 of whatever a bare number means.
_FIT = re.compile(r"^(.*\d)(\s+[A-Za-z]{1,2}\d{1,2}\s*)$")


#: Form and place with a bare number in a line of tolerances, such as `square 0.03`; a finish
#: is in micrometres in either system.
_BARE_FORM = re.compile(r"\b(?:square|parallel|flat|position)\s+[\d.,/]*\d(?=\s*(?:;|$))", re.IGNORECASE)


def _spelled(entry: Entry, text: str, units: str) -> str:
    """The text with its unit where it has none."""
    unit = entry.unit(units)
    if entry.asks == "cutter":
        return _cutter(text, units)
    if entry.asks == "measure":
        return PARTS.sub(lambda part: _measured_part(part[0], units), text)
    if entry.asks == "tolerances":
        return _BARE_FORM.sub(rf"\g<0> {units}", text)
    if (spelled := entry.with_unit(text, units)) == text:
        if entry.asks == "size" and unit and (fit := _FIT.match(text)):
            return f"{fit[1]} {unit}{fit[2]}"
        if (
            entry.asks == "size"
            and unit
            and re.search(r"[\d)]\s*$", text)
            and not re.search(r"[A-Za-z]", text)
        ):
            return f"{text.rstrip()} {unit}"
        return text
    return spelled


def _measured_part(part: str, units: str) -> str:
    """A part of a line of measuring: the size, squareness and place get their
    unit, how it is measured has none.
    """
    if not re.search(r"\d[\d.,/]*\s*$|\d\s*[A-Za-z]{1,2}\d{1,2}\s*$", part) or re.match(
        r"\s*(?:at|on|from|across|over|in|near)\b", part
    ):
        return part
    if re.match(r"\s*(?:square|place)\b", part, re.IGNORECASE):
        return f"{part} {units}"
    return _spelled(_SIZE, part, units)


#: Parts of a cutter's line that are lengths, with a bare number: `pilot 6.6`, `flutes 55`, `40 out`.
_BARE_PART = re.compile(
    r"^(\s*(?:pilot|flutes?|cutting length|nose|corner radius|tip|out|stick-?out)\s+[\d.,/]+)(\s*)$"
    r"|^(\s*[\d.,/]+)(\s+(?:out|tip|stick-?out|flute length|cutting length)\s*)$",
    re.IGNORECASE,
)


def _cutter(text: str, units: str) -> str:
    """The unit behind every bare length of a cutter's line."""
    first, comma, rest = text.partition(",")
    if fit := _FIT.match(first):
        first = f"{fit[1]} {units}{fit[2]}"
    elif re.search(r"\d[\d.,/]*\s*$", first) and not re.search(r"#|[A-Za-z]\d", first):
        first = f"{first.rstrip()} {units}"
    parts = [
        f"{match[1] or match[3]} {units}{match[2] or ''}{match[4] or ''}"
        if (match := _BARE_PART.match(part))
        else part
        for part in re.split(r"(,\s+|;\s*)", rest)
    ]
    return f"{first}{comma}{''.join(parts)}"


def _group(fields: Any, entries: tuple[Entry, ...], units: str, to: str) -> Any:
    """The same fields with every bare number spelled out, read as they will be from now on."""
    changed: dict[str, Any] = {}
    for entry in entries:
        value = getattr(fields, entry.name)
        if value is None or isinstance(value, (str, int, bool, Several, Surfaces, Faces)):
            continue
        if entry.asks == "places":
            text = "; ".join(_place(item, units) for item in value.items)
        else:
            text = _spelled(entry, entry.text(value), units)
        if text != entry.text(value):
            try:
                changed[entry.name] = entry.read(text, to)
            except QuantityError:
                continue
    return replace(fields, **changed) if changed else fields


def _place(item: Place | Pattern, units: str) -> str:
    """A place with its units; in a pattern every size gets its own, angles and counts stay."""
    if isinstance(item, Place):
        return f"{_spelled(_LENGTH, item.x.text, units)}, {_spelled(_LENGTH, item.y.text, units)}"
    number = r"(?<![\d.,])(\d+(?:[.,]\d+)?)(?![\d.,]*\s*(?:°|deg|mm|in\b|thou|\"))"
    words = re.split(r"(\bof \d+(?:\s*[x×]\s*\d+)?)", item.text)
    return "".join(word if word.startswith("of ") else re.sub(number, rf"\1 {units}", word) for word in words)


_SIZE = Entry(name="measure", title="Measure", asks="size")
_LENGTH = Entry(name="length", title="Length", asks="length")


def with_units_written(job: Job, to: str) -> Job:
    """The same job, every bare number with its unit behind it, for a job whose bare numbers mean `to`."""
    set_ups = tuple(
        replace(
            _group(set_up, layout.SET_UP, job.units, to),
            holding=_group(set_up.holding, entries_of(set_up.holding)[1:], job.units, to),
            operations=tuple(
                replace(
                    operation,
                    fields=_fetching(
                        _group(operation.fields, kind_of(operation.kind).entries, job.units, to), job.units
                    ),
                )
                for operation in set_up.operations
            ),
        )
        for set_up in job.set_ups
    )
    stock = sized(_group(job.stock, stock_entries(job.stock), job.units, to))
    fetched = sizes_with_units(job.also_fetch, job.units)
    return replace(job, stock=stock, finished=_finished(job), set_ups=set_ups, also_fetch=fetched)


def _fetching(fields: Any, units: str) -> Any:
    """The fields of a step that is done with things in words, each size in them with its unit."""
    things = getattr(fields, "with_what", "") or ""
    spelled = sizes_with_units(things, units)
    return replace(fields, with_what=spelled) if spelled != things else fields


def _finished(job: Job) -> Finished:
    """The lines of the finished part; nothing is read where nothing is said."""
    if not job.finished:
        return job.finished
    from jobsheet.finished.unit_written import with_units

    return with_units(job.finished, job.units, job.datums)
