"""`jobsheet lesson JOB`: the order of work as an exercise on paper, with its key;
`jobsheet lesson mark JOB`: an answer marked.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, refuse_to_overwrite, say

if TYPE_CHECKING:
    from jobsheet.reckoning.reckoner import Reckoned

KINDS = ("order", "missing", "wrong", "cutter", "figures", "plan")
#: So many sheets a class has at most.
MOST = 200


class Lesson(click.Group):
    """A job's name stands where a verb would: without `mark` an exercise is made."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """`mark`, or else a job to make an exercise of."""
        return super().resolve_command(ctx, args if args[0] in self.commands else ["make", *args])


@click.group("lesson", cls=Lesson, invoke_without_command=True, no_args_is_help=True)
def command() -> None:
    """The order of work as an exercise, and answers marked.

    `jobsheet lesson JOB` writes a worksheet and a key as PDF; the same seed and sheet
    number give the same exercise, whenever it is made. `jobsheet lesson mark JOB` marks an
    answer. Nothing about a trainee is kept.
    """


@command.command("make", hidden=True)
@click.argument("job", type=click.Path())
@click.option("--kind", type=click.Choice(KINDS), default="order", show_default=True)
@click.option(
    "--level",
    type=click.IntRange(1, 4),
    default=1,
    show_default=True,
    help="1 one set-up, 2 several, 3 the whole job; a plan of one's own (--kind plan) has one level",
)
@click.option(
    "--seed",
    type=click.IntRange(0, 10**9),
    required=True,
    help="the number of the class; the key has it, the worksheet has not",
)
@click.option(
    "--sheet",
    type=click.IntRange(1, MOST),
    default=1,
    show_default=True,
    help="the number of the sheet in the class",
)
@click.option(
    "--class",
    "size",
    type=click.IntRange(1, MOST),
    help="so many sheets, each another exercise, and all their keys",
)
@click.option(
    "--set-up",
    "set_ups",
    multiple=True,
    type=click.IntRange(1),
    help="an order of these set-ups alone; may be said again. Else the seed chooses",
)
@click.option("-o", "--output", type=click.Path(file_okay=False), default=".", help="the folder to write to")
@click.option("--paper", type=click.Choice(["a4", "letter"]), help="else what the workshop always prints on")
def make_command(
    job: str,
    kind: str,
    level: int,
    seed: int,
    sheet: int,
    size: int | None,
    set_ups: tuple[int, ...],
    output: str,
    paper: str | None,
) -> int:
    """Write worksheets and keys of an exercise, two PDF files."""
    _only_an_order(kind, set_ups)
    from jobsheet.report.lesson.lesson_documents import lesson_documents
    from jobsheet.sheet.pages import fits_on
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.disk import write_file
    from jobsheet.storage.exporting_files import file_name
    from jobsheet.storage.shop_file import workshop

    paper = paper or workshop().paper
    reckoned = _reckoned(job)
    machine = find_card(reckoned.job.machine).title
    sheets = range(1, size + 1) if size else (sheet,)
    made = []
    for other in sheets:
        if size and sys.stderr.isatty():
            say(f"sheet {other} of {size}", err=True)
        made.append(lesson_documents(kind, reckoned, level, seed, other, fits_on(paper), machine, set_ups))
    which = f"class of {size}" if size else f"sheet {sheet}"
    stem = reckoned.job.part.number or Path(job).stem
    folder = Path(output)
    folder.mkdir(parents=True, exist_ok=True)
    for at, name in enumerate(("worksheet", "key")):
        target = folder / file_name(f"{stem} {kind} {which} {name}", ".pdf")
        refuse_to_overwrite(target, (job,))
        documents = tuple(pair[at] for pair in made)
        write_file(target, make_pdf(documents, paper))
        count = sum(len(document.sheets) for document in documents)
        say(f"{count} page{'' if count == 1 else 's'}: {target}")
    return 0


