"""`jobsheet reach MACHINE`: the deepest pass, the largest drill and tap it takes
in a metal, and what stops them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say

if TYPE_CHECKING:
    from jobsheet.model.figure import Limit
    from jobsheet.reckoning.answers.reach_answer import Reach


@click.command("reach")
@click.argument("machine")
@click.option(
    "--material", default="S235", show_default=True, help="the metal, by its trade or standard name"
)
@click.option("--units", type=click.Choice(["mm", "in"]), default="mm", show_default=True)
@click.option("--fluid", default="brushed", show_default=True, help="as a job's header has it")
@click.option("--json", "want_json", is_flag=True, help="as JSON, lengths in metres")
def command(machine: str, material: str, units: str, fluid: str, want_json: bool) -> int:
    """What this machine takes here: passes of usual cutters, the largest drill, tap and face mill.

    Planned limits from the card, not what was cut: each has a chance of 1 in 10.
    """
    from jobsheet.reckoning.answers.reach_answer import reach
    from jobsheet.storage.card_files import find_card

    found = reach(find_card(machine), material, units=units, fluid=fluid)
    if want_json:
        as_json(_data(found))
    else:
        _text(found)
    return 0


def _limit(limit: Limit | None) -> str | None:
    return limit.name if limit is not None else None


def _data(answer: Reach) -> dict[str, Any]:
    return {
        "machine": answer.machine.name, "material": answer.setting.material.name, "held": answer.held,
        "passes": [
            {
                "what": each.words, "cutter": each.cutter, "feed": each.feed, "plan": each.answer.plan,
                "expected": each.answer.expected, "tight": each.answer.tight, "stopped by": _limit(each.answer.stopped),
                "hardened by": _limit(each.answer.hardened), "stops": each.answer.stops, "not tried from": each.answer.untried,
                "spindle speed": each.answer.at.value("spindle_speed") if each.answer.at is not None else None, "words": each.answer.words,
            }
            for each in answer.passes
        ],
        "tools": [
            {
                "what": largest.what, "way": largest.way, "expected": largest.expected, "expected size": largest.expected_size, "tight": largest.tight,
                "tight size": largest.tight_size, "stopped by": _limit(largest.stopped), "hardened by": _limit(largest.hardened),
                "stops": largest.stops, "note": largest.note, "words": largest.words,
            }
            for largest in answer.tools
        ],
    }  # fmt: skip


def _text(answer: Any) -> None:
    held = f", held in the {answer.held}" if answer.held else ""
    say(f"{answer.machine.title} in {answer.setting.material.title}{held}")
    rows: list[tuple[str, ...]] = [("", "plan with", "expected to", "tight to")]
    under: list[tuple[str, ...]] = [()]
    for each in answer.passes:
        one, what = each.answer, "deepest" if each.answer.what == "deepest pass" else "widest"
        rows.append(
            (f"{what} {each.words}", one.plan_shown or "–", one.expected_shown or "–", one.tight_shown or "–")
        )
        under.append((f"{each.cutter}, {each.feed}{_speed(one)}", *_stops(one), *_beside(one)))
    for tool in answer.tools:
        name = f"{tool.what}, {tool.way}" if tool.way else tool.what
        rows.append((name, tool.expected or tool.tight or "–", tool.expected or "–", tool.tight or "–"))
        under.append((*_stops(tool), *([tool.note] if tool.note else [])))
    columns(rows, "  ", under)
    words = {each.answer.words for each in answer.passes} | {tool.words for tool in answer.tools}
    for text in sorted(words):
        say(f"{text[:1].upper()}{text[1:]}; watch, listen and feel.")


def _speed(one: Any) -> str:
    return f", {one.at.shown('spindle_speed')}" if one.at is not None else ""


def _stops(one: Any) -> list[str]:
    return [f"what stops it: {one.stops}"] if one.stops else []


def _beside(one: Any) -> list[str]:
    """Limits that are tight however little is asked, and the one that was not tried."""
    parts = [f"{limit.title.lower()} is tight however little: {limit.sentence}" for limit in one.anyway]
    if one.untried_limit is not None:
        parts.append(f"{one.untried_limit.title.lower()}: {one.untried_words}")
    return parts
