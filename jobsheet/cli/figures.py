"""`jobsheet figures JOB`: what every operation asks, and what gives out first."""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns


@click.command("figures")
@click.argument("job", type=click.Path())
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(job: str, want_json: bool) -> int:
    """Figures and limits of every operation of a job."""
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.storage.job_file import read_job

    plan = read_job(job)
    found = Reckoner().reckon(plan)
    if want_json:
        as_json(
            {
                "operations": [
                    _as_data(operation, found.operations[operation.key], found.settings[operation.key])
                    for _, operation in plan.operations()
                ]
            }
        )
    else:
        _as_text(plan, found)
    stopped = any(
        limit.verdict == "beyond" for outcome in found.operations.values() for limit in outcome.limits
    )
    unreckoned = any(outcome.problem for outcome in found.operations.values())
    return 1 if stopped or unreckoned else 0


def _figure(one: Any) -> dict[str, Any]:
    """A figure in SI; with the band in which the truth lies nine times in ten, where it has one."""
    data = {"value": one.value, "unit": one.unit, "shown": one.shown}
    if one.low is not None and one.high is not None:
        data["band"] = [one.low, one.high]
    return data


def _as_data(operation: Any, outcome: Any, setting: Any) -> dict[str, Any]:
    from jobsheet.operations.advice import advice_for

    figures = outcome.figures.items if outcome.figures else ()
    data: dict[str, Any] = {
        "key": operation.key,
        "number": operation.number,
        "kind": operation.kind,
        "title": outcome.title,
        "figures": {one.name: _figure(one) for one in figures},
        "limits": [
            {
                "name": one.name,
                "demand": one.demand,
                "capacity": one.capacity,
                "unit": one.unit,
                "share": one.share,
                "verdict": one.verdict,
            }
            for one in outcome.limits
        ],
    }
    advice = advice_for(operation.kind, operation.fields, setting, outcome.figures)
    if advice:
        data["suggestions"] = [
            {"field": one.name, "text": one.text, "why": one.why, "source": one.source} for one in advice
        ]
    if outcome.problem:
        data["problem"] = outcome.problem
    if outcome.figures and outcome.figures.caveats:
        data["caveats"] = list(outcome.figures.caveats)
    return data


def _as_text(plan: Any, found: Any) -> None:
    from jobsheet.operations.advice import advice_for
    from jobsheet.operations.names import FIGURES
    from jobsheet.operations.registry import kind

    for set_up in plan.set_ups:
        click.echo(f"Set-up {set_up.number}  {set_up.title}".rstrip())
        for operation in set_up.operations:
            outcome = found.operations[operation.key]
            click.echo(f"\n{operation.number:>5}  {outcome.title}")
            if outcome.problem:
                click.echo(f"       cannot be reckoned: {outcome.problem}")
                continue
            figures = outcome.figures.items if outcome.figures else ()
            columns([(FIGURES[one.name].title, one.shown) for one in figures], "       ")
            rows: list[tuple[str, ...]] = [
                (one.title, f"{one.share * 100:.0f} %", one.verdict, one.shown, one.sentence)
                for one in outcome.limits
            ]
            if rows:
                click.echo("       limits, the nearest to giving out first")
                columns(rows, "         ")
            advice = advice_for(
                operation.kind, operation.fields, found.settings[operation.key], outcome.figures
            )
            if advice:
                titles = {entry.name: entry.title for entry in kind(operation.kind).entries}
                click.echo("       suggested by the catalogue, to be typed in if you like")
                columns([(titles[one.name], one.text, one.why) for one in advice], "         ")
            for caveat in outcome.figures.caveats if outcome.figures else ():
                click.echo(f"       {caveat}")
        click.echo("")
    click.echo(
        "Calculated from the values entered; the cut may ask more. Start lighter and watch, listen and feel."
    )
