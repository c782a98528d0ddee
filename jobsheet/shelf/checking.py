"""Reading a whole shelf strictly: what is broken, with its line; what is there twice; nothing is mended."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.model.job import Job
from jobsheet.shelf.shelf_index import Index
from jobsheet.storage.job_file import read_job
from jobsheet.storage.kept.closed_plans import closed_plans, is_whole
from jobsheet.storage.photos.kept_photographs import places, problem_words, shots_of
from jobsheet.storage.photos.old_sheets import is_old_sheet, read_old_sheets, sheet_bytes
from jobsheet.storage.records.run_log import path_beside, read_runs

#: How services that copy files between computers call a second copy, and what a slip of
#: the mouse does (common knowledge).
_COPIES = ("conflict", "conflicted copy", "copy", "(1)", "(2)")


class Wrong(Struct, frozen=True, kw_only=True):
    """Something about one file of the shelf, in a sentence, with its line where there is one."""

    path: str
    sentence: str
    line: int | None = None

    def __str__(self) -> str:
        """`lever.yaml, line 12: unknown field`."""
        return f"{self.path}{f', line {self.line}' if self.line else ''}: {self.sentence}"


def checked(index: Index) -> Iterator[Wrong | int]:
    """Everything that is wrong, as it is found; in between how many files were
    read, so that somebody may be told.
    """
    rows = index.database.execute("select path, number, content from jobs order by path").fetchall()
    by_content: dict[str, list[str]] = {}
    by_number: dict[str, list[str]] = {}
    for count, (path, number, content) in enumerate(rows, 1):
        yield from _of_file(index.shelf, path)
        by_content.setdefault(content, []).append(path)
        if number:
            by_number.setdefault(number, []).append(path)
        yield count
    for paths in by_content.values():
        if len(paths) > 1:
            yield Wrong(path=paths[0], sentence=f"the very same file is there again: {', '.join(paths[1:])}")
    same = {path for paths in by_content.values() if len(paths) > 1 for path in paths}
    yield from _second_files(index, by_number, same)
    names: dict[str, str] = {}
    for path, _, _ in rows:
        other = names.setdefault(path.casefold(), path)
        if other != path:
            yield Wrong(path=path, sentence=f"on some computers this is the same name as {other}")


def _second_files(index: Index, by_number: dict[str, list[str]], same: set[str]) -> Iterator[Wrong]:
    """Second files of one plan that are not the very same: by what they say where they lie
    in one folder, else by their names.
    """
    words = "this looks like a second copy of {number} that a service made: compare it with {other}, keep one"
    told: set[str] = set()
    rows = index.database.execute(
        "select id, path, number from jobs where began != '' order by length(path), path"
    )
    for at, path, number in rows.fetchall():
        for other in index.twins(at):
            if path not in told and other not in told and not {path, other} <= same:
                told.add(other)
                yield Wrong(path=other, sentence=words.format(number=number, other=path))
    for number, paths in by_number.items():
        left = [path for path in paths if path not in same | told]
        copies = [path for path in left if any(word in Path(path).stem.casefold() for word in _COPIES)]
        others = [path for path in left if path not in copies]
        if copies and others:
            yield Wrong(path=copies[0], sentence=words.format(number=number, other=others[0]))


def _of_file(shelf: Path, path: str) -> Iterator[Wrong]:
    file = shelf / path
    if is_old_sheet(path):
        yield from _of_old_sheets(file, path)
        return
    try:
        yield from _beside(file, path, read_job(file))
    except DocumentError as error:
        for problem in error.problems[:3]:
            where = f"{problem.path}: " if problem.path else ""
            yield Wrong(path=path, line=problem.line, sentence=f"{where}{problem.sentence}")
        if len(error.problems) > 3:
            yield Wrong(path=path, sentence=f"and {len(error.problems) - 3} more")
    except JobsheetError as error:
        yield Wrong(path=path, sentence=str(error))
    try:
        for problem in read_runs(file)[1]:
            yield Wrong(
                path=str(Path(path).with_name(path_beside(file).name)),
                line=problem.line,
                sentence=problem.sentence,
            )
    except JobsheetError as error:
        yield Wrong(path=path, sentence=str(error))


def _beside(file: Path, path: str, job: Job) -> Iterator[Wrong]:
    """What lies beside a job: plans that left the desk still say what their codes say,
    photographs are what their names say.
    """
    for plan in closed_plans(file):
        name = f"{plan.path.parent.name}/{plan.path.name}"
        try:
            whole = is_whole(plan)
        except OSError as error:
            yield Wrong(path=path, sentence=f"{name} cannot be read: {error.strerror or error}")
            continue
        if not whole:
            said = f"{name} was changed since it left the desk: it is not the plan of code {plan.code}"
            yield Wrong(path=path, sentence=said)
    for shot in shots_of(job, places(file)) if job.photographs else ():
        if shot.problem:
            yield Wrong(path=path, sentence=problem_words(job, shot))


def _of_old_sheets(file: Path, path: str) -> Iterator[Wrong]:
    """What its record says, and whether each sheet still is what it was."""
    try:
        said = read_old_sheets(file)
    except DocumentError as error:
        for problem in error.problems[:3]:
            yield Wrong(path=path, line=problem.line, sentence=f"{problem.path}: {problem.sentence}")
        return
    for sheet in said.sheets:
        try:
            sheet_bytes(file, sheet)
        except JobsheetError as error:
            yield Wrong(path=path, sentence=str(error))
