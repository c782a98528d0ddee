"""The job inside a PDF that was printed here: its attachment that says `format:`, taken out within bounds."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

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


def jobs_inside(path: Path) -> tuple[tuple[str, str], ...]:
    """Every job inside a PDF, with the name of its file. Raises as `job_text`."""
    return _inside(path, jobs=True)


def texts_beside(path: Path) -> tuple[tuple[str, str], ...]:
    """Every other text inside a PDF, with its name: cards and logs. Raises as `job_text`."""
    return _inside(path, jobs=False)


def _inside(path: Path, *, jobs: bool) -> tuple[tuple[str, str], ...]:
    """The jobs that are attached, or what is attached beside them."""
    size = path.stat().st_size
    if size > LARGEST_PDF:
        raise _refused(path, f"{size / 1e6:.0f} MB is too large for sheets; is it another kind of file?")
    try:
        return tuple(_attached(path, jobs))
    except DocumentError:
        raise
    except RecursionError:
        raise _refused(path, "it is built in a circle, so nothing is taken out of it") from None
    except Exception as error:  # noqa: BLE001  a damaged file may fail the library in any way
        said = str(error).splitlines()[0][:120] if str(error) else type(error).__name__
        raise _refused(path, f"this PDF is damaged ({said}): fetch it again from where it came") from None


def _attached(path: Path, jobs: bool) -> Iterator[tuple[str, str]]:
    import logging

    from pypdf import PdfReader  # its own bounds keep a small file from growing without end

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
            text = _text_in(path, spec, jobs)
            if text is not None:
                yield name, text


def _leaves(path: Path, node: Any, depth: int) -> Iterator[tuple[str, Any]]:
    """Names and what they stand for, of a tree of names."""
    if depth > DEEPEST:
        raise _refused(path, "it is nested deeper than any sheet of ours, so nothing is taken out of it")
    pairs = node.get("/Names") or ()
    for name, spec in zip(pairs[::2], pairs[1::2], strict=False):
        yield str(name.get_object()), spec.get_object()
    for kid in node.get("/Kids") or ():
        yield from _leaves(path, kid.get_object(), depth + 1)


def _text_in(path: Path, spec: Any, jobs: bool) -> str | None:
    """The text of an attachment, if it is a job, or if it is none, as is asked; None otherwise."""
    embedded = spec.get("/EF", {}).get("/F") if hasattr(spec, "get") else None
    if embedded is None:
        return None
    raw: bytes = embedded.get_object().get_data()
    if (_FORMAT.search(raw[:2000]) is not None and b"set-ups" in raw) is not jobs:
        return None
    if len(raw) > LARGEST_JOB:
        raise _refused(path, "the job inside is too large to be one")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError:
        if not jobs:  # somebody's picture, put in beside: no card or log is made of it
            return None
        raise _refused(path, "the job inside is not text in UTF-8: it was changed after printing") from None


def _refused(path: Path, sentence: str) -> DocumentError:
    return DocumentError(path.name, (Problem(1, "", sentence),))
