"""`jobsheet cabinet [JOB]`: what the cabinet holds by drawer, or what a job asks
of it and whether it is there.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say

if TYPE_CHECKING:
    from jobsheet.model.own_tools import Cabinet


@click.command("cabinet")
@click.argument("job", type=click.Path(), required=False)
@click.option("--json", "want_json", is_flag=True, help="as JSON, lengths in metres")
def command(job: str | None, want_json: bool) -> int:
    """The cabinet by drawer; with a JOB, what it asks for and whether that is there.

    The cabinet is cabinet.yaml in your own folder; without one, the invented cabinet of the demonstration
    workshop, which counts only for jobs that name that workshop. Exit code 1 when something is lacking.
    """
    if job is None:
        return _whole(want_json)
    return _asked(job, want_json)


def _whole(want_json: bool) -> int:
    from jobsheet.catalog.tools.places import in_order
    from jobsheet.storage.cabinet_file import cabinet_for, read_cabinet, shipped

    cabinet = cabinet_for("") or read_cabinet(shipped()[0])
    things = sorted(cabinet.things, key=lambda thing: (in_order(thing.place), thing.section, thing.row))
    if want_json:
        as_json(
            {
                "name": cabinet.name, "own": cabinet.own, "invented": cabinet.invented,
                "things": [
                    {
                        "section": thing.section, "what": thing.what, "place": thing.place, "line": thing.line,
                        "count": thing.count, "here": thing.here, "out": thing.out, "note": thing.note,
                    }
                    for thing in things
                ],
            }
        )  # fmt: skip
        return 0
    say(f"{cabinet.name or 'Your cabinet'}{' (invented)' if cabinet.invented else ''}")
    rows: list[tuple[str, ...]] = []
    for thing in things:
        beside = "; ".join(
            part
            for part in (
                f"not there now: {thing.away}" if not thing.here else "",
                _count(thing.count),
                thing.note,
            )
            if part
        )
        rows.append((thing.place, thing.what, beside))
    columns(rows, "  ")
    if not cabinet.own:
        say("You have no cabinet of your own yet: Machine, Cabinet… in the window begins one.")
    return 0


def _count(count: int) -> str:
    return f"{count} of them" if count > 1 else ""


def _asked(job: str, want_json: bool) -> int:
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.cabinet.cabinet_look import SILENT, look_through
    from jobsheet.storage.cabinet_file import cabinet_for

    plan = job_named(job)
    cabinet = cabinet_for(plan.workshop)
    if cabinet is None:
        if want_json:
            as_json({"cabinet": None, "asked": []})
        else:
            say("No cabinet concerns this job: begin your own with Machine, Cabinet… in the window.")
        return 0
    numbers = {operation.key: operation.number for _, operation in plan.operations()}
    looks = look_through(plan, cabinet)
    if want_json:
        as_json(
            {
                "cabinet": cabinet.name, "own": cabinet.own,
                "asked": [
                    {
                        "asked": look.need.words, "operations": [numbers[key] for key in look.need.operations],
                        "status": look.status, "place": look.thing.place if look.thing is not None else None,
                        "nearest": [thing.line for thing in look.near], "sentence": look.sentence,
                    }
                    for look in looks
                ],
            }
        )  # fmt: skip
    else:
        _text(cabinet, [look for look in looks if look.status != SILENT], numbers)
    return 1 if any(look.lacking for look in looks) else 0


def _text(cabinet: Cabinet, looks: list[Any], numbers: dict[str, int]) -> None:
    from jobsheet.reckoning.cabinet.cabinet_look import asked_words

    say(cabinet.name or "Your cabinet")
    rows: list[tuple[str, ...]] = []
    under: list[tuple[str, ...]] = []
    for look in looks:
        steps = ", ".join(str(numbers[key]) for key in look.need.operations)
        place = look.thing.place if look.thing is not None and not look.lacking else "–"
        rows.append(
            (
                look.status,
                place,
                asked_words(look.need),
                f"step{'s' if ',' in steps else ''} {steps}" if steps else "",
            )
        )
        under.append((look.sentence,) if look.sentence else ())
    columns(rows, "  ", under)
    lacking = sum(look.lacking for look in looks)
    words = (
        "Everything that is asked for is there."
        if not lacking
        else f"{lacking} of {len(looks)} things are lacking."
    )
    say("1 thing is lacking." if lacking == 1 else words)
