"""`jobsheet ran JOB 40=clean 50=2`: what happened at the machine, kept beside the job;
and what it teaches of the machine.
"""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns, say
from jobsheet.errors import JobsheetError


@click.command("ran")
@click.argument("job", type=click.Path())
@click.argument("steps", nargs=-1, metavar="[STEP=OUTCOME]...")
@click.option("--layer", type=click.IntRange(1), help="which layer of the one step gave trouble")
@click.option("--depth", help='how deep that layer was, such as "4 mm", where it was not as planned')
@click.option("--speed", help='the speed that ran, such as "300 rpm", where it was not as planned')
@click.option("--seconds", type=float, help="on the watch")
@click.option("--length", help='how far it went in that time, such as "80 mm"')
@click.option("--slipped", default="", help="vice, holder or shank")
@click.option(
    "--size",
    "sizes",
    multiple=True,
    metavar="SIZE=FOUND",
    help='a size as the sheet names it, such as "80.0=80.02 mm"',
)
@click.option("--setting-up", type=float, help="minutes to set up")
@click.option("--cutting", type=float, help="minutes to cut")
@click.option(
    "--set-up",
    type=click.IntRange(1),
    help="the set-up that sizes, minutes and change are of; without it the whole job",
)
@click.option(
    "--change",
    default="",
    help="what you would change: lighter, slower, other cutter, hold deeper, other order, nothing",
)
@click.option("--note", default="", help="what was heard and seen")
@click.option("--date", default="", help="such as 2026-11-25; else today")
@click.option("--role", default="", help="who cut, by role")
@click.option(
    "--not-proof", is_flag=True, help="keep it with the job only: the machine's proof log gets nothing of it"
)
@click.option(
    "--take-back", metavar="ID", default="", help="take an entry back by its id, and out of the proof log too"
)
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(job: str, steps: tuple[str, ...], want_json: bool, take_back: str, **said: Any) -> int:
    """Write down how the steps of a job went, the sizes that were found, minutes, and what you would change.

    An outcome is a word or its digit: 1 clean, 2 noisy, 3 slowed, 4 chatter, 5 stalled, 6 slipped, 7 broke, 8
    too hard to wind, 0 not cut. It is kept in a file beside the job that only grows. A step with a force
    counts in the machine's proof log as well, and it is said which. Without anything to write, what is
    recorded is listed. Exit code 1 where some of the file cannot be read.
    """
    if take_back:
        return _take_back(job, take_back, said)
    entries = _entries(job, steps, said)
    if entries:
        _keep(job, entries, proof=not said["not_proof"], quiet=want_json)
    if want_json or not entries:
        return _list(job, want_json=want_json)
    return 0


def _entries(job: str, steps: tuple[str, ...], said: dict[str, Any]) -> tuple[Any, ...]:
    """What was said, as entries; nothing of it is written yet."""
    from pathlib import Path

    from msgspec.structs import replace

    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.runs_kept import entry_of, step_words
    from jobsheet.units.grammar import read

    alone = ("layer", "depth", "speed", "seconds", "length", "slipped")
    if any(said[name] for name in alone) and len(steps) != 1:
        names = ", ".join(f"--{name}" for name in alone if said[name])
        raise JobsheetError(
            f"{names} belong{'s' if ',' not in names else ''} to one step: name that one alone, such as 40=2."
        )
    plan = job_named(job)
    base = entry_of(Path(job), plan, said["date"], said["role"])
    # A note is the step's where there is one alone, else it goes with what one would change.
    with_change = bool(said["change"]) or len(steps) != 1
    entries = []
    for words in steps:
        operation, outcome = _step(plan, words)
        entry = replace(
            base, about="step", key=operation.key, number=operation.number, step=step_words(operation), outcome=outcome,
            layer=said["layer"] or 0, slipped=said["slipped"], seconds=said["seconds"],
            speed=read(said["speed"], "spindle speed") if said["speed"] else None,
            depth=read(said["depth"], "length", plan.units) if said["depth"] else None,
            length=read(said["length"], "length", plan.units) if said["length"] else None, note="" if with_change else said["note"],
        )  # fmt: skip
        if (outcome == "slipped") != bool(entry.slipped):
            raise JobsheetError("Say what slipped: --slipped vice, holder or shank." if outcome == "slipped" else
                                f"“{entry.slipped}” slipped, but the outcome is {outcome}.")  # fmt: skip
        entries.append(entry)
    for words in said["sizes"]:
        size, equals, amount = words.partition("=")
        if not equals or not size.strip():
            raise JobsheetError(f'“{words}” is not SIZE=FOUND; write, for example, "80.0=80.02 mm".')
        entries.append(
            replace(
                base,
                about="size",
                size=size.strip(),
                found=read(amount, "length", plan.units),
                set_up=said["set_up"] or 0,
            )
        )
    if said["setting_up"] is not None or said["cutting"] is not None:
        entries.append(
            replace(base, about="minutes", set_up=said["set_up"] or 0, setting_up=_seconds(said["setting_up"]),
                    cutting=_seconds(said["cutting"]))
        )  # fmt: skip
    if said["change"] or (said["note"] and with_change):
        entries.append(
            replace(
                base, about="change", change=said["change"], note=said["note"], set_up=said["set_up"] or 0
            )
        )
    return tuple(entries)


