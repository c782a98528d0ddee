"""Two people saved one plan: what the other saved is kept as it was, and put
together with what lies on the desk.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from jobsheet.errors import CannotWrite, JobsheetError
from jobsheet.gui.forms import ask
from jobsheet.storage.disk import digest

if TYPE_CHECKING:
    from jobsheet.gui.desk.desk import Desk


def over_theirs(_desk: Desk, path: Path, parent: QWidget) -> str | None:
    """Keep what the other saved, so that it may be written over; the digest of it,
    or None where it could not be kept.
    """
    kept = _kept(path, parent)
    return None if kept is None else digest(kept)


def with_theirs(desk: Desk, path: Path, parent: QWidget) -> str | None:
    """Put what the other saved together with the plan on the desk, as one edit; the
    digest of what stands in the file.

    What only one of the two changed is taken by itself; what both changed is asked, step by step. None where
    it is called off or cannot be done: then the desk and the file are as they were.
    """
    from jobsheet.edit.three_ways import TakeBoth, compared
    from jobsheet.storage.job_file import job_from_text

    kept = _kept(path, parent)
    if kept is None:
        return None
    try:
        theirs = job_from_text(kept.decode("utf-8-sig"), path.name)
    except (JobsheetError, UnicodeDecodeError) as error:
        ask.tell(parent, str(error))
        return None
    history = desk.history
    both = compared(history.saved, desk.job, theirs)
    chosen = ask.by_step(parent, path.name, both) if both.choices else ()
    if chosen is None:
        return None
    try:
        desk.do(TakeBoth(both, tuple(chosen)))
    except JobsheetError as error:
        ask.tell(parent, str(error))
        return None
    history.stands(theirs)  # were it saved to no end now, the next save would begin from here
    desk.digest = digest(kept)
    return desk.digest


def _kept(path: Path, parent: QWidget) -> bytes | None:
    """What stands in the file, once it is kept beside the job."""
    from jobsheet.reckoning.runs_kept import this_moment
    from jobsheet.storage.kept.kept_aside import keep_aside

    try:
        there = path.read_bytes()
        keep_aside(path, there, this_moment()[0])
    except OSError as error:
        ask.tell(parent, f"{path.name} cannot be read: {error.strerror or error}.")
        return None
    except CannotWrite as error:
        ask.tell(parent, str(error))
        return None
    return there
