"""What stands on the pages of a document, by its words and by its blocks."""

from __future__ import annotations

from jobsheet.report.blocks import words_of

FOUR = [(14, 12), (66, 12), (66, 38), (14, 38)]


def text(document, kind: str | None = None) -> str:
    return "\n".join(words_of(tuple(page.blocks for page in document.pages if kind in (None, page.kind))))


def found(block, wanted):
    if isinstance(block, wanted):
        yield block
    for name in ("blocks", "parts"):
        for inner in getattr(block, name, ()):
            for one in inner if isinstance(inner, tuple) else (inner,):
                yield from found(one, wanted)


def all_of(document, wanted):
    return [one for page in document.pages for block in page.blocks for one in found(block, wanted)]
