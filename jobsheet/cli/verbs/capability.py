"""`jobsheet capability MACHINE [MACHINE2]`: what a machine will carry, by its card
and its test cuts; two side by side.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say

if TYPE_CHECKING:
    from jobsheet.reckoning.answers.capability_rows import Capability, Row


@click.command("capability")
@click.argument("machine")
@click.argument("other", required=False)
@click.option("--material", "materials", multiple=True, help="a metal; may be said again (S235 without it)")
@click.option(
    "--job", type=click.Path(), help="a job: its minutes on each machine, and what does not go there"
)
@click.option("--units", type=click.Choice(["mm", "in"]), default="mm", show_default=True)
@click.option("-o", "--output", type=click.Path(), help="the card, as a PDF")
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option("--json", "want_json", is_flag=True, help="as JSON, lengths in metres, times in seconds")
def command(
    machine: str, other: str | None, materials: tuple[str, ...], job: str | None, units: str, output: str | None,
    paper: str, want_json: bool,
) -> int:  # fmt: skip
    """The deepest face, slot and side cut, the largest drill and tap, with verdict, band and what stops more.

    Where nothing was tried the band is from the machine card. Exit code 1 where
    the job does not fit a machine.
    """
    from jobsheet.cli.named_job import job_named
    from jobsheet.errors import CommandError
    from jobsheet.reckoning.answers.capability_kept import capability
    from jobsheet.storage.card_files import find_card

    if other == machine:
        raise CommandError(f"{machine} beside itself says nothing; name another machine, or one alone.")
    names = [machine, *([other] if other else [])]
    plan = job_named(job) if job else None
    cards = [find_card(name) for name in names]
    metals = tuple(dict.fromkeys(materials)) or ((plan.material,) if plan is not None else ("S235",))
    found = capability(cards, metals, units=units, job=plan)
    if want_json:
        as_json(_data(found))
    else:
        _text(found)
    if output:
        _pdf(found, Path(output), paper, (job,) if job else (), quiet=want_json)
    return 0 if all(on_machine.fits for on_machine in found.on) else 1


def _pdf(capability: Capability, target: Path, paper: str, jobs: tuple[str, ...], *, quiet: bool) -> None:
    from jobsheet.cli.output import refuse_to_overwrite
    from jobsheet.clock import today
    from jobsheet.report.capability_card import capability_card
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.disk import write_file

    refuse_to_overwrite(target, jobs)
    day = today()
    write_file(target, make_pdf((capability_card(capability, date=day, name=target.stem),), paper))
    if not quiet:
        say(f"Capability card for {'A4' if paper == 'a4' else 'Letter'} paper: {target}")


def _row(row: Row) -> dict[str, Any]:
    return {
        "what": row.what, "cutter": row.cutter, "plan": row.plan, "plan size": row.plan_size, "verdict": row.verdict,
        "band": [row.low, row.middle, row.high], "learned": row.proved, "stops": row.stops, "words": row.words,
        "cuts": row.shown.cuts, "newest": row.shown.newest, "note": row.note, "spindle speed": row.speed, "torque": row.torque,
    }  # fmt: skip


def _data(capability: Capability) -> dict[str, Any]:
    return {
        "machines": [machine.name for machine in capability.machines],
        "cards": [
            {
                "machine": card.machine.name, "material": card.material, "held": card.held,
                "trials": card.proof.trials if card.proof is not None else 0, "rows": [_row(row) for row in card.rows],
                "next": list(card.next),
            }
            for cards in capability.materials
            for card in cards
        ],
        "job": [
            {
                "machine": on_machine.machine.name, "whole": on_machine.minutes.whole, "in the cut": on_machine.minutes.cut, "fits": on_machine.fits,
                "beyond": [{"step": number, "what": words} for number, words in on_machine.beyond],
            }
            for on_machine in capability.on
        ],
    }  # fmt: skip


def _verdict(row: Row) -> str:
    return str(row.verdict)


def _source(row: Row) -> str:
    """What the band rests on."""
    if row.shown.cuts:
        return str(row.shown.words())
    return "never tried; from other cuts" if row.proved else "never tried; from the card"


def _text(capability: Any) -> None:
    for cards in capability.materials:
        say(f"{cards[0].title}, by band: 5 %, half and 95 % of what it may carry")
        for index, first in enumerate(cards[0].rows):
            say(f"  {first.what.partition(', ')[0]}, {first.cutter}")
            rows: list[tuple[str, ...]] = []
            under: list[tuple[str, ...]] = []
            for card in cards:
                row = card.rows[index]
                band = f"{row.low}, {row.middle}, {row.high}" if row.middle != "–" else "–"
                source = f" ({_source(row)})" if row.shown.ratio or row.shown.cuts else ""
                rows.append((card.machine.title, row.plan or "–", _verdict(row), band + source))
                way = row.what.partition(", ")[2]
                notes = [", ".join(part for part in (way, row.note) if part)] if way or row.note else []
                under.append((*notes, *([f"what stops more: {row.stops}"] if row.stops else [])))
            columns(rows, "    ", under)
        for card in cards:
            for words in card.next:
                say(f"  Next on {card.machine.title}. {words}")
    for one in capability.on:
        say(
            f"{capability.job.part.number} on {one.machine.title}: {one.minutes.whole / 60:.0f} min,"
            f" {one.minutes.cut / 60:.1f} of them in the cut; {'nothing is beyond' if one.fits else 'does not fit'}"
        )
        for number, words in one.beyond:
            say(f"  beyond  step {number}: {words}")
    words = {row.words for cards in capability.materials for card in cards for row in card.rows}
    for text in sorted(words):
        say(f"{text[:1].upper()}{text[1:]}; watch, listen and feel.")
