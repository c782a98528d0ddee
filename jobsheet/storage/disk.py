"""Files as they lie on the disk: known by their content, and never half written."""

from __future__ import annotations

import os
from pathlib import Path

from jobsheet.errors import CannotWrite, ChangedOutside


def digest(text: str | bytes) -> str:
    """A short content hash, by which a changed file or card is known."""
    import hashlib  # late: a start that only reads does not need it

    raw = text.encode() if isinstance(text, str) else text
    return hashlib.sha256(raw).hexdigest()[:16]


def file_digest(path: Path) -> str | None:
    """The content hash of a file, or None where there is none."""
    try:
        return digest(path.read_bytes())
    except FileNotFoundError:
        return None
    except OSError as error:
        raise CannotWrite(f"{path.name} cannot be read: {error.strerror or error}.") from None


def write_file(path: Path, content: str | bytes, expected: str | None = None) -> str:
    """Write beside, flush to the disk, then put in place: there is never half a file.

    Parameters
    ----------
    path : Path
        Where to
    content : str or bytes
        Text is written in UTF-8
    expected : str or None
        The digest of what should stand there now; None does not ask

    Returns
    -------
    digest : str
        Of what was written

    Raises
    ------
    ChangedOutside
        If another content stands there than was expected.
    CannotWrite
        If the disk refuses; what stood there still stands.
    """
    import tempfile

    raw = content.encode() if isinstance(content, str) else content
    if path.is_dir():
        raise CannotWrite(f"{path.name} is a folder; choose another name.")
    if expected is not None and file_digest(path) not in (expected, None):
        raise ChangedOutside(
            f"{path.name} was changed by something else since it was opened; save under another name, or open it again."
        )
    temporary = None
    try:
        mode = path.stat().st_mode & 0o777 if path.exists() else None
        handle, temporary = tempfile.mkstemp(
            prefix=f".{path.name[:40]}.", suffix=".new", dir=path.resolve().parent
        )
        with os.fdopen(handle, "wb") as stream:
            stream.write(raw)
            stream.flush()
            os.fsync(stream.fileno())
        if mode is None:
            mask = os.umask(0)
            os.umask(mask)
            mode = 0o666 & ~mask
        Path(temporary).chmod(mode)
        Path(temporary).replace(path.resolve())
    except OSError as error:
        if temporary:
            Path(temporary).unlink(missing_ok=True)
        raise CannotWrite(
            f"{path.name} cannot be written: {error.strerror or error}. Choose another place."
        ) from None
    return digest(raw)
