"""What stood in a job's file before it was saved: kept beside it as
`NAME.yaml.before`, where a person finds it.
"""

from __future__ import annotations

from pathlib import Path

from jobsheet.errors import JobsheetError
from jobsheet.storage.disk import digest, write_file

SUFFIX = ".before"


def read_before(path: Path) -> bytes | None:
    """What stands there now; None where there is nothing to keep."""
    try:
        return path.read_bytes() if path.is_file() else None
    except OSError:
        return None


def keep_before(path: Path, stood: bytes | None, now: str) -> Path | None:
    """Keep what stood there, unless the very same stands there now; where it
    lies, or None where it is not kept.
    """
    if stood is None or digest(stood) == now:
        return None
    before = path.with_name(path.name + SUFFIX)
    try:
        write_file(before, stood)
    except (OSError, JobsheetError):
        return None
    return before