def _seconds(minutes: float | None) -> float | None:
    return None if minutes is None else minutes * 60


def _step(plan: Any, words: str) -> tuple[Any, str]:
    """`40=clean` as the step of that number and an outcome."""
    from jobsheet.model.trials import OUTCOMES
    from jobsheet.model.what_ran import NOT_CUT

    number, equals, outcome = (part.strip() for part in words.partition("="))
    if not equals:
        raise JobsheetError(f"“{words}” is not STEP=OUTCOME; write, for example, 40=clean or 40=1.")
    operation = next((one for _, one in plan.operations() if str(one.number) == number), None)
    if operation is None:
        there = ", ".join(str(one.number) for _, one in plan.operations())
        raise JobsheetError(f"There is no step {number} in this job; there are {there}.")
    listed = (NOT_CUT, *OUTCOMES)
    if outcome.isdigit() and int(outcome) < len(listed):
        return operation, listed[int(outcome)]
    if outcome.casefold() in listed:
        return operation, outcome.casefold()
    digits = ", ".join(f"{digit} {one}" for digit, one in enumerate(listed))
    raise JobsheetError(f"“{outcome}” is no outcome; write one of {digits}.")


def _keep(job: str, entries: tuple[Any, ...], *, proof: bool, quiet: bool) -> None:
    """Beside the job first, then into the proof log what has a force."""
    from pathlib import Path

    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.reckoning.runs_kept import keep
    from jobsheet.storage.records.run_log import path_beside

    kept = keep(
        Path(job),
        entries,
        lambda: Reckoner(learns=True).reckon(job_named(job)),
        leave_out=() if proof else tuple(entry.key for entry in entries),
    )
    if not quiet:
        many = "1 entry is" if len(kept.written) == 1 else f"{len(kept.written)} entries are"
        say(f"{many} in {path_beside(job).name}.")
        for entry, trial in kept.trials:
            say(
                f"Step {entry.number}, {entry.outcome}: counts in the proof log of {trial.machine} ({trial.id[:6]})."
            )
    if kept.unclosed:
        say(kept.unclosed, err=True)
    if kept.refused:
        raise JobsheetError(kept.refused)


def _take_back(job: str, start: str, said: dict[str, Any]) -> int:
    """Out of the record beside the job, and what it taught out of the proof log."""
    from pathlib import Path

    from jobsheet.reckoning.runs_kept import take_back

    done = take_back(Path(job), start, role=said["role"], note=said["note"])
    for entry in done.back:
        say(f"{entry.id[:6]} is taken back; it stays in the file and no longer counts.")
    for trial in done.struck:
        say(f"Its trial {trial.id[:6]} in the proof log of {trial.machine} is struck out.")
    if done.refused:
        raise JobsheetError(done.refused)
    return 0


def _list(job: str, *, want_json: bool) -> int:
    """What is recorded, the newest day first."""
    import msgspec

    from jobsheet.storage.records.run_log import path_beside, read_runs

    runs, problems = read_runs(job)
    if want_json:
        as_json(
            {"entries": [msgspec.to_builtins(entry) for entry in runs.standing], "problems": [str(problem) for problem in problems]}
        )  # fmt: skip
        return 1 if problems else 0
    if not runs.standing:
        say("Nothing is recorded of this job yet; write, for example: jobsheet ran JOB 40=clean 50=2")
    for day in runs.dates:
        here = [entry for entry in runs.standing if entry.date == day]
        say(f"{day}, {here[0].machine}, plan {here[-1].plan}")
        columns([_row(entry) for entry in here], "  ")
    for problem in problems:
        say(f"{path_beside(job).name}: {problem}")
    return 1 if problems else 0


def _row(step: Any) -> tuple[str, ...]:
    """An entry in a line."""
    from jobsheet.units.show import trimmed

    if step.about == "step":
        beside = [
            f"layer {step.layer}" if step.layer else "",
            f"{step.depth * 1e3:g} mm deep" if step.depth else "",
            step.note,
        ]
        return (
            step.id[:6],
            f"{step.number}",
            step.step,
            ", ".join([step.outcome, *(word for word in beside if word)]),
        )
    if step.about == "size":
        return step.id[:6], "", step.size, f"found {trimmed(step.found * 1e3, 3)} mm"
    if step.about == "minutes":
        parts = ((step.setting_up, "to set up"), (step.cutting, "to cut"))
        words = ", ".join(f"{value / 60:g} min {what}" for value, what in parts if value is not None)
        return step.id[:6], "", f"set-up {step.set_up}" if step.set_up else "whole job", words
    return step.id[:6], "", "would change", ": ".join(word for word in (step.change, step.note) if word)
