"""The kinds of operation by name; a kind is imported when a job first asks for it.

The list is the folder's own: every module in `kinds/` is one.
"""

from __future__ import annotations

import importlib
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from pathlib import Path
from typing import Any

from jobsheet.errors import NoSuchEntry
from jobsheet.model.identity import while_it_lives
from jobsheet.model.job import Operation
from jobsheet.operations.kind import Kind
from jobsheet.operations.roles import Roles
from jobsheet.units.grammar import nearest

#: One kind a file or a folder; a name that begins with an underscore is none.
_KINDS = Path(__file__).parent / "kinds"
#: Kinds that stand in no file of the folder: those that tests make up.
_MADE_UP: dict[str, Kind[Any]] = {}


@cache
def kinds() -> tuple[str, ...]:
    """The names of all kinds, without importing any."""
    names = {path.stem for path in _KINDS.glob("[!_]*.py")} | {
        path.parent.name for path in _KINDS.glob("[!_.]*/__init__.py")
    }
    return tuple(sorted({*(name.replace("_", "-") for name in names), *_MADE_UP}))


@cache
def kind(name: str) -> Kind[Any]:
    """The kind of that name.

    Raises
    ------
    NoSuchEntry
        With the nearest name that there is.
    """
    if name in _MADE_UP:
        return _MADE_UP[name]
    module_name = name.replace("-", "_")
    if name not in kinds():
        near = nearest(name, kinds())
        hint = f" Did you mean {near}?" if near else f" Kinds are: {', '.join(kinds())}."
        raise NoSuchEntry(f"There is no kind of operation called “{name}”.{hint}")
    found: Kind[Any] = importlib.import_module(f"jobsheet.operations.kinds.{module_name}").KIND
    return found


def title(name: str) -> str:
    """What a person calls that kind."""
    return kind(name).title


@while_it_lives
def roles(operation: Operation) -> Roles:
    """What a step is to those that do not know its kind."""
    return kind(operation.kind).plays(operation.fields)


@contextmanager
def made_up(*some: Kind[Any]) -> Iterator[None]:
    """These kinds beside those of the folder, for as long as a test asks: nothing else may need to hear of them."""
    before = dict(_MADE_UP)
    _MADE_UP.update((kind.name, kind) for kind in some)
    _forget()
    try:
        yield
    finally:
        _MADE_UP.clear()
        _MADE_UP.update(before)
        _forget()


def _forget() -> None:
    kind.cache_clear()
    kinds.cache_clear()
