"""`jobsheet shelf find|show|compare|check|export|import|attach FOLDER`: the jobs of a
folder, found again by words and sizes.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from jobsheet.cli.output import as_json, columns, say
from jobsheet.errors import JobsheetError
from jobsheet.storage.plan_mark import plan_mark


@click.group("shelf")
def command() -> None:
    """The jobs of a folder, found again by part, words and sizes.

    The files are the truth; the index is made in your own folder, as often as
    needed, and can be deleted at any time.
    """


def _index(folder: str) -> Any:
    from jobsheet.shelf.shelf_index import Index

    index = Index(folder)
    index.refresh()
    return index


@command.command("find")
@click.argument("folder", type=click.Path())
@click.argument("words", nargs=-1)
@click.option(
    "--most", type=click.IntRange(1, 10_000), default=50, show_default=True, help="list no more than so many"
)
@click.option("--json", "want_json", is_flag=True, help="as JSON")
def find_command(folder: str, words: tuple[str, ...], most: int, want_json: bool) -> int:
    """Jobs in which all of it is: words of any field, sizes with or without what they are of.

    For example: drill 6.8 · M8 brass · slot 10 · HM-103 · trouble first. Exit code 1 where nothing is found.
    """
    import msgspec

    from jobsheet.shelf.shelf_questions import find

    answer = find(_index(folder), " ".join(words), most)
    if want_json:
        as_json(
            {
                "asked": answer.asked.said,
                "count": answer.count,
                "found": [msgspec.to_builtins(hit) for hit in answer.hits],
            }
        )
        return 0 if answer.hits else 1
    if not answer.hits:
        say(f"Nothing on this shelf has {answer.asked.said or 'a job'} in it.")
        return 1
    rows: list[tuple[str, ...]] = []
    under: list[tuple[str, ...]] = []
    for hit in answer.hits:
        made = f"made {hit.made}" if hit.made else "not made yet"
        times = f", {hit.times} times" if hit.times > 1 else ""
        rows.append(
            (
                hit.number or Path(hit.path).stem,
                hit.name,
                hit.revision,
                hit.machine,
                f"{made}{times}",
                ": ".join(word for word in (hit.how, hit.went) if word) or "never made",
            )
        )
        second = (
            f"the same plan is in {', '.join(hit.twins)} too: compare the two, keep one" if hit.twins else ""
        )
        under.append(tuple(line for line in (hit.where, hit.path, second) if line))
    columns(rows, "", under)
    if answer.count > len(answer.hits):
        say(f"and {answer.count - len(answer.hits)} more")
    return 0


@command.command("show")
@click.argument("folder", type=click.Path())
@click.argument("part")
def show_command(folder: str, part: str) -> int:
    """One part of the shelf: its plans, their revisions, and what happened at the machine."""
    from jobsheet.reckoning.run_words import days_told
    from jobsheet.storage.job_file import read_job
    from jobsheet.storage.kept.closed_plans import closed_plans
    from jobsheet.storage.photos.old_sheets import is_old_sheet
    from jobsheet.storage.records.run_log import read_runs

    index = _index(folder)
    rows = index.database.execute(
        "select path from jobs where number = ? collate nocase or path = ? order by path", (part, part)
    ).fetchall()
    if not rows:
        raise JobsheetError(
            f"There is no part {part} on this shelf; jobsheet shelf find looks by words and sizes."
        )
    for (path,) in rows:
        file = index.shelf / path
        if is_old_sheet(file):
            _show_old_sheets(file)
            continue
        job = read_job(file)
        say(f"{job.part.number}, {job.part.name}, drawing revision {job.part.revision or 'not said'}: {path}")
        say(
            f"  {job.machine}, {job.material}, {len(job.operations())} steps in {len(job.set_ups)} set-ups, planned {job.planned_on}"
        )
        for revision in reversed(job.revisions):
            say(f"  plan {plan_mark(revision.number)}, {revision.when}, {revision.who}: {revision.changed}")
        for plan in reversed(closed_plans(file)):
            say(f"  {plan.words()}, check {plan.code}: kept as {plan.path.parent.name}/{plan.path.name}")
        runs, problems = read_runs(file)
        for day, words in days_told(runs, job.units):
            say(f"  {day}: {words}")
        for problem in problems:
            say(f"  {problem}")
    return 0


def _show_old_sheets(file: Path) -> None:
    from jobsheet.storage.photos.old_sheets import FOLDER, SAID, read_old_sheets

    said = read_old_sheets(file)
    say(f"{said.number}, {said.name or 'no name'}: old sheets, no plan yet: {file.name}")
    for key, caption in SAID:
        if text := getattr(said, key):
            say(f"  {caption}: {text}")
    for sheet in said.sheets:
        say(f"  {sheet.shows or sheet.kind}: {FOLDER}/{sheet.name}")


@command.command("compare")
@click.argument("before", type=click.Path())
@click.argument("after", type=click.Path())
def compare_command(before: str, after: str) -> int:
    """What is different between two plans, in words, step by step. Exit code 1 where something is."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.edit.difference import changes

    lines = changes(job_named(before), job_named(after), most=None)
    for line in lines:
        say(line)
    if not lines:
        say("The two plans say the same.")
    return 1 if lines else 0


