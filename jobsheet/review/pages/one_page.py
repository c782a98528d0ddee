"""One page of the help, as a value: the window lays it out, `find` reads its text."""

from __future__ import annotations

from msgspec import Struct


class Page(Struct, frozen=True, kw_only=True):
    """One page: what sort of thing it is about, its title, captioned lines, and pages that it leads to."""

    id: str
    sort: str
    title: str
    lines: tuple[tuple[str, str], ...]
    see: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """All of it as plain text."""
        return "\n".join(
            [
                self.title,
                self.sort,
                *(f"{caption}: {said}" if caption else said for caption, said in self.lines),
            ]
        )
