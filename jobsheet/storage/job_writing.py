"""A job becomes the text of its file: the same job, the same bytes."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from jobsheet.catalog.reading.strict_yaml import Node, parse
from jobsheet.errors import CannotWrite
from jobsheet.finished.lines_in_file import finished_data
from jobsheet.holdings.all_holdings import kind_of as holding_kind_of
from jobsheet.model.held_work import Holding
from jobsheet.model.job import Job, Operation, SetUp, Zero
from jobsheet.model.quantity import Pattern, Place
from jobsheet.model.stock import ALONG, BOX, Stock
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.stock.all_shapes import in_file
from jobsheet.storage import layout, versions
from jobsheet.storage.disk import write_file
from jobsheet.storage.writing import emit


def name_in_file(name: str) -> str:
    """A field's name as the file has it: words with blanks between them."""
    return name.replace("_", " ")


def _place_in_file(item: Place | Pattern) -> Any:
    """`[x, y]` for a place, words for a pattern."""
    return (item.x.text, item.y.text) if isinstance(item, Place) else item.text


def _group(entries: tuple[Entry, ...], value: Any) -> dict[str, Any]:
    """A group of entries as texts, without what is empty."""
    out: dict[str, Any] = {}
    for entry in entries:
        item = getattr(value, entry.name)
        if entry.asks == "places" and item is not None:
            out[name_in_file(entry.name)] = [_place_in_file(place) for place in item.items]
            continue
        text = entry.text(item)
        if text or not entry.optional:
            out[name_in_file(entry.name)] = text
    return out


#: What a new structure holds is not written: a file shows what was decided.
_DEFAULT_ZERO = Zero()


def write_job(job: Job) -> str:
    """The text of a job's file: the same job, the same bytes."""
    return "\n".join(emit(_data(job))) + "\n"


def _data(job: Job) -> dict[str, Any]:
    """All texts of a job's file in their order."""
    data: dict[str, Any] = {"format": str(versions.CURRENT)}
    head = _group(layout.JOB, job)
    if not job.trainee:
        head.pop("trainee", None)
    last: dict[str, Any] = {name: head.pop(name) for name in ("also fetch", "why", "note") if name in head}
    data["units"] = head.pop("units")
    data["part"] = _group(layout.PART, job.part)
    data |= head
    data["stock"] = stock_data(job.stock)
    if job.datums:
        data["datums"] = dict(job.datums)
    if finished := finished_data(job.finished):
        data["finished"] = finished
    if job.dismissed:
        data["dismissed"] = [_group(layout.DISMISSED, dismissed) for dismissed in job.dismissed]
    if job.revisions:
        data["plan revisions"] = [_group(layout.REVISION, revision) for revision in job.revisions]
    if job.photographs:
        data["photographs"] = [_group(layout.PHOTOGRAPH, photograph) for photograph in job.photographs]
    data.update(last)
    data["set-ups"] = [set_up_data(set_up) for set_up in job.set_ups]
    return data


def set_up_data(set_up: SetUp) -> dict[str, Any]:
    """A set-up with its steps as texts, in the order of the file."""
    out: dict[str, Any] = {"key": set_up.key, "number": str(set_up.number)}
    out |= _group(layout.SET_UP, set_up)
    if holding := holding_data(set_up.holding):
        out["holding"] = holding
    if set_up.zero != _DEFAULT_ZERO:
        out["zero"] = _group(layout.ZERO, set_up.zero)
    out["operations"] = [step_data(operation) for operation in set_up.operations]
    return out


def stock_data(stock: Stock) -> dict[str, Any]:
    """The stock as texts. Where its words say all that is known of it, as in files of an
    earlier day, they alone are written.
    """
    from jobsheet.storage.words.stock_words import before_facts, with_what_words_say

    earlier = before_facts(stock)
    if stock.condition and with_what_words_say(earlier) == stock:
        stock = earlier
    elif stock.condition and stock == earlier:
        # Else its words would be taken for facts when it is read.
        return {"shape": stock.shape, **_group(in_file(stock.shape)[1:], stock)}
    out = _group(in_file(stock.shape), stock)
    if stock.shape == BOX:
        del out["shape"]
    if out.get("along") == ALONG[0]:
        del out["along"]
    return out


def holding_data(holding: Holding) -> dict[str, Any]:
    """What holds the work as texts: its kind first."""
    kind = holding_kind_of(holding)
    if kind is None:
        return {"note": holding.note} if holding.note else {}
    return {"kind": kind.name} | _group(kind.entries, holding)


def step_data(operation: Operation) -> dict[str, Any]:
    """A step as texts, in the order of the file."""
    kind = kind_of(operation.kind)
    out: dict[str, Any] = {"key": operation.key, "number": str(operation.number), "kind": operation.kind}
    return out | _group(layout.STEP, operation) | _group(kind.entries, operation.fields)


def save_job(job: Job, path: Path | str, expected: str | None = None) -> str:
    """Write a job to its file; returns the digest of what stands there now. Errors as `write_file`.

    What was written is read back, text by text, before it stands in the place of what was there.
    """
    from jobsheet.storage.one_writer import one_writer  # late: who only reads needs none

    data = _data(job)

    def proof(text: str) -> None:
        if _texts(parse(text, "what was written")) != _as_read(data):
            raise CannotWrite("a text in it comes back as another one; please keep the job open and tell us.")

    with one_writer(Path(path)):
        return write_file(Path(path), "\n".join(emit(data)) + "\n", expected, proof)


def _texts(node: Node) -> Any:
    """What a file holds, as texts, lists and groups."""
    if node.fields is not None:
        return {name: _texts(inner) for name, inner in node.fields.items()} or ""
    return [_texts(inner) for inner in node.items] if node.items is not None else node.text


def _as_read(data: Any) -> Any:
    """What is to be written, as it should come back."""
    if isinstance(data, dict):
        return {name: _as_read(inner) for name, inner in data.items()} or ""
    return [_as_read(inner) for inner in data] if isinstance(data, list | tuple) else data