@command.command("check")
@click.argument("folder", type=click.Path())
def check_command(folder: str) -> int:
    """Read everything strictly: broken files with their line, second copies, records
    that do not count. Nothing is mended.

    Of an archive (.zip) that `export` made: whether every file in it is what its list of sums says.
    Exit code 1 where something is wrong.
    """
    from jobsheet.shelf.checking import checked

    if folder.lower().endswith(".zip"):
        return _check_archive(Path(folder))
    index, wrong, read = _index(folder), 0, 0
    for one in checked(index):
        if isinstance(one, int):
            read = one
        else:
            wrong += 1
            say(str(one))
    say(f"{read} job{'' if read == 1 else 's'} read, {wrong or 'nothing'} wrong.")
    return 1 if wrong else 0


def _check_archive(path: Path) -> int:
    from jobsheet.shelf.archive import sums_are_right

    wrong = sums_are_right(path)
    for name in wrong:
        say(f"{path.name}: {name} is not what its sum says.")
    say(f"{path.name}: {f'{len(wrong)} wrong' if wrong else 'every file is what its sum says'}.")
    return 1 if wrong else 0


@command.command("export")
@click.argument("folder", type=click.Path())
@click.option(
    "-o",
    "--output",
    type=click.Path(),
    required=True,
    help="the archive, a .zip; or the index as .csv or .json",
)
def export_command(folder: str, output: str) -> int:
    """The whole shelf as one archive with the sums of its files, or its index as a table."""
    import csv
    import io
    import json

    import msgspec

    from jobsheet.cli.output import refuse_to_overwrite
    from jobsheet.shelf.archive import export_shelf
    from jobsheet.shelf.shelf_questions import find
    from jobsheet.storage.disk import write_file

    index, target = _index(folder), Path(output)
    ending = target.suffix.lower()
    if ending == ".zip":
        refuse_to_overwrite(target, start=b"PK")
        count = export_shelf(index.shelf, target)
        say(f"{count} files are in {target.name}, with their sums.")
        return 0
    if ending not in (".csv", ".json"):
        raise JobsheetError(
            f"“{target.name}” ends in nothing that can be written: .zip is the shelf, .csv or .json its index."
        )
    hits = [msgspec.to_builtins(hit) for hit in find(index, "", 1_000_000).hits]
    for hit in hits:
        del hit["where"]
    if ending == ".json":
        refuse_to_overwrite(target, start=b"[")
        write_file(target, json.dumps(hits, ensure_ascii=False, indent=1) + "\n")
    else:
        refuse_to_overwrite(target, start=b"path,")
        text = io.StringIO()
        table = csv.DictWriter(text, list(hits[0]) if hits else ["path"], lineterminator="\n")
        table.writeheader()
        table.writerows({name: _cell(value) for name, value in hit.items()} for hit in hits)
        write_file(target, text.getvalue())
    say(f"{len(hits)} jobs are in {target.name}.")
    return 0


