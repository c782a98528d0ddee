"""`jobsheet stopwatch JOB NUMBER --length "80 mm" --seconds 42`: the feed as it really was."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say
from jobsheet.errors import JobsheetError

if TYPE_CHECKING:
    from jobsheet.model.job import Operation


@click.command("stopwatch")
@click.argument("job", type=click.Path())
@click.argument("number", type=int)
@click.option("--length", help='how far it went, such as "80 mm"')
@click.option("--turns", type=float, help="turns of the handle in that time")
@click.option("--seconds", type=float, required=True, help="time on the watch")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(
    job: str, number: int, length: str | None, turns: float | None, seconds: float, want_json: bool
) -> int:
    """From a time on the watch the real feed, feed per tooth, pace, power and
    share of the torque of a step.
    """
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.answers.stopwatch_answer import stopwatch
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.units.grammar import read

    plan = job_named(job)
    operation = next((operation for _, operation in plan.operations() if operation.number == number), None)
    if operation is None:
        there = ", ".join(str(operation.number) for _, operation in plan.operations())
        raise JobsheetError(f"There is no step {number} in this job; there are {there}.")
    reckoned = Reckoner(learns=True).reckon(plan)
    operation, setting = reckoned.job.find(operation.key)[1], reckoned.settings[operation.key]
    far = read(length, "length", plan.units) if length else None
    timed = stopwatch(operation, setting, seconds=seconds, length=far, turns=turns)
    if want_json:
        as_json(_data(timed))
    else:
        _text(operation, timed, plan.units)
    return 0 if timed.found.carried else 1


def _share(one: Any) -> float | None:
    limit = one.limit("spindle-torque")
    return limit.share if limit is not None else None


def _data(found: Any) -> dict[str, Any]:
    return {
        "feed": found.feed, found.each: found.chip, "pace": found.pace, "power": found.found.value("power"),
        "torque": found.found.value("torque"), "torque share": _share(found.found), "planned torque share": _share(found.planned),
        "limits": [{"name": limit.name, "share": limit.share, "verdict": limit.verdict} for limit in found.found.limits],
        "edits": dict(found.edits),
    }  # fmt: skip


def _text(operation: Operation, answer: Any, units: str) -> None:
    from jobsheet.operations.names import FIGURES, show

    say(f"{operation.number:>5}  as it was timed, and as it is planned")
    rows: list[tuple[str, ...]] = []
    for name, value in (
        ("table_feed", answer.feed), (answer.each, answer.chip), ("handle_pace", answer.pace),
        ("power", answer.found.value("power")), ("torque", answer.found.value("torque")),
    ):  # fmt: skip
        if value is not None:
            title = "Feed" if name == "table_feed" else FIGURES[name].title
            rows.append((title, show(name, value, units), answer.planned.shown(name)))
    share, planned = _share(answer.found), _share(answer.planned)
    if share is not None:
        rows.append(
            (
                "Share of the torque",
                f"{share * 100:.0f} %",
                f"{planned * 100:.0f} %" if planned is not None else "",
            )
        )
    columns(rows, "       ")
    if answer.found.problem:
        say(f"       {answer.found.problem}")
    hard = answer.found.hard
    if hard is not None:
        say(f"       {hard.verdict}: {hard.title.lower()}, {hard.shown}. {hard.sentence}".rstrip(". ") + ".")
