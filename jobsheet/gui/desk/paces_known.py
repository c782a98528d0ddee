"""What is known of the workshop's own times: from the records beside the job and its neighbours, or of
the whole shelf where there is one.
"""

from __future__ import annotations

from pathlib import Path

from jobsheet.errors import JobsheetError
from jobsheet.reckoning.paces import Pace, Timed, paces, timed
from jobsheet.remembered import remembered
from jobsheet.storage.records.run_log import SUFFIX, read_runs

#: More records of one folder are not read while somebody waits.
MOST = 200


def paces_known(path: Path | None) -> tuple[Pace, ...]:
    """The factors that the records give; nothing where there are too few."""
    if path is None:
        return ()
    from jobsheet.storage.kept.shelf_kept import shelf_folder
    from jobsheet.storage.records.run_log import path_beside

    try:
        there = path_beside(path).stat()
    except OSError:
        return _found(path, shelf_folder(), 0, 0)
    return _found(path, shelf_folder(), there.st_mtime_ns, there.st_size)


@remembered(4)
def _found(path: Path, shelf: Path | None, _time: int, _size: int) -> tuple[Pace, ...]:
    """Looked for again where the job's own record grew: it is asked each time the hand
    rests, and the folder may be slow.
    """
    from jobsheet.shelf.shelf_times import times_kept

    here = path.absolute()
    found: dict[str, Timed] = {}
    if shelf is not None and here.is_relative_to(shelf.absolute()):
        found = {timed.id: timed for timed in times_kept(shelf)}
        beside = [path]
    else:
        beside = _neighbours(path)
    for other in beside:
        found |= {each.id: each for each in _of(other)}
    return paces(found.values())


def _neighbours(path: Path) -> list[Path]:
    """Jobs of the same folder that have a record."""
    try:
        there = sorted(other.name for other in path.parent.iterdir() if other.name.endswith(SUFFIX))
    except OSError:
        return [path]
    return [path, *(path.with_name(f"{name.removesuffix(SUFFIX)}.yaml") for name in there[:MOST])]


def _of(job: Path) -> tuple[Timed, ...]:
    try:
        return timed(read_runs(job)[0])
    except JobsheetError:
        return ()  # it is said where it is written to and listed
