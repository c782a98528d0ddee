"""The places beside the job and the ways to them, found by walking the folder;
nothing is read before it is asked for.
"""

from __future__ import annotations

import importlib
from functools import cache
from pathlib import Path

from jobsheet.gui.desk.place import Place, Way

#: One place a folder or a file; a name that begins with an underscore is none.
_PLACES = Path(__file__).parents[1] / "places"


@cache
def names() -> tuple[str, ...]:
    """The names of all places, without importing any."""
    files = {path.stem for path in _PLACES.glob("[!_]*.py")}
    folders = {path.parent.name for path in _PLACES.glob("[!_.]*/__init__.py")}
    return tuple(sorted(files | folders))


@cache
def place(name: str) -> Place:
    """The place of that name."""
    found: Place = importlib.import_module(f"jobsheet.gui.places.{name}").PLACE
    return found


@cache
def every_way() -> tuple[Way, ...]:
    """All ways to all places, in their order."""
    return tuple(sorted((way for name in names() for way in place(name).ways), key=lambda way: way.order))


@cache
def ways() -> tuple[Way, ...]:
    """Those of the menu of machines."""
    return tuple(way for way in every_way() if way.menu == "machine")
