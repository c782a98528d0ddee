"""By which factors the person has times shown: taken over by a press, never of
itself. A broken file is as good as none.
"""

from __future__ import annotations

import contextlib

import msgspec

from jobsheet import paths
from jobsheet.errors import JobsheetError
from jobsheet.storage.disk import write_file

NAME = "own-times.json"


class OwnPace(msgspec.Struct, frozen=True):
    """Factors on planned times, for setting up and for the rest, from so many
    runs, taken over on that day.
    """

    set_up: float = 1.0
    work: float = 1.0
    runs: int = 0
    day: str = ""


#: What the file says, once it was read; by the folder that it lies in.
_read: dict[str, OwnPace | None] = {}


def own_pace() -> OwnPace | None:
    """The factors that were taken over; None where times are shown as they are planned. Read once."""
    place = str(paths.own_folder())
    if place not in _read:
        try:
            found = msgspec.json.decode((paths.own_folder() / NAME).read_bytes(), type=OwnPace)
        except (OSError, msgspec.DecodeError, UnicodeDecodeError):
            found = None
        fits = found is not None and all(0.05 < one < 20 for one in (found.set_up, found.work))
        _read[place] = found if fits else None
    return _read[place]


def keep_pace(pace: OwnPace | None) -> None:
    """Show times by these factors from now on, or as they are planned. A place that cannot
    be written to is no reason to stop.
    """
    _read[str(paths.own_folder())] = pace
    path = paths.own_folder() / NAME
    with contextlib.suppress(OSError, JobsheetError):
        if pace is None:
            path.unlink(missing_ok=True)
        else:
            path.parent.mkdir(parents=True, exist_ok=True)
            write_file(path, msgspec.json.encode(pace).decode() + "\n")
