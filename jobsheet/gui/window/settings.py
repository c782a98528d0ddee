"""What the window remembers between two starts: light or dark, bench size. A
broken file is as good as none.
"""

from __future__ import annotations

import msgspec

from jobsheet import paths

NAME = "window.json"


class Settings(msgspec.Struct, frozen=True):
    """The person's choices in View."""

    scheme: str = "system"
    bench: bool = False


def read() -> Settings:
    """The choices of last time."""
    try:
        return msgspec.json.decode((paths.own_folder() / NAME).read_bytes(), type=Settings)
    except (OSError, msgspec.DecodeError):
        return Settings()


def write(settings: Settings) -> None:
    """Keep the choices; a folder that cannot be written to is no reason to stop."""
    folder = paths.own_folder()
    try:
        folder.mkdir(parents=True, exist_ok=True)
        (folder / NAME).write_bytes(msgspec.json.encode(settings))
    except OSError:
        return
