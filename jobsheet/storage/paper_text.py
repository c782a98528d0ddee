"""Typed text becomes the file again: what nobody understands stays as it was."""

from __future__ import annotations

from jobsheet.storage.typed_paper import Group, Items, Paper, Part, Value, empty
from jobsheet.storage.writing import blockable, scalar


def paper_text(paper: Paper) -> str:
    """The file: the same typed text gives the same bytes. Fields without a text are left out."""
    lines = _group(paper.root, 0)
    return "\n".join([*lines, *paper.below]) + "\n"


def _group(group: Group, indent: int) -> list[str]:
    """The lines of a group's fields."""
    pad = "  " * indent
    lines: list[str] = []
    for part in group.parts:
        if empty(part.value):
            continue
        lines += [f"{pad}{one}" if one else "" for one in part.above]
        behind = f"  {part.behind}" if part.behind else ""
        name = scalar(part.name, inside_flow=True)
        lines += _named(name, part.value, indent, behind)
    return lines


def _named(name: str, value: Value, indent: int, behind: str) -> list[str]:
    """One field: its name, and its value on the same line or below."""
    pad = "  " * indent
    if isinstance(value, str):
        if "\n" in value and blockable(value):
            return [f"{pad}{name}: |-", *(f"{pad}  {one}" if one else "" for one in value.split("\n"))]
        return [f"{pad}{name}: {scalar(value)}{behind}"]
    if value.flow:
        return [f"{pad}{name}: {_flow(value)}{behind}"]
    if isinstance(value, Group):
        return [f"{pad}{name}:", *_group(value, indent + 1)]
    lines = [f"{pad}{name}:"]
    for part in value.parts:
        lines += [f"{pad}  {one}" if one else "" for one in part.above]
        lines += _entry(part, indent + 1)
    return lines


def _entry(part: Part, indent: int) -> list[str]:
    """One entry of a list."""
    pad = "  " * indent
    behind = f"  {part.behind}" if part.behind else ""
    if isinstance(part.value, str):
        return [f"{pad}- {scalar(part.value)}{behind}"]
    if part.value.flow or isinstance(part.value, Items):
        return [f"{pad}- {_flow(part.value)}{behind}"]
    inner = _group(part.value, indent + 1)
    if not inner:
        return [f"{pad}- {{}}"]
    at = next(index for index, line in enumerate(inner) if line.strip() and not line.lstrip().startswith("#"))
    inner[at] = f"{pad}- {inner[at].lstrip()}"
    return inner


def _flow(value: Value) -> str:
    """A value on one line."""
    if isinstance(value, str):
        return scalar(value, inside_flow=True)
    if isinstance(value, Items):
        return "[" + ", ".join(_flow(part.value) for part in value.parts) + "]"
    fields = (
        f"{scalar(part.name, inside_flow=True)}: {_flow(part.value)}"
        for part in value.parts
        if not empty(part.value)
    )
    return "{" + ", ".join(fields) + "}"
