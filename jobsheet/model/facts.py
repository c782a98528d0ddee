"""What something means, as a small table: neutral, for a margin of the window or a page."""

from __future__ import annotations

from msgspec import Struct


class Facts(Struct, frozen=True, kw_only=True):
    """A title, heads of the columns (or none), rows of texts, and a sentence below."""

    title: str
    heads: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    note: str = ""
