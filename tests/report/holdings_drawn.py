"""Holdings round a piece of work, as they are drawn and said."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.drawing.drawn import Line
from jobsheet.holdings.all_holdings import holding_kind
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.quantity import Quantity
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import blank_job

CARD = find_card("bench-mill-b-1")


WIDE, HIGH = 240.0, 150.0


def long(value):
    return Quantity(value * 1e-3, f"{value} mm")


def held(holding, size=(80, 50, 20), **laid):
    job = blank_job("bench-mill-b-1")
    length, width, height = map(long, size)
    job = replace(job, stock=replace(job.stock, length=length, width=width, height=height))
    set_up = replace(job.set_ups[0], holding=holding, **laid)
    return set_up, lying(set_up, stock_box(job))


def said(name, **facts):
    kind = holding_kind(name)
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )


def outlines(drawing):
    return [
        item for item in drawing.items if isinstance(item, Line) and item.closed and len(item.points) == 4
    ]
