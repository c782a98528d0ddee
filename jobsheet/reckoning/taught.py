"""What a machine's proof log teaches, once for each machine and state of its log.

Where nothing was tried nothing is imported. Where something was, the statistics need a moment the first time:
the window takes them after its first paint, the command line at once.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
from pathlib import Path

from msgspec import MsgspecError, msgpack

from jobsheet import clock
from jobsheet.errors import JobsheetError
from jobsheet.model.capacity import Snapshot
from jobsheet.model.shop import Shop
from jobsheet.paths import own_folder
from jobsheet.reckoning.known_capacity import snapshot_of
from jobsheet.storage.card_files import card_digest
from jobsheet.storage.records.proof_log import read_log
from jobsheet.storage.shop_file import workshop

#: Raised when the meaning of what is kept, or how it is learned, changes.
VERSION = 4


def proof_of(machine: str, shop: Shop | None = None, today: str = "") -> Snapshot | None:
    """What that machine's trials teach today; None where there are none.

    A log that cannot be read teaches nothing, and is told where logs are shown: figures do not wait for it.
    """
    day = today or clock.today()
    numbers = shop or workshop()
    try:
        trials = read_log(machine).teaching
        if not trials:
            return None
        place = _place(machine)
        mark = _mark(machine, day, numbers, tuple(trial.id for trial in trials))
        known = _kept(place, mark)
        if known is not None:
            return known
        made = snapshot_of(machine, trials, day, numbers)
    except JobsheetError:
        return None
    if made is not None:
        _keep(place, mark, made)
    return made


def _place(machine: str) -> Path:
    return own_folder() / "cache" / f"proof-{machine}.msgpack"


def _mark(machine: str, day: str, shop: Shop, ids: tuple[str, ...]) -> str:
    """What it was learned from: the very trials, told apart by their content, the day,
    the workshop's numbers and the card.
    """
    told = msgpack.encode([VERSION, machine, day, shop, ids, _card(machine)])
    return hashlib.sha256(told).hexdigest()


def _card(machine: str) -> str:
    """Which card the demands of the trials are worked out with; empty where there is none."""
    with contextlib.suppress(JobsheetError, OSError):
        return card_digest(machine)
    return ""


def _kept(place: Path, mark: str) -> Snapshot | None:
    """What was learned from the same before; None where it is not there or
    damaged. It can be deleted at any time.
    """
    try:
        found, known = msgpack.decode(place.read_bytes(), type=tuple[str, Snapshot])
    except (OSError, MsgspecError, RecursionError):
        return None
    return known if found == mark else None


def _keep(place: Path, mark: str, made: Snapshot) -> None:
    """Written beside and put in place; a folder that cannot be written to is no reason to stop."""
    beside = place.with_suffix(f".{os.getpid()}")
    with contextlib.suppress(OSError):
        place.parent.mkdir(parents=True, exist_ok=True)
        beside.write_bytes(msgpack.encode((mark, made)))
        beside.replace(place)
