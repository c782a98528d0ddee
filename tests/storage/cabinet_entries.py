"""An entry of the invented cabinet."""

from __future__ import annotations


def entry(section: str, what: str, *more: str, place: str = "drawer 9") -> str:
    lines = [
        f"format: 1\n{section}:\n  - what: {what}\n    place: {place}\n",
        *(f"    {one}\n" for one in more),
    ]
    return "".join(lines)
