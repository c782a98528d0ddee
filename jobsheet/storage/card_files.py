"""Which machine cards there are, the shipped ones and a person's own, found by name."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from msgspec.structs import replace

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.errors import NoSuchEntry
from jobsheet.model.job import Job
from jobsheet.model.machine import Machine
from jobsheet.paths import own_folder, resources
from jobsheet.storage.disk import digest
from jobsheet.storage.machine_file import machine_from_text
from jobsheet.units.grammar import nearest
from jobsheet.units.lazily import pattern

#: Letters of the name of a card.
LONGEST = 61
_NAME = pattern(rf"^[a-z0-9][a-z0-9\-]{{0,{LONGEST - 1}}}$")


def card_names() -> tuple[str, ...]:
    """The names of all cards, a person's own first."""
    names: dict[str, None] = {}
    for folder in (own_folder() / "machines", resources() / "machines"):
        if folder.is_dir():
            for path in sorted(folder.glob("*.yaml")):
                names[path.stem] = None
    return tuple(names)


def card_digest(name: str) -> str:
    """The content hash of the card of that name, which a job keeps. Raises as `find_card`."""
    return digest(read_file(card_path(name)))


def planned_for(job: Job, name: str) -> Job:
    """A job planned for the card of that name, as it is now. Raises as `find_card`."""
    return replace(job, machine=name, card_hash=card_digest(name))


def find_card(name: str) -> Machine:
    """The card of that name.

    Raises
    ------
    NoSuchEntry
        With the nearest name that there is.
    DocumentError
        If the card itself cannot be used.
    """
    path = card_path(name)
    return _read_card(path, path.stat().st_mtime_ns)


def card_path(name: str) -> Path:
    """Where the card of that name lies; a person's own goes before a shipped one.

    Raises
    ------
    NoSuchEntry
        With the nearest name that there is.
    """
    if _NAME.match(name):
        for folder in (own_folder() / "machines", resources() / "machines"):
            path = folder / f"{name}.yaml"
            if path.is_file():
                return path
    known = card_names()
    near = nearest(name.strip().lower().replace(" ", "-"), known)
    hint = f"did you mean {near}?" if near else f"there are {', '.join(known)}"
    raise NoSuchEntry(f"there is no machine card called “{name}”; {hint}")


@lru_cache(maxsize=64)
def _read_card(path: Path, _changed: int) -> Machine:
    """Remembered for as long as the file is not changed."""
    return machine_from_text(read_file(path), path.name, path.stem)
