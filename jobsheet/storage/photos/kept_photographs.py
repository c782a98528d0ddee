"""The photographs of a job: taken in, found again and checked, and taken along
where the job is saved somewhere else.

A job names a photograph by its content, the SHA-256 of its bytes, and by nothing else: no path of a file can
make it read or print another one. The file lies in a folder `photographs` beside the job; of a job that has
no file yet in the person's own folder.
"""

from __future__ import annotations

from collections.abc import Mapping
from hashlib import sha256
from pathlib import Path

from msgspec import Struct

from jobsheet.errors import CannotWrite, CommandError
from jobsheet.model.job import Job, Photograph
from jobsheet.paths import no_file, own_folder
from jobsheet.storage.disk import write_file
from jobsheet.storage.photos.camera_words import without_camera_words
from jobsheet.storage.photos.photographs_read import MOST, is_content
from jobsheet.storage.photos.picture_head import Head, head_of

#: Beside the job, and among one's own.
FOLDER = "photographs"
#: A photograph has at most so many bytes, and its picture so many points: a telephone's have up to some 12 MB
#: and 50 million points (common practice, no source).
LARGEST, POINTS = 15_000_000, 64_000_000
#: All of a job together, so that sheets which carry them can still be read back (`pdf_jobs.LARGEST_PDF`).
TOGETHER = 80_000_000
#: Endings of their files, by kind.
ENDINGS = ("jpg", "png")


class Shot(Struct, frozen=True, kw_only=True):
    """A photograph of a job with its bytes; `problem` says in words why there are none."""

    photograph: Photograph
    raw: bytes = b""
    kind: str = ""
    width: int = 0
    height: int = 0
    problem: str = ""

    @property
    def name(self) -> str:
        """The name of its file."""
        return f"{self.photograph.content}.{self.kind or ENDINGS[0]}"


def places(path: Path | None) -> tuple[Path, ...]:
    """The folders in which the photographs of a job may lie, that in which new ones are kept first."""
    own = own_folder() / FOLDER
    return (path.parent / FOLDER, own) if path is not None else (own,)


# --- taken in ---


def taken_in(path: Path, job: Job, folders: tuple[Path, ...]) -> str:
    """Keep a picture in the first of the folders, under its content, which is returned; where
    and when it was taken is left out.

    Raises
    ------
    CommandError
        In one sentence: where it is no picture, is too large in bytes or points,
        or the job has enough of them.
    CannotWrite
        If it cannot be kept there.
    """
    raw = read_picture(path)
    head = checked(raw, path.name)
    raw = without_camera_words(raw)
    content = sha256(raw).hexdigest()
    there = {photograph.content for photograph in job.photographs}
    if content not in there:
        if len(there) >= MOST:
            raise CommandError(f"This job has {MOST} photographs already; take one out first.")
        shots = shots_of(job, folders)
        if sum(len(shot.raw) for shot in shots) + len(raw) > TOGETHER:
            raise CommandError(
                f"With {path.name} the photographs of this job would have more than {TOGETHER // 10**6} MB together;"
                " save it smaller, or take another one out."
            )
    _keep(folders[0], f"{content}.{head.kind}", raw)
    return content


def checked(raw: bytes, name: str) -> Head:
    """What a picture says of itself, within bounds; raises CommandError in one sentence."""
    if len(raw) > LARGEST:
        raise CommandError(_too_large(name, len(raw)))
    head = head_of(raw)
    if head is None:
        raise CommandError(
            f"{name} is no JPEG or PNG picture, whatever its name says; save the photograph as JPEG."
        )
    if head.width * head.height > POINTS:
        raise CommandError(
            f"{name} says that it has {_points(head.width)} × {_points(head.height)} points; a photograph here may have"
            f" {POINTS // 10**6} million: save it smaller."
        )
    return head


def _points(count: int) -> str:
    return f"{count:,}".replace(",", " ")


def _too_large(name: str, size: int) -> str:
    return (
        f"{name} has {size / 1e6:.0f} MB; a photograph here may have {LARGEST // 10**6} MB: save it smaller."
    )


def read_picture(path: Path) -> bytes:
    """The bytes of a file, never more than a photograph may have; raises CommandError in one sentence."""
    try:
        if other := no_file(path):
            raise CommandError(f"{path.name or path} is {other}, not a picture.")
        size = path.stat().st_size
        if size > LARGEST:
            raise CommandError(_too_large(path.name, size))
        with path.open("rb") as stream:
            return stream.read(LARGEST + 1)
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or error
        raise CommandError(f"{path.name} cannot be read: {why}.") from None


