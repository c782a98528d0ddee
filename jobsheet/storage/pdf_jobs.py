"""The job inside a PDF that was printed here: its attachment that says `format:`, taken out within bounds."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from msgspec import Struct

from jobsheet.errors import DocumentError, Problem
from jobsheet.paths import no_file

#: Our sheets are some hundred kilobytes; photographs may come (common sense, no source).
LARGEST_PDF = 100_000_000
#: A job is at most this long, as in a file of its own.
LARGEST_JOB = 5_000_000
#: A PDF of several jobs holds one attachment each.
MOST_FILES = 200
#: Levels of a name tree; ours has one.
DEEPEST = 8
_MARK = b"%PDF-"
_FORMAT = re.compile(rb"^\xef?\xbb?\xbf?\s*format\s*:", re.MULTILINE)


def is_pdf(path: Path) -> bool:
    """Whether a file begins as a PDF does; False where it cannot be looked at."""
    try:
        if no_file(path):
            return False
        with path.open("rb") as stream:
            return stream.read(len(_MARK)) == _MARK
    except OSError:
        return False


def job_text(path: Path) -> str:
    """The text of the only job inside a PDF.

    Raises
    ------
    DocumentError
        In a sentence: where it is no PDF of ours, is damaged or doctored, or holds more than one job.
    """
    return the_only(path, jobs_inside(path))[1]


def the_only(path: Path, found: tuple[tuple[str, str], ...]) -> tuple[str, str]:
    """Name and text of the one job that was found inside a PDF. Raises as `job_text`."""
    if not found:
        raise _refused(path, "there is no job inside this PDF: it was not printed here, or without its job")
    if len(found) > 1:
        names = ", ".join(name for name, _ in found)
        raise _refused(
            path,
            f"there are {len(found)} jobs inside this PDF ({names}): print one by itself, or open its file",
        )
    return found[0]


class Inside(Struct, frozen=True, kw_only=True):
    """What lies inside a PDF, each text with the name of its file: jobs, and cards and logs beside them."""

    jobs: tuple[tuple[str, str], ...] = ()
    beside: tuple[tuple[str, str], ...] = ()
    #: Photographs, bytes by content.
    photographs: dict[str, bytes] = {}


def inside(path: Path) -> Inside:
    """Every job inside a PDF and every text beside them, of one reading. Raises as `job_text`."""
    size = path.stat().st_size
    if size > LARGEST_PDF:
        raise _refused(path, f"{size / 1e6:.0f} MB is too large for sheets; is it another kind of file?")
    photographs: dict[str, bytes] = {}
    try:
        found = tuple(_attached(path, photographs))
    except DocumentError:
        raise
    except RecursionError:
        raise _refused(path, "it is built in a circle, so nothing is taken out of it") from None
    except Exception as error:  # noqa: BLE001  a damaged file may fail the library in any way
        said = str(error).splitlines()[0][:120] if str(error) else type(error).__name__
        raise _refused(path, f"this PDF is damaged ({said}): fetch it again from where it came") from None
    return Inside(
        jobs=tuple((name, text) for name, text, job in found if job),
        beside=tuple((name, text) for name, text, job in found if not job),
        photographs=photographs,
    )


def jobs_inside(path: Path) -> tuple[tuple[str, str], ...]:
    """Every job inside a PDF, with the name of its file. Raises as `job_text`."""
    return inside(path).jobs


def _attached(path: Path, photographs: dict[str, bytes]) -> Iterator[tuple[str, str, bool]]:
    """Name and text of each attachment that is one, and whether it is a job; what is a
    photograph by name and content is put aside.
    """
    import logging
    from hashlib import sha256  # late: a start only asks whether a file is a PDF

    from pypdf import PdfReader  # its own bounds keep a small file from growing without end

    from jobsheet.storage.photos.kept_photographs import ENDINGS, LARGEST

    photograph = re.compile(rf"[0-9a-f]{{64}}\.(?:{'|'.join(ENDINGS)})")
    logging.getLogger("pypdf").setLevel(logging.CRITICAL)  # what is damaged is said once, by us
    with path.open("rb") as stream:
        reader = PdfReader(stream, strict=False)
        if reader.is_encrypted:
            raise _refused(path, "this PDF is locked with a password: the job inside cannot be read")
        root: Any = reader.trailer["/Root"]
        names = root.get("/Names")
        files = names.get_object().get("/EmbeddedFiles") if names is not None else None
        if files is None:
            return
        for count, (name, spec) in enumerate(_leaves(path, files.get_object(), 0), 1):
            if count > MOST_FILES:
                raise _refused(path, f"it holds more than {MOST_FILES} files: it is no sheet of ours")
            raw = _content(spec)
            if photograph.fullmatch(name):
                if len(raw) <= LARGEST and sha256(raw).hexdigest() == name[:64]:
                    photographs[name[:64]] = raw
                continue
            job = _FORMAT.search(raw[:2000]) is not None and b"set-ups" in raw
            text = _text_of(path, raw, job)
            if text is not None:
                yield name, text, job


def _leaves(path: Path, node: Any, depth: int) -> Iterator[tuple[str, Any]]:
    """Names and what they stand for, of a tree of names."""
    if depth > DEEPEST:
        raise _refused(path, "it is nested deeper than any sheet of ours, so nothing is taken out of it")
    pairs = node.get("/Names") or ()
    for name, spec in zip(pairs[::2], pairs[1::2], strict=False):
        yield str(name.get_object()), spec.get_object()
    for kid in node.get("/Kids") or ():
        yield from _leaves(path, kid.get_object(), depth + 1)


def _content(spec: Any) -> bytes:
    """The bytes of an attachment; none where it has none."""
    embedded = spec.get("/EF", {}).get("/F") if hasattr(spec, "get") else None
    if embedded is None:
        return b""
    raw: bytes = embedded.get_object().get_data()
    return raw


def _text_of(path: Path, raw: bytes, job: bool) -> str | None:
    """An attachment as text; None for what somebody put in beside that is none,
    or is too long for a card or a log.
    """
    if len(raw) > LARGEST_JOB:
        if job:
            raise _refused(path, "the job inside is too large to be one")
        return None
    try:
        return raw.decode("utf-8-sig") if raw else None
    except UnicodeDecodeError:
        if job:
            raise _refused(
                path, "the job inside is not text in UTF-8: it was changed after printing"
            ) from None
        return None


def _refused(path: Path, sentence: str) -> DocumentError:
    return DocumentError(path.name, (Problem(1, "", sentence),))
