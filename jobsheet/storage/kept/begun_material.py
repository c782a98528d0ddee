"""A material of one's own, begun as a copy of one that cuts like it: a file of the person's
own folder, to be refined by hand.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from jobsheet.catalog.metals.material_files import row_called
from jobsheet.catalog.metals.materials import find
from jobsheet.catalog.metals.own_materials import own_materials
from jobsheet.errors import CannotWrite, JobsheetError, NoSuchEntry
from jobsheet.paths import own_folder
from jobsheet.storage.disk import write_file
from jobsheet.storage.own_paper import NONE_YET
from jobsheet.storage.writing import emit, scalar

#: What belongs to the other one and not to this.
_ITS_OWN = ("title", "also", "hardness", "note")
LONGEST = 60


def begin_material(name: str, like: str) -> Path:
    """Write it, so that a job can name it at once; where its file lies.

    Raises
    ------
    CannotWrite
        If the name is taken or too long, or the disk refuses.
    NoSuchEntry
        If there is nothing of the other name, or it is one of one's own.
    """
    wanted = " ".join(name.split())
    if not 0 < len(wanted) <= LONGEST or not wanted.isprintable():
        raise CannotWrite(f"The name of a material has 1 to {LONGEST} letters.")
    if _taken(wanted):
        raise CannotWrite(f"There is a material called “{wanted}” already; choose it, or another name.")
    found = row_called(like)
    if found is None:
        raise NoSuchEntry(f"“{like}” is one of your own; begin with a shipped material that cuts like it.")
    base, fields = found
    row: dict[str, Any] = {key: value for key, value in fields.items() if key not in _ITS_OWN}
    row |= {"title": wanted, "family": find(like).family, "note": f"begun with the figures of {base}"}
    text = "\n".join(emit({"materials": {scalar(wanted): _plain(row)}})) + "\n"
    folder = own_folder() / "materials"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder} cannot be made: {error.strerror or error}.") from None
    path = _place(folder, wanted)
    write_file(path, text, NONE_YET)
    try:
        own_materials()
    except JobsheetError:
        path.unlink(missing_ok=True)  # it would stand in the way of all others
        raise
    return path


def _taken(name: str) -> bool:
    try:
        find(name)
    except NoSuchEntry:
        return False
    return True


def _plain(value: Any) -> Any:
    """As it is written: every figure with its source."""
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    return [str(one) for one in value] if isinstance(value, list | tuple) else str(value)


def _place(folder: Path, name: str) -> Path:
    """A file name of its words, with a number where there is one already."""
    words = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")[:50] or "material"
    path, count = folder / f"{words}.yaml", 1
    while path.exists():
        count += 1
        path = folder / f"{words}-{count}.yaml"
    return path
