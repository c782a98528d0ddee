"""Keeps what the texts of the last start meant, so that the same job is neither
parsed again nor the parser fetched.

Fetching the parser of YAML and reading a job and a card with it is a twentieth of a start (6 to 8 ms).
What it made of each text is kept by the whole text, in the person's own folder, for jobs are theirs; only
what this start asked for is kept for the next one. It holds nodes, that is text with its lines, and is
decoded strictly: all that is judged of a job, its fields, bounds and sentences, is judged anew. A text
that was refused is not kept. Used only while the reader of YAML is the very file it was when it was
written; it can be deleted at any time.
"""

from __future__ import annotations

import contextlib
import os
from collections.abc import Iterator
from importlib.util import source_hash

import msgspec

from jobsheet import paths
from jobsheet.catalog.reading import strict_yaml
from jobsheet.catalog.reading.strict_yaml import Node

#: Far more than a start reads [bytes]; a file beyond it is not ours.
LARGEST = 20_000_000


class Texts(msgspec.Struct):
    """What is kept: by which reader it was read, and the nodes of each text, packed."""

    reader: tuple[int, int]
    nodes: dict[str, bytes]


def place() -> str:
    """Where it is kept."""
    return os.path.join(paths.own_folder(), "cache", "read-at-start.msgpack")  # noqa: PTH118  # the quick way


def _reader() -> tuple[int, int]:
    """The reader of YAML as it is now: the time and size of its file."""
    now = os.stat(strict_yaml.__file__)  # noqa: PTH116
    return now.st_mtime_ns, now.st_size


class LastRead:
    """Knows texts by what they say; reads what was kept, learns what is new."""

    def __init__(self, path: str) -> None:
        self.path = path
        self._known: dict[str, bytes] = {}
        #: What this start asked for: the next one will ask the same.
        self._asked: dict[str, bytes] = {}
        self._nodes = strict_yaml.nodes
        self._reader = (0, 0)
        with contextlib.suppress(OSError):
            self._reader = _reader()
            self._read()

    def _read(self) -> None:
        """Take what was kept; nothing where the file is missing, damaged or of another reader."""
        with open(self.path, "rb") as file:  # noqa: PTH123
            kept = file.read(LARGEST)
        check, body = kept[:8], kept[8:]
        if check != source_hash(body):
            return
        with contextlib.suppress(msgspec.MsgspecError):
            texts = msgspec.msgpack.decode(body, type=Texts)
            if texts.reader == self._reader:
                self._known = texts.nodes

    @contextlib.contextmanager
    def used(self) -> Iterator[None]:
        """Read by what is kept while this lasts."""
        before = strict_yaml.nodes
        strict_yaml.nodes = self._known_nodes
        try:
            yield
        finally:
            strict_yaml.nodes = before

    def _known_nodes(self, text: str, name: str) -> Node:
        """Stand for what parses a text; whoever asks gets nodes of his own."""
        kept = self._known.get(text)
        if kept is not None:
            with contextlib.suppress(msgspec.MsgspecError):
                found = msgspec.msgpack.decode(kept, type=Node)
                self._asked[text] = kept
                return found
        made = self._nodes(text, name)
        self._asked[text] = msgspec.msgpack.encode(made)
        return made

    def keep(self) -> None:
        """Write what is new; where that cannot be done the next start parses again."""
        if self._asked == self._known:
            return
        body = msgspec.msgpack.encode(Texts(self._reader, self._asked))
        beside = f"{self.path}.{os.getpid()}"
        try:
            os.makedirs(os.path.dirname(self.path), exist_ok=True)  # noqa: PTH103, PTH120
            with open(beside, "wb") as file:  # noqa: PTH123
                file.write(source_hash(body) + body)
            os.replace(beside, self.path)  # noqa: PTH105
        except OSError:
            with contextlib.suppress(OSError):
                os.unlink(beside)  # noqa: PTH108


@contextlib.contextmanager
def used() -> Iterator[None]:
    """Start with what is kept, and keep at once what had to be parsed."""
    last = LastRead(place())
    with last.used():
        yield
    last.keep()
