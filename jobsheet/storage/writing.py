"""Writes our files: the same value gives the same bytes, in the order the fields are declared."""

from __future__ import annotations

import os
import re
from pathlib import Path
from typing import Any

from jobsheet.errors import CannotWrite, ChangedOutside
from jobsheet.units.lazily import pattern

#: Text that every YAML reader takes as this text, without quotes. Numbers stay plain: ours are text anyway.
_PLAIN = pattern(r"^(?:[A-Za-z0-9À-ɏΑ-ωА-я(+⌀½¼¾.°µ/±−][^\n\t\"\\]*)$")
_AMBIGUOUS = pattern(r"^(?:yes|no|on|off|true|false|null|~|y|n)$", re.IGNORECASE)


def scalar(text: str, *, inside_flow: bool = False) -> str:
    """A text as it stands in the file, quoted where it must be."""
    if (
        _PLAIN.match(text)
        and ": " not in text
        and not text.endswith(":")
        and " #" not in text
        and text == text.strip()
        and text.isprintable()
        and not (inside_flow and re.search(r"[,\[\]{}:]", text))
    ):
        return text
    import json  # only for text that must be quoted: a file that is read needs none of this

    return json.dumps(text, ensure_ascii=False)


def emit(value: Any, indent: int = 0) -> list[str]:
    """The lines of a mapping; values are text, lists or mappings; tuples of two texts are written `[x, y]`."""
    lines: list[str] = []
    pad = "  " * indent
    for name, item in value.items():
        if isinstance(item, dict):
            lines.append(f"{pad}{name}:")
            lines.extend(emit(item, indent + 1))
        elif isinstance(item, list):
            lines.append(f"{pad}{name}:" if item else f"{pad}{name}: []")
            for entry in item:
                lines.extend(_item(entry, indent + 1))
        elif "\n" in item and blockable(item):
            lines.append(f"{pad}{name}: |-")
            lines.extend(f"{pad}  {line}" if line else "" for line in item.split("\n"))
        else:
            lines.append(f"{pad}{name}: {scalar(item)}")
    return lines


def blockable(text: str) -> bool:
    """Whether a text of several lines can stand as a block, letter for letter."""
    lines = text.split("\n")
    return (
        text == text.strip("\n")
        and not text[:1].isspace()
        and all(line == line.rstrip() and (line == "" or line.isprintable()) for line in lines)
    )


def _item(entry: Any, indent: int) -> list[str]:
    pad = "  " * indent
    if isinstance(entry, tuple):
        return [f"{pad}- [{', '.join(scalar(text, inside_flow=True) for text in entry)}]"]
    if isinstance(entry, dict):
        inner = emit(entry, indent + 1)
        if not inner:
            return [f"{pad}- {{}}"]
        inner[0] = f"{pad}- {inner[0].lstrip()}"
        return inner
    return [f"{pad}- {scalar(entry)}"]


def digest(text: str | bytes) -> str:
    """A short content hash, by which a changed file or card is known."""
    import hashlib  # late: a start that only reads does not need it

    raw = text.encode() if isinstance(text, str) else text
    return hashlib.sha256(raw).hexdigest()[:16]


def file_digest(path: Path) -> str | None:
    """The content hash of a file, or None where there is none."""
    try:
        return digest(path.read_bytes())
    except FileNotFoundError:
        return None
    except OSError as error:
        raise CannotWrite(f"{path.name} cannot be read: {error.strerror or error}.") from None


def write_file(path: Path, content: str | bytes, expected: str | None = None) -> str:
    """Write beside, flush to the disk, then put in place: there is never half a file.

    Parameters
    ----------
    path : Path
        Where to
    content : str or bytes
        Text is written in UTF-8
    expected : str or None
        The digest of what should stand there now; None does not ask

    Returns
    -------
    digest : str
        Of what was written

    Raises
    ------
    ChangedOutside
        If another content stands there than was expected.
    CannotWrite
        If the disk refuses; what stood there still stands.
    """
    import tempfile

    raw = content.encode() if isinstance(content, str) else content
    if path.is_dir():
        raise CannotWrite(f"{path.name} is a folder; choose another name.")
    if expected is not None and file_digest(path) not in (expected, None):
        raise ChangedOutside(
            f"{path.name} was changed by something else since it was opened; save under another name, or open it again."
        )
    temporary = None
    try:
        mode = path.stat().st_mode & 0o777 if path.exists() else None
        handle, temporary = tempfile.mkstemp(
            prefix=f".{path.name[:40]}.", suffix=".new", dir=path.resolve().parent
        )
        with os.fdopen(handle, "wb") as stream:
            stream.write(raw)
            stream.flush()
            os.fsync(stream.fileno())
        if mode is None:
            mask = os.umask(0)
            os.umask(mask)
            mode = 0o666 & ~mask
        Path(temporary).chmod(mode)
        Path(temporary).replace(path.resolve())
    except OSError as error:
        if temporary:
            Path(temporary).unlink(missing_ok=True)
        raise CannotWrite(
            f"{path.name} cannot be written: {error.strerror or error}. Choose another place."
        ) from None
    return digest(raw)
