"""The photographs of a job as its file names them: by their contents, and by
nothing else, least of all a path.
"""

from __future__ import annotations

from typing import Any

from jobsheet.catalog.reading.strict_yaml import Node
from jobsheet.model.job import Photograph
from jobsheet.storage import layout

#: A job has at most so many (common practice, no source).
MOST = 24
#: How a content is written: a SHA-256.
SIGNS, LONG = frozenset("0123456789abcdef"), 64


def is_content(text: str) -> bool:
    """Whether a text names a content, and is nothing that could be taken for a path."""
    return len(text) == LONG and set(text) <= SIGNS


def photographs_from(reader: Any, node: Node | None) -> tuple[Photograph, ...]:
    """The photographs of a file; the reader (`storage/job_file.Reader`) keeps what is wrong with any."""
    found = []
    for index, item in enumerate(reader.items(node, "photographs")):
        where = f"photographs[{index}]"
        values = reader.entries(item, where, layout.PHOTOGRAPH)
        content = values.get("content")
        if content and not is_content(content):
            sentence = "a photograph is named by the SHA-256 of its bytes, 64 of 0 to 9 and a to f; add it in the window"
            reader.problem((item.fields or {}).get("content", item), f"{where}.content", sentence)
        elif content:
            found.append(Photograph(**values))
    if node is not None and len(found) > MOST:
        reader.problem(node, "photographs", f"there are {len(found)}; a job has at most {MOST}")
    return tuple(found)
