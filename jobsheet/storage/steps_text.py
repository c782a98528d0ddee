"""Steps and set-ups as a text of their own: what is copied in one job and pasted in
another, read as strictly as a file.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading.strict_yaml import Node, parse
from jobsheet.errors import CommandError, DocumentError, Problem
from jobsheet.model.job import Operation, SetUp
from jobsheet.storage import versions
from jobsheet.storage.job_file import Reader, set_ups_from, steps_from
from jobsheet.storage.job_writing import set_up_data, step_data
from jobsheet.storage.writing import emit

#: What such a text is called where something in it is wrong.
NAME = "what was copied"
#: More of it than this is no work for one paste: a thousand steps are some 200 kB (common sense, no source).
LARGEST = 2_000_000


class Copied(Struct, frozen=True, kw_only=True):
    """What was copied: whole set-ups, or steps alone; and what a bare number means in it."""

    units: str
    set_ups: tuple[SetUp, ...] = ()
    steps: tuple[Operation, ...] = ()


def write_copied(copied: Copied) -> str:
    """The text of what was copied. Keys and numbers are the old job's, so they are left out."""
    data: dict[str, Any] = {"format": str(versions.CURRENT), "units": copied.units}
    if copied.set_ups:
        data["set-ups"] = [_bare_set_up(set_up) for set_up in copied.set_ups]
    else:
        data["steps"] = [_bare(step_data(operation)) for operation in copied.steps]
    return "\n".join(emit(data)) + "\n"


def _bare_set_up(set_up: SetUp) -> dict[str, Any]:
    data = _bare(set_up_data(set_up))
    return data | {"operations": [_bare(one) for one in data["operations"]]}


def _bare(data: dict[str, Any]) -> dict[str, Any]:
    return {name: value for name, value in data.items() if name not in ("key", "number")}


def looks_copied(text: str) -> bool:
    """Whether a plain text may be one of these: it names its format, and its
    steps or set-ups, each in a line.
    """
    heads = {line.split(":")[0] for line in text[:LARGEST].splitlines() if line[:1].isalpha() and ":" in line}
    return "format" in heads and bool(heads & {"steps", "set-ups"})


def read_copied(text: str) -> Copied:
    """Steps or set-ups from their text.

    Raises
    ------
    CommandError
        In one sentence, with the first thing that is wrong.
    """
    if len(text) > LARGEST:
        raise CommandError(
            f"Nothing was pasted: {len(text) / 1e6:.0f} million letters are more than any steps; copy fewer."
        )
    try:
        return _copied(versions.up_to_date(parse(text, NAME), NAME))
    except DocumentError as error:
        first, *more = error.problems
        others = f" (and {len(more)} more)" if more else ""
        raise CommandError(f"Nothing was pasted: in what was copied, {first}{others}.") from None


def _copied(root: Node) -> Copied:
    if root.fields is None:
        raise DocumentError(NAME, (Problem(root.line, "", "there are no steps"),))
    units = root.fields.get("units")
    if units is None or units.text not in ("mm", "in"):
        line = units.line if units is not None else root.line
        raise DocumentError(NAME, (Problem(line, "units", "write units: mm or units: in"),))
    reader = Reader(units.text or "mm")
    fields = reader.mapping(root, "")
    reader.unknown(root, "", ["format", "units", "steps", "set_ups"])
    set_ups = tuple(set_ups_from(reader, fields.get("set_ups")))
    steps = tuple(steps_from(reader, fields.get("steps"), "steps"))
    if not reader.problems and not set_ups and not steps:
        reader.problem(root, "", "there are no steps")
    if reader.problems:
        raise DocumentError(NAME, tuple(reader.problems))
    return Copied(units=reader.units, set_ups=set_ups, steps=steps)
