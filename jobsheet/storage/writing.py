"""Writes our files: the same value gives the same bytes, in the order the fields are declared."""

from __future__ import annotations

import re
from typing import Any

from jobsheet.units.lazily import pattern

#: Text that every YAML reader takes as this text, without quotes. Numbers stay plain: ours are text anyway.
_PLAIN = pattern(r"^(?:[A-Za-z0-9À-ɏΑ-ωА-я(+⌀½¼¾.°µ/±−][^\n\t\"\\]*)$")

#: What may not stand in a file as it is, or is another thing there (a line's
#: end); escaped it comes back as itself.
_RAW = pattern("[\\x7f-\\x9f\\u2028\\u2029\\ufeff\\ufffe\\uffff]")


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

    return _RAW.sub(lambda match: f"\\u{ord(match[0]):04x}", json.dumps(text, ensure_ascii=False))


def emit(value: Any, indent: int = 0) -> list[str]:
    """The lines of a mapping; values are text, lists or mappings; tuples of
    two texts are written `[x, y]`.
    """
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
