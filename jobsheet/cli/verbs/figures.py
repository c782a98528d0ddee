"""`jobsheet figures JOB`: what every operation asks, and what gives out first."""

from __future__ import annotations

from typing import Any

import click

from jobsheet.cli.output import as_json, columns, say

#: Limits that a thinner layer mends.
_BY_DEPTH = {"spindle-torque", "spindle-power", "holding", "cutter-bending", "table-push", "chatter"}


@click.command("figures")
@click.argument("job", type=click.Path())
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(job: str, want_json: bool) -> int:
    """Figures and limits of every operation of a job."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.reckoner import Reckoner

    plan = job_named(job)
    found = Reckoner(learns=True).reckon(plan)
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
    from jobsheet.operations.shared.advice import advice_for

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
                "chance": one.chance,
                "odds": one.odds,
                "shown": one.shown,
                "reason": one.sentence,
            }
            for one in outcome.limits
        ],
    }
    advice = advice_for(operation.kind, operation.fields, setting, outcome.figures)
    if advice:
        data["suggestions"] = [
            {"field": one.name, "text": one.text, "why": one.why, "source": one.source} for one in advice
        ]
    data.update(_around(operation, outcome, setting))
    if outcome.problem:
        data["problem"] = outcome.problem
    if outcome.figures and outcome.figures.caveats:
        data["caveats"] = list(outcome.figures.caveats)
    return data


def _around(operation: Any, outcome: Any, setting: Any) -> dict[str, Any]:
    """Both neighbours of the speed, what carries the cut where it does not, and what mends the pace."""
    from jobsheet.reckoning.answers.mends import mends_for
    from jobsheet.reckoning.answers.speeds import neighbours_of, proposal_for

    data: dict[str, Any] = {}
    found = neighbours_of(operation, setting)
    if found is not None:
        named = {"below": found.below, "at": found.at, "above": found.above}
        data["speeds"] = {name: _neighbour(one) for name, one in named.items()}
        if found.other_ranges:
            data["speeds"]["other ranges"] = [_neighbour(one) for one in found.other_ranges]
    proposal = proposal_for(operation, setting)
    if proposal is not None:
        data["proposal"] = {
            "what": proposal.what, "label": proposal.label, "edits": dict(proposal.edits),
            "pilot": proposal.pilot.drill if proposal.pilot is not None else None,
        }  # fmt: skip
    mends = mends_for(operation, setting, outcome.figures)
    if mends:
        data["mends"] = [
            {
                "sort": one.sort, "label": one.label, "edits": dict(one.edits), "pace": one.pace, "cutting speed": one.cutting_speed,
                "feed per tooth": one.feed_per_tooth, "torque share": one.torque_share,
            }
            for one in mends
        ]  # fmt: skip
    data.update(_less_at_once(operation, outcome, setting))
    return data


def _less_at_once(operation: Any, outcome: Any, setting: Any) -> list[tuple[str, str]]:
    """Layers that are carried where one is too deep, and a saw where it is quicker; each in words."""
    from jobsheet.errors import JobsheetError
    from jobsheet.reckoning.answers.layers_of_depth import saw_first, split_passes

    found = []
    saw = saw_first(operation, setting)
    if saw is not None:
        found.append(("saw first", saw.words))
    beyond = {limit.name for limit in outcome.limits if limit.verdict == "beyond"}
    if beyond & _BY_DEPTH and hasattr(operation.fields, "layer"):
        try:
            split = split_passes(operation, setting)
        except JobsheetError:
            return found
        if split.count > int(outcome.figures.value("layers") or 1):
            found.append(("layers", f"Carried in {split.words}"))
    return found


def _neighbour(one: Any) -> dict[str, Any] | None:
    if one is None:
        return None
    return {
        "marked": one.marked, "speed": one.speed, "cutting speed": one.cutting_speed, "torque share": one.share,
        "verdict": one.verdict, "nearest to giving out": one.worst, "its verdict": one.worst_verdict, "over wanted": one.over,
    }  # fmt: skip


def _speed_rows(found: Any) -> list[tuple[str, ...]]:
    """The speeds about the one that is set, as rows of words."""
    named = [("below", found.below), ("set", found.at), ("above", found.above)]
    named += [(one.position, one) for one in found.other_ranges]
    return [
        (
            name, f"{one.marked} rpm", one.cutting_shown, f"{one.share * 100:.0f} % of the torque" if one.share is not None else "",
            one.verdict if one.worst_verdict == one.verdict else f"{one.verdict}; {one.worst.lower()} {one.worst_verdict}",
        )
        for name, one in named
        if one is not None
    ]  # fmt: skip


def _text_around(operation: Any, outcome: Any, setting: Any) -> None:
    """The same for reading."""
    from jobsheet.reckoning.answers.mends import mends_for
    from jobsheet.reckoning.answers.speeds import neighbours_of, proposal_for

    found = neighbours_of(operation, setting)
    if (
        found is not None
        and found.at.share is not None
        and (found.below or found.above or found.other_ranges)
    ):
        say("       the speed and those about it")
        columns(_speed_rows(found), "         ")
    proposal = proposal_for(operation, setting)
    if proposal is not None:
        say(f"       {proposal.label}")
    mends = mends_for(operation, setting, outcome.figures)
    if mends:
        say("       what mends the pace")
        columns([(one.label,) for one in mends], "         ")
    for _, words in _less_at_once(operation, outcome, setting):
        say(f"       {words}")


def _as_text(plan: Any, found: Any) -> None:
    from jobsheet.operations.names import FIGURES
    from jobsheet.operations.registry import kind
    from jobsheet.operations.shared.advice import advice_for

    for set_up in plan.set_ups:
        say(f"Set-up {set_up.number}  {set_up.title}".rstrip())
        for operation in set_up.operations:
            outcome = found.operations[operation.key]
            say(f"\n{operation.number:>5}  {outcome.title}")
            if outcome.problem:
                say(f"       cannot be calculated: {outcome.problem}")
                continue
            figures = outcome.figures.items if outcome.figures else ()
            columns([(FIGURES[one.name].title, one.shown) for one in figures], "       ")
            rows: list[tuple[str, ...]] = [
                (one.title, f"{one.share * 100:.0f} %", one.verdict, one.odds, one.shown, one.sentence)
                for one in outcome.limits
            ]
            if rows:
                say("       limits, the nearest to giving out first")
                columns(rows, "         ")
            _text_around(operation, outcome, found.settings[operation.key])
            advice = advice_for(
                operation.kind, operation.fields, found.settings[operation.key], outcome.figures
            )
            if advice:
                titles = {entry.name: entry.title for entry in kind(operation.kind).entries}
                say("       suggested by the catalogue, to be typed in if you like")
                columns([(titles[one.name], one.text, one.why) for one in advice], "         ")
            for caveat in outcome.figures.caveats if outcome.figures else ():
                say(f"       {caveat}")
        say("")
    say("Calculated from the values entered; the cut may ask more. Start lighter and watch, listen and feel.")
