"""What was worked of a job in idle time, kept by the content of its file: what its plan is said
to be, and its finished part drawn.

Nothing of it is needed to find a job. As long as it is not there *not yet worked*
is said, and it goes with the index.
"""

from __future__ import annotations

import contextlib
import sqlite3
import zlib

import msgspec
from msgspec import Struct

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Text
from jobsheet.shelf.how_it_went import OLD_SHEET
from jobsheet.shelf.shelf_index import Index


class Worked(Struct, frozen=True, kw_only=True):
    """The verdict of a plan, `at` which step or why not, and its finished part: small
    for a row, large beside its facts.
    """

    content: str
    verdict: str
    at: str = ""
    small: Drawing | None = None
    large: Drawing | None = None


class _Kept(Struct, frozen=True):
    """A drawing as it is kept: its items by sort, in the order in which they are painted."""

    width: float
    height: float
    items: tuple[tuple[str, msgspec.Raw], ...]


_SORTS: dict[str, type[Item]] = {"line": Line, "ellipse": Ellipse, "text": Text}
_NAMES = {sort: name for name, sort in _SORTS.items()}


def keep(index: Index, worked: Worked) -> None:
    """Keep what was worked; what was kept for the same content goes. Where another program writes all the
    while it is worked again some day.
    """
    with contextlib.suppress(sqlite3.OperationalError):
        index.database.execute(
            "insert or replace into worked (content, verdict, at, small, large) values (?,?,?,?,?)",
            (worked.content, worked.verdict, worked.at, packed(worked.small), packed(worked.large)),
        )
        index.database.commit()


def worked_of(index: Index, content: str) -> Worked | None:
    """What was worked of a file with that content; None where it is still to come."""
    try:
        row = index.database.execute(
            "select verdict, at, small, large from worked where content = ?", (content,)
        ).fetchone()
    except sqlite3.Error:  # what is wrong with the index is said by who asks it
        return None
    if row is None:
        return None
    return Worked(content=content, verdict=row[0], at=row[1], small=unpacked(row[2]), large=unpacked(row[3]))


def to_work(index: Index) -> dict[str, str]:
    """What is still to be worked, its path by its content, the last made first;
    what no file says any more is let go.
    """
    with contextlib.suppress(sqlite3.OperationalError):
        index.database.execute("delete from worked where content not in (select content from jobs)")
        index.database.commit()
    rows = index.database.execute(
        "select content, path from jobs where content not in (select content from worked) and how != ?"
        " order by made desc, planned_on desc, number",
        (OLD_SHEET,),
    )
    return dict(rows.fetchall())


def packed(drawing: Drawing | None) -> bytes:
    """A drawing in few bytes; empty for none. What has no place on a screen,
    such as a photograph, is left out.
    """
    if drawing is None:
        return b""
    items = tuple(
        (_NAMES[type(item)], msgspec.Raw(msgspec.json.encode(item)))
        for item in drawing.items
        if type(item) in _NAMES
    )
    return zlib.compress(msgspec.json.encode(_Kept(drawing.width, drawing.height, items)), 6)


def unpacked(data: bytes) -> Drawing | None:
    """The drawing again; None where nothing was kept, or what was kept is damaged."""
    try:
        kept = msgspec.json.decode(zlib.decompress(data), type=_Kept)
        items = tuple(msgspec.json.decode(raw, type=_SORTS[name]) for name, raw in kept.items)
    except (zlib.error, msgspec.DecodeError, KeyError):
        return None
    return Drawing(kept.width, kept.height, items)
