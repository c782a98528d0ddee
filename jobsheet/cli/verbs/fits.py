"""`jobsheet fits JOB --machine NAME`: the job on another card, what changes and what no longer fits."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say

if TYPE_CHECKING:
    from jobsheet.reckoning.answers.fits_answer import Fit, Side


@click.command("fits")
@click.argument("job", type=click.Path())
@click.option("--machine", help="the card to try, by its name; without it the job's own as it is now")
@click.option("--json", "want_json", is_flag=True, help="as JSON")
def command(job: str, machine: str | None, want_json: bool) -> int:
    """Reckon everything anew for another machine's card; exit code 1 where something is beyond."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.answers.fits_answer import fits

    plan = job_named(job)
    fit = fits(plan, machine or plan.machine)
    if want_json:
        as_json(_data(fit))
    else:
        _text(fit)
    return 0 if fit.fits else 1


def _side(side: Side | None) -> dict[str, Any] | None:
    if side is None:
        return None
    return {
        "spindle": side.spindle, "pace": side.pace, "torque share": side.torque_share, "governing": side.governing,
        "verdict": side.verdict, "beyond": [limit.name for limit in side.beyond],
        "not tried": [limit.name for limit in side.untried], "problem": side.problem,
    }  # fmt: skip


def _data(fit: Fit) -> dict[str, Any]:
    return {
        "planned for": fit.job.machine, "machine": fit.machine.name, "fits": fit.fits,
        "card changed since planned": fit.card_changed, "dials change": fit.dials_change,
        "steps": [
            {
                "number": step_fit.number, "title": step_fit.title, "changed": step_fit.changed, "retyped": step_fit.retyped,
                "before": _side(step_fit.before), "after": _side(step_fit.after),
                "no longer": [{"limit": limit.name, "share": limit.share, "sentence": limit.sentence} for limit in step_fit.no_longer],
            }
            for step_fit in fit.steps
        ],
    }  # fmt: skip


def _words(side: Side | None) -> str:
    if side is None:
        return "–"
    if side.problem:
        return str(side.problem)
    share = f", {side.torque_share * 100:.0f} % torque" if side.torque_share is not None else ""
    parts = ", ".join(part for part in (side.spindle, side.pace) if part)
    verdict = f", {side.verdict} ({side.governing.lower()})" if side.governing else ""
    return f"{parts}{share}{verdict}" or "nothing set"


def _text(fit: Fit) -> None:
    if fit.card_changed:
        say(f"The card of {fit.job.machine} was changed since this job was planned.")
    say(f"{fit.job.part.number} {fit.job.part.name} on {fit.machine.title}".strip())
    changed = [step_fit for step_fit in fit.steps if step_fit.changed]
    rows: list[tuple[str, ...]] = [
        (f"{step_fit.number:>5}", step_fit.title, _words(step_fit.before), "→", _words(step_fit.after))
        for step_fit in changed
    ]
    columns(rows)
    if not changed:
        say("       no step changes")
    for step_fit in fit.steps:
        if step_fit.retyped:
            say(
                f"       step {step_fit.number}: its speed is none of this machine's; {step_fit.retyped} is nearest"
            )
        if step_fit.after.problem:
            say(f"cannot be calculated  step {step_fit.number}: {step_fit.after.problem}")
        for limit in step_fit.after.beyond:
            new = "" if limit in step_fit.no_longer else " (as before)"
            say(
                f"beyond  step {step_fit.number}: {limit.title.lower()}, {limit.shown}. {limit.sentence}".rstrip(
                    ". "
                )
                + f".{new}"
            )
    for step_fit in fit.steps:
        for limit in step_fit.after.untried:
            say(f"{limit.title.lower()}, step {step_fit.number}: {limit.sentence}")
    if fit.dials_change:
        say(f"All dial readings change: jobsheet dials JOB --machine {fit.machine.name}")
    say("Fits." if fit.fits else "Does not fit as it stands.")