def _keep(folder: Path, name: str, raw: bytes) -> None:
    """Write it where no other can be: the name is its content. What is there with that content stays."""
    target = folder / name
    try:
        folder.mkdir(parents=True, exist_ok=True)
        if target.is_file() and target.stat().st_size == len(raw) and target.read_bytes() == raw:
            return
    except OSError as error:
        raise CannotWrite(f"{folder} cannot be used: {error.strerror or error}.") from None
    write_file(target, raw)


# --- found again ---


def shots_of(
    job: Job, folders: tuple[Path, ...], given: Mapping[str, bytes] | None = None
) -> tuple[Shot, ...]:
    """Every photograph of a job with its bytes, or with why there are none.

    Parameters
    ----------
    folders : tuple of Path
        Where they may lie, as `places` says
    given : mapping or None
        Bytes by content that lie elsewhere, such as inside printed sheets
    """
    return tuple(_shot(photograph, folders, given or {}) for photograph in job.photographs)


def _shot(photograph: Photograph, folders: tuple[Path, ...], given: Mapping[str, bytes]) -> Shot:
    if not is_content(photograph.content):
        return Shot(photograph=photograph, problem="is named by no content")
    found = [given[photograph.content]] if photograph.content in given else []
    problem = f"is not there any more: {FOLDER}/{photograph.content[:8]}{CUT}.jpg"
    for folder in folders:
        for ending in ENDINGS:
            path = folder / f"{photograph.content}.{ending}"
            if path.is_file():
                try:
                    found.append(read_picture(path))
                except CommandError as error:
                    problem = f"cannot be used: {error}"
    for raw in found:
        if sha256(raw).hexdigest() != photograph.content:
            problem = "is another picture now: its content is not that of its name"
            continue
        try:
            head = checked(raw, f"{photograph.content[:8]}{CUT}")
        except CommandError as error:
            problem = f"cannot be used: {error}"
            continue
        return Shot(photograph=photograph, raw=raw, kind=head.kind, width=head.width, height=head.height)
    return Shot(photograph=photograph, problem=problem)


#: A content is 64 signs long; eight tell it from any other in a folder.
CUT = "*"


def problem_words(job: Job, shot: Shot) -> str:
    """What is wrong with a photograph, as it is said everywhere: of which
    set-up, what it shows, what to do.
    """
    shows = f" (“{shot.photograph.shows}”)" if shot.photograph.shows else ""
    return f"The photograph of {owner_words(job, shot.photograph)}{shows} {shot.problem}. Put it back, or take it out of the job."


def owner_words(job: Job, photograph: Photograph) -> str:
    """Of what it is: `set-up 2`, `step 40`, or `the job`."""
    for set_up in job.set_ups:
        if set_up.key == photograph.about:
            return f"set-up {set_up.number}"
        for operation in set_up.operations:
            if operation.key == photograph.about:
                return f"step {operation.number}"
    return "the job"


# --- taken along ---


def taken_along(job: Job, old: tuple[Path, ...], new: tuple[Path, ...]) -> tuple[str, ...]:
    """Put the photographs of a job beside where it is saved now; a sentence for
    each that could not be taken along.

    What waited among one's own because the job had no file yet is moved; beside
    another job nothing is taken away.
    """
    left: list[str] = []
    for shot in shots_of(job, (*new, *old)):
        if shot.problem:
            left.append(problem_words(job, shot))
            continue
        try:
            _keep(new[0], shot.name, shot.raw)
        except CannotWrite as error:
            left.append(f"The photograph of {owner_words(job, shot.photograph)} does not come along: {error}")
            continue
        waited = own_folder() / FOLDER / shot.name
        if new[0] != waited.parent:
            waited.unlink(missing_ok=True)
    return tuple(left)


def take_out_of_sheets(given: Mapping[str, bytes]) -> None:
    """Keep what printed sheets carried among one's own, until their job is saved. Raises CannotWrite."""
    for content, raw in given.items():
        head = head_of(raw)
        if head is not None:
            _keep(own_folder() / FOLDER, f"{content}.{head.kind}", raw)
