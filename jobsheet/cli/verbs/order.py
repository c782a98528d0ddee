"""`jobsheet order JOB`: which steps must stand before which and why, what is
only habit, what may stand either way.
"""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, say


@click.command("order")
@click.argument("job", type=click.Path())
@click.option("--json", "want_json", is_flag=True, help="as JSON")
def command(job: str, want_json: bool) -> int:
    """What must come before what in a job, whatever order it is written in.

    Each pair with what goes wrong the other way round. Every other order of the steps is right too, as long
    as each set-up stays together. Exit code 1 where the plan's own order breaks a pair.
    """
    from jobsheet.cli.named_job import job_named
    from jobsheet.lessons.needed_order import needed_order
    from jobsheet.reckoning.reckoner import Reckoner

    needed = needed_order(Reckoner(learns=True).reckon(job_named(job)))
    numbers = {operation.key: operation.number for _, operation in needed.job.operations()}
    placed = list(numbers)
    broken = [pair for pair in needed.pairs if placed.index(pair.first) > placed.index(pair.then)]
    if want_json:
        as_json(_data(needed, numbers, broken))
    else:
        _text(needed, numbers, broken)
    return 1 if broken else 0


def _data(needed: Any, numbers: dict[str, int], broken: list[Any]) -> dict[str, Any]:
    at = {one.key: one.number for one in needed.job.set_ups}

    def listed(pairs: Any) -> list[dict[str, Any]]:
        return [
            {
                "first": numbers[pair.first], "then": numbers[pair.then], "rule": pair.rule, "title": pair.title,
                "severity": pair.severity, "or else": pair.because, "source": pair.source,
            }
            for pair in pairs
        ]  # fmt: skip

    return {
        "orders that are right": needed.count(),
        "must": listed(needed.pairs),
        "habit": listed(needed.habits),
        "free": [
            {
                "set-up": one.number,
                "steps": [[numbers[first], numbers[then]] for first, then in needed.inside(one.key).free()],
            }
            for one in needed.job.set_ups
        ],
        "set-ups": [[at[first], at[then]] for first, then in needed.set_ups.needed()],
        "broken by the plan": listed(broken),
    }


def _text(needed: Any, numbers: dict[str, int], broken: list[Any]) -> None:
    job = needed.job
    count = needed.count()
    many = "so many orders are right that they are not counted"
    right = f"{count:,} {'order is' if count == 1 else 'orders are'} right" if count is not None else many
    say(
        f"{job.part.number} {job.part.name}: {len(numbers)} steps in {len(job.set_ups)} set-ups, {right}.".strip()
    )
    _pairs("Must come first, or else", needed.pairs, numbers)
    _pairs("Better, never a mistake", needed.habits, numbers)
    say("Either way round")
    for set_up in job.set_ups:
        free = needed.inside(set_up.key).free()
        with_: dict[int, list[str]] = {}
        for first, then in free:
            with_.setdefault(numbers[first], []).append(str(numbers[then]))
        said = "; ".join(f"{number} with {', '.join(others)}" for number, others in with_.items())
        say(f"    set-up {set_up.number}: {said or 'nothing'}")
    at = {one.key: str(one.number) for one in job.set_ups}
    loose = [f"{at[first]} with {at[then]}" for first, then in needed.set_ups.free()]
    say(f"    set-ups: {'; '.join(loose) or 'nothing'}")
    for pair in broken:
        say(f"this plan has {numbers[pair.then]} before {numbers[pair.first]}: {pair.because} ({pair.title})")


def _pairs(head: str, pairs: Any, numbers: dict[str, int]) -> None:
    """The pairs under their reasons: each reason once."""
    if not pairs:
        return
    say(head)
    reasons: dict[str, list[Any]] = {}
    for pair in pairs:
        reasons.setdefault(pair.rule, []).append(pair)
    for same in reasons.values():
        said = ", ".join(f"{numbers[one.first]} before {numbers[one.then]}" for one in same)
        say(f"    {said}")
        say(f"        {same[0].because} ({same[0].title}; {same[0].severity})")
