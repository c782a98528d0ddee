"""Where a person's own files lie: a shipped one is read, never written; what cannot be
used is kept as a draft beside it.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

from msgspec import Struct

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.errors import CannotWrite, DocumentError, Problem
from jobsheet.paths import own_folder, resources
from jobsheet.storage.disk import digest, file_digest, write_file
from jobsheet.storage.older_words import spelled_now
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text
from jobsheet.storage.typed_paper import Paper

#: A digest that no file has: there must be no file yet.
NONE_YET = "none yet"


class Lying(Struct, frozen=True):
    """Where a paper is saved, and the digest of what stood there when it was
    opened; the draft that lies beside it.
    """

    path: Path
    expected: str
    shipped: bool = False

    @property
    def draft(self) -> Path:
        """Where it is kept while it is not saved; nothing else looks there."""
        return self.path.parent / "drafts" / self.path.name


def open_own(folder: str, name: str) -> tuple[Paper, Lying]:
    """The person's own file of that name, or the shipped one, of which saving makes their own copy.

    Raises
    ------
    DocumentError
        If it is not such a file at all.
    """
    own = own_folder() / folder / f"{name}.yaml"
    shipped = not own.is_file()
    text = read_file(resources() / folder / own.name if shipped else own)
    lying = Lying(own, NONE_YET if shipped else digest(own.read_bytes()), shipped)
    return spelled_now(paper_from_text(text, own.name)), lying


def new_place(folder: str, title: str, taken: tuple[str, ...]) -> Lying:
    """A place for a new one: its title as the words of a file name, with a
    number where there is one already.
    """
    words = re.sub(r"[^a-z0-9]+", "-", title.casefold()).strip("-")[:50] or "machine"
    name, count = words, 1
    while name in taken or (own_folder() / folder / f"{name}.yaml").exists():
        count += 1
        name = f"{words}-{count}"
    return Lying(own_folder() / folder / f"{name}.yaml", NONE_YET)


def save_own(paper: Paper, lying: Lying, read: Callable[[str, str], object], *, over: bool = False) -> Lying:
    """Write it where it belongs, if it can be used; the draft is then no longer needed.

    Raises
    ------
    DocumentError
        With every problem; what stood there still stands.
    ChangedOutside, CannotWrite
        As `write_file`.
    """
    text = paper_text(paper)
    read(text, lying.path.name)
    _make(lying.path.parent)
    expected = None if over else lying.expected
    written = write_file(lying.path, text, expected, lambda back: read(back, lying.path.name))
    lying.draft.unlink(missing_ok=True)
    return Lying(lying.path, written)


def keep_draft(paper: Paper, lying: Lying) -> None:
    """Keep what is typed, whether it can be used or not. Raises CannotWrite where the disk refuses."""
    _make(lying.draft.parent)
    write_file(lying.draft, paper_text(paper), proof=lambda back: paper_from_text(back, lying.draft.name))


def draft_of(lying: Lying) -> Paper | None:
    """What was typed and not saved when the program ended last."""
    if file_digest(lying.draft) is None:
        return None
    try:
        return spelled_now(paper_from_text(read_file(lying.draft), lying.draft.name))
    except DocumentError:
        return None


def drafts_of_new(folder: str, known: tuple[str, ...]) -> tuple[Lying, ...]:
    """Drafts of files that were never saved, the newest first."""
    here = own_folder() / folder
    left = [path for path in (here / "drafts").glob("*.yaml") if path.stem not in known]
    left.sort(key=lambda path: -path.stat().st_mtime)
    return tuple(Lying(here / path.name, NONE_YET) for path in left)


def _make(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder} cannot be made: {error.strerror or error}.") from None


def problems(
    paper: Paper, name: str, read: Callable[[str, str], object]
) -> tuple[object | None, tuple[Problem, ...]]:
    """What a paper says, or all that is wrong with it."""
    try:
        return read(paper_text(paper), name), ()
    except DocumentError as error:
        return None, error.problems
