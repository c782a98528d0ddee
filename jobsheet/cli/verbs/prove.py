"""`jobsheet prove plan|enter|show|strike|give-back|keep|changed|merge MACHINE`: test cuts,
from the ladder to what they taught.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say
from jobsheet.cli.proof_lines import (
    asked_words,
    known,
    odd,
    percent,
    show_capacity,
    show_log,
    show_needs,
    show_odd,
)
from jobsheet.cli.record_verbs import RECORD_VERBS
from jobsheet.errors import JobsheetError

if TYPE_CHECKING:
    from jobsheet.model.trials import Trial
    from jobsheet.reckoning.ladder.rung import Ladder, Rung


@click.group("prove")
def command() -> None:
    """Test cuts of a machine: plan a ladder, enter what happened, see what was learned.

    The log is proof/MACHINE.txt in your own folder: text that only grows. The invented machines of the
    demonstration have an invented log, which counts until you have a card of that name.
    """


def _cut(function: Any) -> Any:
    """The options that say which cut is meant, the same for plan and enter."""
    for option in reversed(
        (
            click.argument("machine"),
            click.option("--cutter", required=True, help='as a job has it, such as "end mill 12 mm, 4 teeth, 30 mm out"'),
            click.option("--material", required=True, help="by its trade or standard name"),
            click.option("--kind", required=True, help="face, side, slot, drill or tap"),
            click.option("--grow", default="", help="depth or width of a milling cut; else its depth"),
            click.option("--set", "typed", multiple=True, metavar="FIELD=TEXT", help='a field of the cut, such as width="6 mm"'),
            click.option("--units", type=click.Choice(["mm", "in"]), default="mm", show_default=True),
            click.option("--fluid", default="brushed", show_default=True, help="as a job's header has it"),
            click.option("--holding", default="", help="a vice of the card; else its first"),
        )
    ):  # fmt: skip
        function = option(function)
    return function


@command.command("plan")
@_cut
@click.option(
    "--chance", type=float, help="with which a rung may end badly; else the workshop's, usually 0.10"
)
@click.option(
    "--finer",
    is_flag=True,
    help="after a ladder has ended: a second one in smaller steps, which narrows what is known",
)
@click.option("-o", "--output", type=click.Path(), help="the proving sheet, as a PDF")
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option("--operator", default="", help="initials of who has read the stop rule")
@click.option("--second", default="", help="initials of the second person present")
@click.option("--in-charge", default="", help="initials of the person in charge")
@click.option("--trainee", is_flag=True, help="a learner makes the test")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def plan_command(output: str | None, paper: str, want_json: bool, **options: Any) -> int:
    """A ladder of growing test cuts, and its sheet. Exit code 1 where no ladder is made, with the reason."""
    ladder = _ladder(options)
    if want_json:
        as_json(_data(ladder))
    else:
        _text(ladder)
    if output:
        _sheet(ladder, Path(output), paper, options, quiet=want_json)
    return 1 if ladder.refused else 0


def _ladder(options: dict[str, Any]) -> Any:
    """The ladder that the options ask for."""
    from jobsheet.reckoning.ladder.ladders import plan
    from jobsheet.storage.shop_file import workshop

    chance = options.get("chance")
    if chance is None:
        chance = workshop().proof_chance
    if not 0.005 <= chance <= 0.5:
        raise JobsheetError("The chance of a rung ending badly must be from 0.005 to 0.5; 0.10 is usual.")
    return plan(
        options["machine"], cutter=options["cutter"], material=options["material"], kind=options["kind"],
        units=options["units"], grow=options["grow"], texts=_typed(options["typed"]), fluid=options["fluid"],
        holding=options["holding"], chance=chance, finer=options.get("finer", False),
    )  # fmt: skip


def _typed(pairs: tuple[str, ...]) -> dict[str, str]:
    found = {}
    for pair in pairs:
        name, equals, text = pair.partition("=")
        if not equals or not text.strip():
            raise JobsheetError(f'“{pair}” is not FIELD=TEXT; write, for example, width="6 mm".')
        found[name.strip().replace(" ", "_").replace("-", "_")] = text.strip()
    return found


def _rung_data(rung: Rung) -> dict[str, Any]:
    return {
        "rung": rung.number, "size": rung.size, "cutter": rung.cutter.text, "fields": dict(rung.texts),
        "asked": [{"limit": asked.limit, "demand": asked.demand, "share": asked.share} for asked in rung.asked],
        "limits": [{"name": limit.name, "share": limit.share, "verdict": limit.verdict} for limit in rung.limits],
        "chance": rung.chance, "growth": rung.growth, "spindle speed": rung.figures.value("spindle_speed"),
        "position": rung.position, "pace": rung.figures.value("handle_pace"), "dial": rung.dial, "handle": rung.handle,
        "length": rung.length, "seconds": rung.seconds,
    }  # fmt: skip


def _data(ladder: Ladder) -> dict[str, Any]:
    return {
        "machine": ladder.machine.name, "process": ladder.process, "kind": ladder.kind, "cutter": ladder.cutter.text,
        "material": ladder.setting.material.name, "holding": ladder.holding, "grows": ladder.grows, "units": ladder.units,
        "expected": None if ladder.expected is None else {
            name: getattr(ladder.expected, name) for name in ladder.expected.__struct_fields__
        },
        "chance": ladder.chance, "growth": ladder.growth, "refused": ladder.refused, "ends": ladder.ends,
        "start": list(ladder.start), "stop": list(ladder.stop), "rungs": [_rung_data(rung) for rung in ladder.rungs],
    }  # fmt: skip


def _asks(rung: Rung, ladder: Ladder) -> str:
    from jobsheet.reckoning.ladder.ladder_expected import takes_words

    return "; ".join(
        (*takes_words(ladder.process, rung.asked, ladder.units), f"ends badly in {percent(rung.chance)}")
    )


def _text(ladder: Ladder) -> None:
    from jobsheet.reckoning.ladder.ladder_expected import words_of

    say(f"{ladder.machine.title}: {ladder.title}")
    if ladder.refused:
        say(f"No ladder. {ladder.refused}")
        return
    if ladder.expected is not None:
        say(words_of(ladder.expected))
    for words in ladder.start:
        say(words)
    say(f"{ladder.stop[0]} {' · '.join(ladder.stop[1:])}.")
    rows: list[tuple[str, ...]] = []
    under: list[tuple[str, ...]] = []
    for rung in ladder.rungs:
        dial = f"{rung.handle} {rung.dial}" if rung.dial else ""
        watch = (
            f"{rung.seconds:.0f} s over {rung.length_text}"
            if rung.seconds is not None and rung.length_text
            else ""
        )
        rows.append((f"{rung.number}", rung.size, dial, f"{rung.spindle}, {rung.position}", rung.pace, watch))
        under.append((_asks(rung, ladder),))
    columns(rows, "  ", under)
    say(ladder.ends)


def _sheet(ladder: Ladder, target: Path, paper: str, options: dict[str, Any], *, quiet: bool) -> None:
    from jobsheet.cli.output import refuse_to_overwrite
    from jobsheet.report.proving_sheet import Initialled, proving_sheet
    from jobsheet.sheet.pdf import make_pdf
    from jobsheet.storage.disk import write_file

    refuse_to_overwrite(target)
    given = Initialled(operator=options["operator"], second=options["second"], in_charge=options["in_charge"])
    document = proving_sheet(ladder, initials=given, trainee=options["trainee"], name=target.stem)
    write_file(target, make_pdf((document,), paper))
    if quiet:
        return
    say(f"Proving sheet for {'A4' if paper == 'a4' else 'Letter'} paper: {target}")
    if document.open_stops:
        say(
            "Stop notes that nobody has acknowledged, so the page says NOT ACKNOWLEDGED and has no places for results: "
            f"{', '.join(document.open_stops)}"
        )


@command.command("enter")
@_cut
@click.option("--size", default="", help="what grew, as on the sheet: 0.7 mm, 6.5 mm, 1/4-20 in No. 7")
@click.option(
    "--outcome",
    required=True,
    help="a word or its digit: 1 clean, 2 noisy, 3 slowed, 4 chatter, 5 stalled, 6 slipped, 7 broke, 8 too hard to wind",
)
@click.option("--seconds", type=float, help="on the watch")
@click.option("--length", help='how far it went in that time, such as "80 mm"; else the planned length')
@click.option("--tachometer", help='the speed under load, such as "541 rpm"')
@click.option("--slipped", default="", help="vice, holder or shank")
@click.option("--note", default="", help="what was heard and seen")
@click.option("--date", default="", help="such as 2026-11-25; else today")
@click.option("--role", default="", help="who cut, by role")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def enter_command(**options: Any) -> int:
    """Write one test cut into the log: its size as on the sheet, other fields by --set
    where they were not the planned ones.

    Exit code 1 after an outcome that ends the ladder.
    """
    from jobsheet.clock import time_of_day, today
    from jobsheet.reckoning.ladder.ladders import rung_at, trial_of
    from jobsheet.storage.records.proof_log import append
    from jobsheet.units.grammar import read

    ladder = _ladder(options)
    rung = rung_at(ladder, _typed(options["typed"]), options["size"])
    length, tachometer = options["length"], options["tachometer"]
    trial = trial_of(
        ladder, rung, outcome=options["outcome"], seconds=options["seconds"],
        length=read(length, "length", ladder.units) if length else None,
        tachometer=read(tachometer, "spindle speed") if tachometer else None, slipped=options["slipped"],
        note=options["note"], role=options["role"], date=options["date"], time=time_of_day() if options["date"] in ("", today()) else "",
    )  # fmt: skip
    written = append(ladder.machine.name, trial)
    after = _ladder(
        {**options, "typed": tuple(f"{name}={text}" for name, text in ladder.texts if name != ladder.grows)}
    )
    if options["want_json"]:
        as_json(
            {
                "trial": trial_data(written),
                "next": _rung_data(after.rungs[0]) if after.rungs else None,
                "refused": after.refused,
            }
        )
        return 0 if written.outcome == "clean" else 1
    say(f"Trial {written.id} is in the log: {written.outcome}, {asked_words(written)}.")
    if after.rungs:
        first = after.rungs[0]
        say(f"Next rung: {first.size}; {_asks(first, ladder)}.")
    else:
        say(f"No further rung. {after.refused}")
    return 0 if written.outcome == "clean" else 1


def trial_data(trial: Trial) -> dict[str, Any]:
    """A trial as JSON has it, SI units."""
    import msgspec

    data: dict[str, Any] = msgspec.to_builtins(trial)
    data["step"] = dict(trial.step)
    return data


@command.command("show")
@click.argument("machine")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def show_command(machine: str, want_json: bool) -> int:
    """The log, and what it taught: each limit's capacity with its band, and what to plan to.

    Exit code 1 when something of the log cannot be read.
    """
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.records.proof_log import read_log

    card = find_card(machine)
    log = read_log(card.name)
    taught = known(card.name, log)
    learned = taught.capacities if taught is not None else ()
    odd_ones = odd(taught, log)
    if want_json:
        import msgspec

        from jobsheet.reckoning.ladder.usual_cut import in_sizes

        as_json(
            {
                "machine": card.name,
                "trials": [{**trial_data(trial), "struck": trial.id in log.struck} for trial in log.trials],
                "learned": [
                    {name: value for name, value in msgspec.to_builtins(one).items() if name != "cells"}
                    | {"sizes": msgspec.to_builtins(in_sizes(one, log.standing))}
                    for one in learned
                ],
                "changed": [{"id": trial.id, "date": trial.date, "what": trial.changed, "note": trial.note} for trial in log.marks if trial.changed],
                "do not fit": [
                    {"id": other.trial.id, "limit": other.limit, "chance": other.chance, "sentence": other.sentence} for other in odd_ones
                ],
                "problems": [str(problem) for problem in log.problems],
            }
        )  # fmt: skip
        return 1 if log.problems else 0
    show_log(card, log)
    for one in learned:
        show_capacity(one, log)
    show_odd(card.name, odd_ones)
    for problem in log.problems:
        say(f"{machine}.txt: {problem}")
    return 1 if log.problems else 0


@command.command("needs")
@click.argument("job", type=click.Path())
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def needs_command(job: str, want_json: bool) -> int:
    """What an open job needs proved: for all its steps that were not tried or are
    tight, rungs that end at what they ask.

    Exit code 1 where something is open.
    """
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.ladder.job_needs import job_needs
    from jobsheet.reckoning.reckoner import Reckoner

    needs = job_needs(Reckoner(learns=True).reckon(job_named(job)))
    if want_json:
        as_json(
            [
                {"process": need.process, "cutter kind": need.cutter_kind, "steps": list(need.steps), "why": need.why,
                 "ladder": None if need.ladder is None else _data(need.ladder)}
                for need in needs
            ]
        )  # fmt: skip
        return 1 if needs else 0
    show_needs(needs)
    return 1 if needs else 0


@command.command("in-step")
@click.argument("job", type=click.Path())
@click.argument("number", type=int)
@click.option("-o", "--output", type=click.Path(), help="the proving sheet, as a PDF")
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True)
@click.option("--operator", default="", help="initials of who has read the stop rule")
@click.option("--second", default="", help="initials of the second person present")
@click.option("--in-charge", default="", help="initials of the person in charge")
@click.option("--trainee", is_flag=True, help="a learner makes the test")
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def in_step_command(
    job: str, number: int, output: str | None, paper: str, want_json: bool, **options: Any
) -> int:
    """The roughing layers of a step as growing rungs: learning costs no test steel, and ends at the size.

    Afterwards: jobsheet ran JOB STEP=OUTCOME --layer, --depth. Exit code 1 where
    no ladder is made, with the reason.
    """
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.ladder.ladder_in_step import in_step
    from jobsheet.reckoning.reckoner import Reckoner

    ladder = in_step(Reckoner(learns=True).reckon(job_named(job)), number)
    if want_json:
        as_json(_data(ladder))
    else:
        _text(ladder)
    if output:
        _sheet(ladder, Path(output), paper, options, quiet=want_json)
    return 1 if ladder.refused else 0


for verb in RECORD_VERBS:
    command.add_command(verb)
