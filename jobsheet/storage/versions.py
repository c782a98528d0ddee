"""Brings files of older formats up to date: one small function a step. An
example of each stays in the tests.
"""

from __future__ import annotations

from jobsheet.catalog.reading.strict_yaml import Node
from jobsheet.errors import DocumentError, Problem

CURRENT = 2
#: That of cabinets and proof logs.
OF_LISTS = 1


def up_to_date(root: Node, name: str) -> Node:
    """The nodes as the current format has them.

    Raises
    ------
    DocumentError
        If the file does not say its format, or says one that this program does not know.
    """
    if root.fields is None:
        return root
    node = root.fields.get("format")
    if node is None:
        raise DocumentError(
            name,
            (
                Problem(
                    1,
                    "format",
                    f"the file does not say its format; write format: {CURRENT} in its first line",
                ),
            ),
        )
    if sentence := what_is_wrong(node.text or "", CURRENT):
        raise DocumentError(name, (Problem(node.line, "format", sentence),))
    if node.text == "1":
        from jobsheet.storage.words.from_format_1 import brought_up

        return brought_up(root)
    return root


def what_is_wrong(text: str, current: int) -> str:
    """A sentence about a format that this program does not read; nothing about one
    that it does. For every kind of file.
    """
    if not (text.isascii() and text.isdigit() and len(text) < 6) or not int(text):
        return f"“{text}” is not a format; write format: {current}"
    if int(text) > current:
        return f"format {text} is newer than this program knows ({current}); use a newer program"
    return ""