def _only_an_order(asked: str, set_ups: tuple[int, ...]) -> None:
    if set_ups and asked != KINDS[0]:
        raise click.UsageError("--set-up goes with --kind order.")


def _reckoned(job: str) -> Reckoned:
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.reckoner import Reckoner

    return Reckoner(learns=True).reckon(job_named(job))


@command.command("mark")
@click.argument("job", type=click.Path())
@click.option("--kind", type=click.Choice(KINDS), default="order", show_default=True)
@click.option("--level", type=click.IntRange(1, 4), default=1, show_default=True)
@click.option("--seed", type=click.IntRange(0, 10**9), required=True)
@click.option("--sheet", type=click.IntRange(1, MOST), default=1, show_default=True)
@click.option(
    "--answer",
    default="",
    help="the letters in their order; where set-ups are ordered too, one word for each: Pcab Qde; what is wrong or missing by its row: 7; tools by question and letter: 1=b 2=a; of a plan of one's own its file",
)
@click.option(
    "--figures",
    default="",
    help="the figures, each with the number of its question: 1=398 2=320, on a dial 5=2+191",
)
@click.option(
    "--set-up",
    "set_ups",
    multiple=True,
    type=click.IntRange(1),
    help="an order of these set-ups alone; may be said again. Else the seed chooses",
)
@click.option(
    "-o",
    "--output",
    type=click.Path(),
    help="the result as a page for the learner, a PDF; of an order with the work where it goes wrong",
)
@click.option("--json", "want_json", is_flag=True, help="as JSON")
def mark_command(
    job: str,
    kind: str,
    level: int,
    seed: int,
    sheet: int,
    answer: str,
    figures: str,
    set_ups: tuple[int, ...],
    output: str | None,
    want_json: bool,
) -> int:
    """Mark an answer: moves, the rules that it breaks and why, and apart from
    that whether the part would be good.

    Exit code 1 where it is not right.
    """
    _only_an_order(kind, set_ups)
    from jobsheet.lessons.marked_sheet import marked_plan, marked_sheet

    if kind == "plan":
        from jobsheet.cli.named_job import job_named

        if not answer:
            raise click.UsageError(
                "The answer to --kind plan is the learner's own job file: --answer THEIRS.yaml."
            )
        result = marked_plan(job_named(job), job_named(answer))
        if want_json:
            as_json(result.data)
        else:
            for line in result.lines:
                say(line)
        return 0 if result.right else 1
    reckoned = _reckoned(job)
    result = marked_sheet(reckoned, kind, level, seed, sheet, answer, figures, set_ups)
    if output:
        _result_page(reckoned, kind, level, seed, sheet, answer, set_ups, result, Path(output))
    if want_json:
        as_json(result.data)
    else:
        for line in result.lines:
            say(line)
    return 0 if result.right else 1


def _result_page(
    reckoned: Reckoned, kind: str, level: int, seed: int, sheet: int, answer: str, set_ups: tuple[int, ...], found: Any, target: Path
) -> None:  # fmt: skip
    from jobsheet.lessons.order_exercise import answer_read, order_exercise
    from jobsheet.lessons.slips import step_words
    from jobsheet.report.lesson.exercise_page import Head
    from jobsheet.report.lesson.result_page import result_document
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.disk import write_file
    from jobsheet.storage.shop_file import workshop

    refuse_to_overwrite(target)
    part = reckoned.job.part
    head = Head(job=reckoned.job, exercise=f"{part.number or part.name or 'The part'}, {kind}", sheet=sheet, machine=find_card(reckoned.job.machine).title)  # fmt: skip
    if kind == KINDS[0] and answer.strip():
        exercise = order_exercise(reckoned, level, seed, sheet, set_ups)
        document = result_document(
            head, found, exercise.asked.needed, answer_read(exercise, answer), step_words(reckoned)
        )
    else:
        document = result_document(head, found)
    write_file(target, make_pdf((document,), workshop().paper))
