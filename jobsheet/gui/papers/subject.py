"""What the editor of papers has to know of a kind of file."""

from __future__ import annotations

from collections.abc import Callable

from msgspec import Struct

from jobsheet.model.facts import Facts
from jobsheet.storage.own_paper import Lying
from jobsheet.storage.paper_layout import Layout
from jobsheet.storage.typed_paper import Paper


class Subject(Struct, frozen=True, kw_only=True):
    """A kind of file: its layout, its strict reader (raises DocumentError), what
    it means, and what it is called.

    `place` is asked where a new one goes, when it is first saved or kept as a draft.
    """

    layout: Layout
    read: Callable[[str, str], object]
    facts: Callable[[object | None, Paper], tuple[Facts, ...]]
    title: Callable[[Paper], str]
    place: Callable[[Paper], Lying] | None = None
