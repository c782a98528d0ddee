"""What YAML texts mean, remembered from one start of the window to the next, so that none has to be parsed.

The key is the text itself, letter for letter: a changed file is another text, and nothing can be out of date.
Kept in `cache/start.msgpack` of the person's folder, which can be deleted at any time; damaged, of another
version, of another form or out of reach it is as good as none. Whoever could write a lie into it could write
the person's own cards and materials as well. Only the window asks for it: `begin()`; without that nothing is
remembered.
"""

from __future__ import annotations

import contextlib
import os
from typing import Any

from msgspec import MsgspecError, Raw, Struct, msgpack

from jobsheet.paths import own_folder

#: Raised when the meaning of what is kept changes.
VERSION = 2
#: The most that is kept, in texts and in bytes: some jobs, a card, the shipped tables.
MOST = 40
LARGEST = 2_000_000


class _File(Struct, array_like=True, forbid_unknown_fields=True):
    """What lies on the disk: a check over `body`, which is a `_Body`."""

    version: int
    check: int
    body: bytes


#: (how it was read, text) -> what it means.
_known: dict[str, Raw] = {}
_used: dict[str, Raw] = {}
_state = {"begun": False, "new": False}


def _place() -> str:
    return os.fspath(own_folder() / "cache" / "start.msgpack")


def _check(body: bytes) -> int:
    """A sum by which damage is known."""
    import zlib

    return zlib.crc32(body)


def begin() -> None:
    """Remember from now on, and recall what was kept."""
    _known.clear()
    _used.clear()
    _state.update(begun=True, new=False)
    try:
        with open(_place(), "rb") as file:  # noqa: PTH123  # the quick way
            kept = msgpack.decode(file.read(LARGEST), type=_File)
        if kept.version == VERSION and kept.check == _check(kept.body):
            _known.update(msgpack.decode(kept.body, type=dict[str, Raw]))
    except (OSError, MsgspecError, RecursionError):
        _known.clear()


def end() -> None:
    """Keep what was new, and remember no more."""
    _keep()
    _known.clear()
    _used.clear()
    _state.update(begun=False, new=False)


def recall(text: str, kind: Any) -> Any:
    """What this very text means, as a `kind`; None where it is not known."""
    if not _state["begun"]:
        return None
    key = f"{kind.__name__} {text}"
    raw = _known.get(key)
    if raw is None:
        return None
    try:
        meaning = msgpack.decode(raw, type=kind)
    except (MsgspecError, RecursionError):
        return None
    _used[key] = raw
    return meaning


def learn(text: str, kind: Any, meaning: Any) -> None:
    """Remember what a text means."""
    if not _state["begun"]:
        return
    with contextlib.suppress(MsgspecError, TypeError, RecursionError):
        _used[f"{kind.__name__} {text}"] = Raw(msgpack.encode(meaning))
        _state["new"] = True


def _keep() -> None:
    """Write what is known beside and put it in place; a folder that cannot be written to is no reason to stop."""
    if not _state["new"]:
        return
    kept = dict(
        list({**_used, **{key: raw for key, raw in _known.items() if key not in _used}}.items())[:MOST]
    )
    body = msgpack.encode(kept)
    if len(body) > LARGEST // 2:
        body = msgpack.encode(_used)
    place = _place()
    beside = f"{place}.{os.getpid()}"
    try:
        os.makedirs(os.path.dirname(place), exist_ok=True)  # noqa: PTH103, PTH120
        with open(beside, "wb") as file:  # noqa: PTH123
            file.write(msgpack.encode(_File(VERSION, _check(body), body)))
        os.replace(beside, place)  # noqa: PTH105
    except OSError:
        with contextlib.suppress(OSError):
            os.unlink(beside)  # noqa: PTH108
