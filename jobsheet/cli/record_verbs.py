"""`jobsheet prove strike|give-back|keep|changed|merge MACHINE`: what is done to the record of test
cuts; nothing in it is ever changed.
"""

from __future__ import annotations

from pathlib import Path

import click

from jobsheet.cli.output import say


@click.command("strike")
@click.argument("machine")
@click.argument("trial")
@click.option("--note", required=True, help="why it is wrong")
@click.option("--role", default="", help="who strikes it out, by role")
def strike_command(machine: str, trial: str, note: str, role: str) -> int:
    """Strike out a wrong trial by its id: a later record says so, nothing is changed."""
    from jobsheet.clock import time_of_day, today
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.records.proof_log import strike

    done = strike(find_card(machine).name, trial, today(), role, note, time_of_day())
    say(f"{done.strikes} is struck out; it stays in the log and no longer counts.")
    return 0


@click.command("give-back")
@click.argument("machine")
@click.argument("trial")
@click.option("--note", default="", help="why it counts after all")
@click.option("--role", default="", help="who gives it back, by role")
def give_back_command(machine: str, trial: str, note: str, role: str) -> int:
    """Give back a trial that was struck out: a later record says so, and it counts again."""
    from jobsheet.clock import time_of_day, today
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.records.proof_log import give_back, read_log

    name = find_card(machine).name
    give_back(name, trial, today(), role, note, time_of_day())
    say(f"{read_log(name).find(trial).id} counts again.")
    return 0


@click.command("keep")
@click.argument("machine")
@click.argument("trial")
@click.option("--note", default="", help="what was seen")
@click.option("--role", default="", help="who says so, by role")
def keep_command(machine: str, trial: str, note: str, role: str) -> int:
    """Say of a trial that does not fit the others that it was so: it counts as it
    stands and is not asked about again.
    """
    from jobsheet.clock import time_of_day, today
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.records.proof_log import mark

    done = mark(find_card(machine).name, today(), keeps=trial, role=role, note=note, clock=time_of_day())
    say(f"{done.keeps} was so: it counts as it stands.")
    return 0


@click.command("changed")
@click.argument("machine")
@click.argument("what")
@click.option("--note", default="", help="what was done, such as adjusted, renewed")
@click.option("--date", default="", help="such as 2026-11-25; else today")
@click.option("--role", default="", help="who did it, by role")
def changed_command(machine: str, what: str, note: str, date: str, role: str) -> int:
    """Mark that the machine changed: gibs, belt, bearings, vice, motor or something else.

    Older trials of what it concerns then say less, and no good cut from before is rested on.
    """
    from jobsheet.clock import time_of_day, today
    from jobsheet.model.trials import CHANGES
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.records.proof_log import mark

    day = date or today()
    time = time_of_day() if day == today() else ""
    done = mark(
        find_card(machine).name, day, changed=what.strip().casefold(), role=role, note=note, clock=time
    )
    about = " and ".join(
        {"spindle-torque": "torque", "chatter": "chatter"}[change] for change in CHANGES[done.changed]
    )
    say(
        f"Marked {done.id}: {done.changed}, {done.date}. What was learned of {about} before says less from then on."
    )
    return 0


@click.command("merge")
@click.argument("machine")
@click.argument("file", type=click.Path())
def merge_command(machine: str, file: str) -> int:
    """Take over from another log of this machine what is not in yours yet. Exit
    code 1 when some of it cannot be read.
    """
    from jobsheet.storage.card_files import find_card
    from jobsheet.storage.records.proof_log import merge

    done = merge(find_card(machine).name, file)
    say(
        f"{_records(len(done.added))} taken over, {_records(done.known)} {'was' if done.known == 1 else 'were'} there already."
    )
    for problem in done.problems:
        say(f"{Path(file).name}: {problem}")
    return 1 if done.problems else 0


def _records(count: int) -> str:
    return "1 record" if count == 1 else f"{count} records"


RECORD_VERBS = (strike_command, give_back_command, keep_command, changed_command, merge_command)
