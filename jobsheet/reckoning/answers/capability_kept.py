"""The capability card as it was answered before: kept in one's own folder, with all that it hangs on.

A card takes some fifteen hundred cuts that are tried, more than half a second; who asks for it at the shell asks again for
the same machine. It is kept by everything that its rows are made from: the machine's card, metal, workshop and what the
log teaches, which all stand in the setting, and the program and its tables as they are now. It can be deleted at any time.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

from msgspec import MsgspecError, msgpack

from jobsheet.model.job import Job
from jobsheet.model.machine import Machine
from jobsheet.paths import own_folder, resources
from jobsheet.reckoning.answers.capability_rows import Capability, Card, OnMachine, Row
from jobsheet.reckoning.answers.usual_work import setting_of

#: Folders of the program that no answer knows: they lie above, and the import rules keep them there.
ABOVE = frozenset({"gui", "cli", "sheet", "report", "edit", "lessons", "shelf", "review", "__pycache__"})
#: Folders of the tables that none is read from for a card.
UNREAD = frozenset({"fonts", "help", "icons", "machine-classes", "starter-cabinets"})
#: So many cards are kept: two machines in some metals.
KEPT = 12

_Known = dict[str, tuple[str, tuple[Row, ...]]]


def capability(
    machines: Sequence[Machine], materials: Sequence[str], *, units: str = "mm", job: Job | None = None
) -> Capability:
    """As `capability_answer.capability`, from what is kept where it is there; the job is worked anew.

    Raises
    ------
    NoSuchEntry
        If there is no such material, or the job's own is not there.
    """
    kept = _Kept()
    cards = tuple(tuple(kept.card(machine, metal, units) for machine in machines) for metal in materials)
    kept.keep()
    on: tuple[OnMachine, ...] = ()
    if job is not None:
        from jobsheet.reckoning.answers.capability_answer import on_machine

        on = tuple(on_machine(job, machine) for machine in machines)
    return Capability(machines=tuple(machines), materials=cards, units=units, job=job, on=on)


class _Kept:
    """The rows that are kept, by what they were made from; learns what is new."""

    def __init__(self) -> None:
        self._program = program_now()
        self._known: _Known = _read() if self._program else {}
        self._new: _Known = {}

    def card(self, machine: Machine, metal: str, units: str) -> Card:
        """One card; worked through where it is not known."""
        setting = setting_of(machine, metal, units=units)
        mark = hashlib.sha256(self._program + msgpack.encode([setting, metal])).hexdigest()
        if mark in self._known:
            held, rows = self._known[mark]
            return Card(
                machine=machine, material=metal, title=setting.material.title, held=held, rows=rows, proof=setting.proof,
            )  # fmt: skip
        from jobsheet.reckoning.answers.capability_answer import card

        made = card(machine, metal, units=units)
        self._new[mark] = made.held, made.rows
        return made

    def keep(self) -> None:
        """Write what is new before what was there; a folder that cannot be written to is no reason to stop."""
        if not self._new or not self._program:
            return
        kept = dict(list({**self._new, **self._known}.items())[:KEPT])
        place = _place()
        beside = place.with_suffix(f".{os.getpid()}")
        with contextlib.suppress(OSError):
            place.parent.mkdir(parents=True, exist_ok=True)
            beside.write_bytes(msgpack.encode(kept))
            beside.replace(place)


def _place() -> Path:
    return own_folder() / "cache" / "capability.msgpack"


def _read() -> _Known:
    """What is kept; nothing where it is not there or damaged."""
    try:
        return msgpack.decode(_place().read_bytes(), type=_Known)
    except (OSError, MsgspecError, RecursionError):
        return {}


def program_now() -> bytes:
    """The program below the answers and its tables, told by place, time and size of every file, and the
    Python that runs it; empty where the program does not lie in files, for then nothing would tell a newer one.
    """
    package = Path(__file__).parents[2]
    seen = [*_seen(str(package), ABOVE, ".py"), *_seen(str(resources()), UNREAD, ".yaml")]
    if not seen:
        return b""
    return hashlib.sha256(msgpack.encode([sys.version, sorted(seen)])).digest()


def _seen(folder: str, without: frozenset[str], ending: str) -> Iterator[tuple[str, int, int]]:
    """Place, time and size of the files of a folder and of those in it."""
    try:
        with os.scandir(folder) as found:
            entries = list(found)
    except OSError:
        return
    for entry in entries:
        if entry.name.endswith(ending):
            with contextlib.suppress(OSError):
                now = entry.stat()
                yield entry.path, now.st_mtime_ns, now.st_size
        elif entry.name not in without and entry.is_dir():
            yield from _seen(entry.path, without, ending)
