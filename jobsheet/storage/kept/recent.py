"""The jobs that were open last, the newest first: a small file of the person's own
folder. A broken one is as good as none.
"""

from __future__ import annotations

from pathlib import Path

import msgspec

from jobsheet import paths
from jobsheet.errors import JobsheetError

NAME = "recent.json"
#: As many as are seen at a glance in a menu.
MOST = 9


class Recent(msgspec.Struct, frozen=True):
    """One job: its file, and what its title block says of the part."""

    path: str
    part: str = ""

    @property
    def there(self) -> bool:
        """Whether its file is still where it was."""
        try:
            return Path(self.path).is_file()
        except (OSError, ValueError):
            return False


def recent() -> tuple[Recent, ...]:
    """All that are remembered."""
    try:
        raw = (paths.own_folder() / NAME).read_bytes()
        return msgspec.json.decode(raw, type=tuple[Recent, ...])[:MOST]
    except (OSError, msgspec.DecodeError, UnicodeDecodeError):
        return ()


def last() -> Path | None:
    """The newest one that is still there."""
    return next((Path(one.path) for one in recent() if one.there), None)


def used(path: Path, part: str) -> None:
    """Remember a job that was opened or saved; a folder that cannot be written to is no reason to stop."""
    from jobsheet.storage.disk import write_file

    whole = str(path.absolute())
    kept = (Recent(whole, part), *(one for one in recent() if one.path != whole))[:MOST]
    folder = paths.own_folder()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        write_file(folder / NAME, msgspec.json.encode(kept))
    except (OSError, ValueError, JobsheetError):
        return
