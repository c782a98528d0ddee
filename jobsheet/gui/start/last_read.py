"""Keeps what the texts of the last start meant, so that the same job is neither
parsed again nor the parser fetched.

Fetching the parser of YAML and reading a job and a card with it is a twentieth of a start (6 to 8 ms).
What it made of each text is kept by the whole text, in the person's own folder, for jobs are theirs; only
what this start asked for is kept for the next one. It holds nodes, that is text with its lines, and is
decoded strictly: all that is judged of a job, its fields, bounds and sentences, is judged anew. A text
that was refused is not kept. Used only while the reader of YAML is the very file it was when it was
written; it can be deleted at any time.

The verbs of the command line have one of their own, for another one asks for another card, and the next plan of
a row of plans for the same card: there what was asked for before stays beside it, as long as it is little.
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
#: Of what a verb asks for so much is kept, packed [bytes]: a job of a thousand steps; each verb reads all of it.
ASKED = 1_500_000
#: What earlier verbs asked for stays up to so much [bytes]: some twenty jobs and cards.
EARLIER = 300_000


class Texts(msgspec.Struct):
    """What is kept: by which reader it was read, and the nodes of each text, packed."""

    reader: tuple[int, int]
    nodes: dict[str, bytes]


def place(*, verb: bool = False) -> str:
    """Where it is kept: what starts ask for, and what verbs do."""
    name = "read-by-verbs.msgpack" if verb else "read-at-start.msgpack"
    return os.path.join(paths.own_folder(), "cache", name)  # noqa: PTH118  # the quick way


def _reader() -> tuple[int, int]:
    """The reader of YAML as it is now: the time and size of its file."""
    now = os.stat(strict_yaml.__file__)  # noqa: PTH116
    return now.st_mtime_ns, now.st_size


class LastRead:
    """Knows texts by what they say; reads what was kept, learns what is new.

    With `earlier` what was asked for before stays beside what is asked for now.
    """

    def __init__(self, path: str, *, earlier: bool = False) -> None:
        self.path = path
        self._earlier = earlier
        self._known: dict[str, bytes] = {}
        #: What this start asked for: the next one will ask the same.
        self._asked: dict[str, bytes] = {}
        self._weight = 0
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
                node = msgspec.msgpack.decode(kept, type=Node)
                self._asked[text] = kept
                return node
        made = self._nodes(text, name)
        if not self._earlier or self._weight < ASKED:
            self._asked[text] = msgspec.msgpack.encode(made)
            self._weight += len(self._asked[text])
        return made

    def keep(self) -> None:
        """Write what is new; where that cannot be done the next start parses again."""
        if (self._asked.keys() <= self._known.keys()) if self._earlier else self._asked == self._known:
            return
        body = msgspec.msgpack.encode(Texts(self._reader, {**self._asked, **self._from_before()}))
        beside = f"{self.path}.{os.getpid()}"
        try:
            os.makedirs(os.path.dirname(self.path), exist_ok=True)  # noqa: PTH103, PTH120
            with open(beside, "wb") as file:  # noqa: PTH123
                file.write(source_hash(body) + body)
            os.replace(beside, self.path)  # noqa: PTH105
        except OSError:
            with contextlib.suppress(OSError):
                os.unlink(beside)  # noqa: PTH108

    def _from_before(self) -> dict[str, bytes]:
        """What stays of what was asked for before, the newest first."""
        stays: dict[str, bytes] = {}
        room = EARLIER if self._earlier else 0
        for text, kept in self._known.items():
            room -= len(kept)
            if room < 0:
                break
            if text not in self._asked:
                stays[text] = kept
        return stays


@contextlib.contextmanager
def used(*, verb: bool = False) -> Iterator[None]:
    """Start with what is kept, and keep at once what had to be parsed; of a verb what it asks to its end."""
    last = LastRead(place(verb=verb), earlier=verb)
    with last.used():
        yield
    last.keep()