def _cell(value: object) -> Any:
    """A text that a spreadsheet would take for a formula gets a sign before it."""
    return f"'{value}" if isinstance(value, str) and value[:1] in ("=", "+", "-", "@", "\t") else value


@command.command("import")
@click.argument("folder", type=click.Path())
@click.argument("papers", nargs=-1, required=True, type=click.Path())
def import_command(folder: str, papers: tuple[str, ...]) -> int:
    """Put the jobs inside printed sheets (PDFs made here, or a folder of them) back on the
    shelf; nothing there is written over.

    Exit code 1 where one of them could not be taken.
    """
    from jobsheet.storage.disk import write_file
    from jobsheet.storage.exporting_files import free_file
    from jobsheet.storage.job_file import job_from_text
    from jobsheet.storage.pdf_jobs import inside

    index, failed = _index(folder), 0
    there = {content for (content,) in index.database.execute("select content from jobs")}
    for paper in _each(papers):
        try:
            jobs = inside(Path(paper)).jobs
            for name, text in jobs:
                failed += _put_back(
                    index.shelf, there, paper, name, text, job_from_text, free_file, write_file
                )
        except JobsheetError as error:
            failed += 1
            say(f"{Path(paper).name}: {error}")
    return 1 if failed else 0


def _each(papers: tuple[str, ...]) -> list[str]:
    """The files that were named, and every PDF of a folder that was."""
    found: list[str] = []
    for paper in papers:
        path = Path(paper)
        inside = sorted(path.glob("*.[pP][dD][fF]")) if path.is_dir() else [path]
        if not inside:
            say(f"{path.name}: there is no PDF in this folder.")
        found += map(str, inside)
    return found


def _put_back(
    shelf: Path, there: set[str], paper: str, name: str, text: str, read: Any, named: Any, write: Any
) -> int:
    from jobsheet.storage.disk import digest

    if digest(text) in there:
        say(f"{Path(paper).name}: {name} is on the shelf already, to the letter.")
        return 0
    job = read(text, name)
    target = named(shelf, job.part.number or Path(name).stem, ".yaml")
    write(target, text)
    there.add(digest(text))
    say(f"{Path(paper).name}: {job.part.number} is on the shelf as {target.name}.")
    return 0


@command.command("attach")
@click.argument("folder", type=click.Path())
@click.argument("number")
@click.argument("files", nargs=-1, required=True, type=click.Path())
@click.option("--name", default="", help="of the part")
@click.option("--words", default="", help="words to find it by")
@click.option("--drawer", default="", help="where the paper lies")
@click.option("--who", default="", help="who puts it here")
def attach_command(
    folder: str, number: str, files: tuple[str, ...], name: str, words: str, drawer: str, who: str
) -> int:
    """Put scans and photographs of old sheets (PDF, JPEG, PNG) on the shelf, as a part that has no plan yet.

    They are kept as they are, found by number, name and words, and never written over.
    """
    from jobsheet.clock import today
    from jobsheet.shelf.shelf_index import folder_there
    from jobsheet.storage.photos.old_sheets import OldSheets
    from jobsheet.storage.photos.old_sheets_kept import put_on_shelf

    said = OldSheets(number=number, name=name, words=words, drawer=drawer, who=who, when=today())
    target = put_on_shelf(folder_there(folder), said, [Path(file) for file in files])
    say(f"{number} is on the shelf as {target.name}, without a plan yet; files: {len(files)}.")
    return 0
