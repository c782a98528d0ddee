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
    found = fits(plan, machine or plan.machine)
    if want_json:
        as_json(_data(found))
    else:
        _text(found)
    return 0 if found.fits else 1


def _side(one: Side | None) -> dict[str, Any] | None:
    if one is None:
        return None
    return {
        "spindle": one.spindle, "pace": one.pace, "torque share": one.torque_share, "governing": one.governing,
        "verdict": one.verdict, "beyond": [limit.name for limit in one.beyond],
        "not tried": [limit.name for limit in one.untried], "problem": one.problem,
    }  # fmt: skip


def _data(found: Fit) -> dict[str, Any]:
    return {
        "planned for": found.job.machine, "machine": found.machine.name, "fits": found.fits,
        "card changed since planned": found.card_changed, "dials change": found.dials_change,
        "steps": [
            {
                "number": one.number, "title": one.title, "changed": one.changed, "retyped": one.retyped,
                "before": _side(one.before), "after": _side(one.after),
                "no longer": [{"limit": limit.name, "share": limit.share, "sentence": limit.sentence} for limit in one.no_longer],
            }
            for one in found.steps
        ],
    }  # fmt: skip


def _words(one: Side | None) -> str:
    if one is None:
        return "–"
    if one.problem:
        return str(one.problem)
    share = f", {one.torque_share * 100:.0f} % torque" if one.torque_share is not None else ""
    parts = ", ".join(part for part in (one.spindle, one.pace) if part)
    verdict = f", {one.verdict} ({one.governing.lower()})" if one.governing else ""
    return f"{parts}{share}{verdict}" or "nothing set"


def _text(fit: Fit) -> None:
    if fit.card_changed:
        say(f"The card of {fit.job.machine} was changed since this job was planned.")
    say(f"{fit.job.part.number} {fit.job.part.name} on {fit.machine.title}".strip())
    changed = [one for one in fit.steps if one.changed]
    rows: list[tuple[str, ...]] = [
        (f"{one.number:>5}", one.title, _words(one.before), "→", _words(one.after)) for one in changed
    ]
    columns(rows)
    if not changed:
        say("       no step changes")
    for one in fit.steps:
        if one.retyped:
            say(f"       step {one.number}: its speed is none of this machine's; {one.retyped} is nearest")
        if one.after.problem:
            say(f"cannot be calculated  step {one.number}: {one.after.problem}")
        for limit in one.after.beyond:
            new = "" if limit in one.no_longer else " (as before)"
            say(
                f"beyond  step {one.number}: {limit.title.lower()}, {limit.shown}. {limit.sentence}".rstrip(
                    ". "
                )
                + f".{new}"
            )
    for one in fit.steps:
        for limit in one.after.untried:
            say(f"{limit.title.lower()}, step {one.number}: {limit.sentence}")
    if fit.dials_change:
        say(f"All dial readings change: jobsheet dials JOB --machine {fit.machine.name}")
    say("Fits." if fit.fits else "Does not fit as it stands.")
