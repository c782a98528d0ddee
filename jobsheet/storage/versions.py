"""Brings files of older formats up to date: one small function a step. An example of each stays in the tests."""

from __future__ import annotations

from jobsheet.catalog.reading.strict_yaml import Node
from jobsheet.errors import DocumentError, Problem

CURRENT = 1


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
    text = node.text or ""
    if not text.isdigit() or not 1 <= int(text) <= CURRENT:
        newer = text.isdigit() and int(text) > CURRENT
        sentence = (
            f"format {text} is newer than this program knows ({CURRENT}); use a newer program"
            if newer
            else f"“{text}” is not a format; write format: {CURRENT}"
        )
        raise DocumentError(name, (Problem(node.line, "format", sentence),))
    return root
