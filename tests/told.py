"""Any value of the program as one line of text: what kept readings are made of.

A record is told by the fields that are not as they are of themselves, a number to five figures, a quantity
as it was typed. Of machine, metal, workshop and what is known of a machine stands the name alone: they are
asked, not answered.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from enum import Enum
from typing import Any

import msgspec
from msgspec import Struct

#: Told by their name alone.
_BY_NAME = {"Machine", "Material", "Setting", "Snapshot", "Shop"}
#: Numbers nearer to nought than that are nought: what is left of a difference between
#: two equal floats is not the same on every machine.
_NOUGHT = 1e-12


#: What stands inside an answer in a few words: a limit, a cut with its limits.
_SHORT: dict[str, Callable[[Any], str]] = {
    "Limit": lambda one: " ".join((one.name, told(one.share), one.verdict, one.begin, one.sentence)).strip(),
    "Tried": lambda one: f"{told(one.fields)} {one.problem}({'; '.join(map(told, one.limits))})",
}


def told(value: object) -> str:
    """The value in one line."""
    if isinstance(value, float):
        return "0" if abs(value) < _NOUGHT else f"{value:.5g}"
    if isinstance(value, str):
        return f'"{value}"'
    if value is None or isinstance(value, int | Enum):
        return str(value)
    if isinstance(value, Mapping):
        return "{" + ", ".join(f"{told(name)}: {told(one)}" for name, one in value.items()) + "}"
    if isinstance(value, set | frozenset):
        return "{" + ", ".join(sorted(map(told, value))) + "}"
    if isinstance(value, tuple | list):
        return "[" + ", ".join(map(told, value)) + "]"
    if isinstance(value, Struct) or dataclasses.is_dataclass(value):
        return _record(value)
    return str(value)


def _record(value: object) -> str:
    name = type(value).__name__
    if name in _BY_NAME:
        return name
    if name in _SHORT:
        return _SHORT[name](value)
    return whole(value)


def whole(value: object) -> str:
    """A record by all its fields, where it is what is asked for."""
    name = type(value).__name__
    if type(value).__module__ == "jobsheet.model.quantity" and isinstance(getattr(value, "text", None), str):
        return f"<{value.text}>"  # type: ignore[attr-defined]
    said = ", ".join(
        f"{field}={told(one)}" for field, one, default in _fields(value) if _differs(one, default)
    )
    return f"{name}({said})"


def _differs(one: object, default: object) -> bool:
    return one is not default and (type(one) is not type(default) or one != default)


def _fields(value: object) -> list[tuple[str, object, object]]:
    """Name, value and default of every field."""
    if isinstance(value, Struct):
        return [
            (one.name, getattr(value, one.name), one.default) for one in msgspec.structs.fields(type(value))
        ]
    return [
        (one.name, getattr(value, one.name), one.default)
        for one in dataclasses.fields(value)  # type: ignore[arg-type]
    ]
