"""What somebody else had saved, before it is written over: kept as it was in the
folder of the plans beside the job.
"""

from __future__ import annotations

from pathlib import Path

from jobsheet.errors import CannotWrite
from jobsheet.storage.check_code import check_code
from jobsheet.storage.disk import write_file
from jobsheet.storage.kept.closed_plans import folder_of


def keep_aside(job: Path, data: bytes, date: str) -> Path:
    """Keep these bytes as `HM-103.plans/saved-DATE-CODE.yaml`; what is kept
    there already is not written again.

    Parameters
    ----------
    data : bytes
        The job's file as somebody else saved it
    date : str
        Such as `2026-11-30`

    Raises
    ------
    CannotWrite
        If the disk refuses: what stands in the file should then not be written over.
    """
    folder = folder_of(job)
    path = folder / f"saved-{date}-{check_code(data)}.yaml"
    try:
        if path.exists() and path.read_bytes() == data:
            return path
        folder.mkdir(exist_ok=True)
    except OSError as error:
        raise CannotWrite(f"{folder.name} cannot be made beside {job.name}: {error.strerror}.") from error
    write_file(path, data)
    return path
