"""Files as they lie on the disk: known by their content, and never half written."""

from __future__ import annotations

import contextlib
import os
import time
from collections.abc import Callable
from pathlib import Path

from jobsheet.errors import CannotWrite, ChangedOutside, JobsheetError
from jobsheet.paths import no_file
from jobsheet.units.lazily import pattern

#: What a file is called while it is written: a dot, the name, eight letters, this.
NEW = ".new"
_OURS = pattern(r"^\..+\.[a-z0-9_]{8}\.new$")
#: Left over by a crash, if it has not changed for so long [s]; nothing is written for an hour (common sense).
OLD = 3600.0


def digest(text: str | bytes) -> str:
    """A short content hash, by which a changed file or card is known."""
    import hashlib  # late: a start that only reads does not need it

    raw = text.encode() if isinstance(text, str) else text
    return hashlib.sha256(raw).hexdigest()[:16]


def file_digest(path: Path) -> str | None:
    """The content hash of a file, or None where there is none."""
    try:
        _refuse_special(path)
        return digest(path.read_bytes())
    except FileNotFoundError:
        return None
    except OSError as error:
        raise CannotWrite(f"{path.name} cannot be read: {error.strerror or error}.") from None


def _refuse_special(path: Path) -> None:
    if other := no_file(path):
        raise CannotWrite(f"{path.name} is {other}; choose another name.")


def write_file(
    path: Path,
    content: str | bytes,
    expected: str | None = None,
    proof: Callable[[str], object] | None = None,
) -> str:
    """Write beside, flush to the disk, read it back, then put it in place: there is never
    half a file, nor one that is lost.

    Parameters
    ----------
    path : Path
        Where to
    content : str or bytes
        Text is written in UTF-8
    expected : str or None
        The digest of what should stand there now; None does not ask
    proof : callable or None
        Reads the text that was written as it will be read when it is opened;
        what it raises keeps the old file

    Returns
    -------
    digest : str
        Of what was written

    Raises
    ------
    ChangedOutside
        If another content stands there than was expected.
    CannotWrite
        If the disk refuses, what lies there is no file, or what was written cannot be
        read; what stood there still stands.
    """
    try:
        raw = content.encode() if isinstance(content, str) else content
        _refuse_special(path)
    except UnicodeEncodeError as error:
        sign = f"U+{ord(error.object[error.start]):04X}"
        raise CannotWrite(
            f"{path.name} cannot be written: a text in it has {sign}, which no file can hold; take it out."
        ) from None
    except OSError as error:
        raise _refused(path, error) from None
    if expected is not None and file_digest(path) not in (expected, None):
        raise ChangedOutside(
            f"{path.name} was changed by something else since it was opened; save under another name, or open it again."
        )
    temporary: Path | None = None
    try:
        mode = path.stat().st_mode & 0o777 if path.exists() else None
        folder = path.resolve().parent
        sweep(folder)
        temporary = _beside(folder, path.name, raw)
        if mode is None:
            mask = os.umask(0)
            os.umask(mask)
            mode = 0o666 & ~mask
        temporary.chmod(mode)
        _read_back(path, temporary, raw, proof)
        temporary.replace(path.resolve())
        flush_folder(folder)
    except OSError as error:
        if temporary:
            temporary.unlink(missing_ok=True)
        raise _refused(path, error) from None
    except CannotWrite:
        if temporary:
            temporary.unlink(missing_ok=True)
        raise
    return digest(raw)


def flush_folder(folder: Path) -> None:
    """Have the names of a folder on the disk too: after a power cut a file that was put
    in place could have its old content.

    Where a system cannot do that for a folder, it does so by itself, or nobody can.
    """
    with contextlib.suppress(OSError):
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def _refused(path: Path, error: OSError) -> CannotWrite:
    return CannotWrite(f"{path.name} cannot be written: {error.strerror or error}. Choose another place.")


def _beside(folder: Path, name: str, raw: bytes) -> Path:
    """A new file in that folder with the content, flushed to the disk."""
    import tempfile

    # Bytes, not letters: a system counts so, and a name may be full already.
    start = name.encode(errors="replace")[:40].decode(errors="ignore")
    handle, made = tempfile.mkstemp(prefix=f".{start}.", suffix=NEW, dir=folder)
    try:
        with os.fdopen(handle, "wb") as stream:
            stream.write(raw)
            stream.flush()
            os.fsync(stream.fileno())
    except OSError:
        Path(made).unlink(missing_ok=True)
        raise
    return Path(made)


def _read_back(path: Path, temporary: Path, raw: bytes, proof: Callable[[str], object] | None) -> None:
    """That what lies on the disk is what was written, and that it can be opened."""
    if temporary.read_bytes() != raw:
        raise CannotWrite(
            f"{path.name} cannot be written: the disk gives back something else. Choose another place."
        )
    if proof is None:
        return
    try:
        proof(raw.decode())
    except JobsheetError as error:
        why = " ".join(str(error).split())
        raise CannotWrite(
            f"{path.name} was not replaced, because it could not be opened again: {why}"
        ) from None


def sweep(folder: Path) -> None:
    """Take away what a crash left beside the files of a folder: only ours by
    their name, and only old ones.
    """
    now = time.time()
    try:
        with os.scandir(folder) as entries:
            left = [entry for entry in entries if entry.name.endswith(NEW) and _OURS.match(entry.name)]
        for one in left:
            if one.is_file(follow_symlinks=False) and now - one.stat().st_mtime > OLD:
                Path(one.path).unlink(missing_ok=True)
    except OSError:
        pass  # what cannot be swept stays: it does no harm
