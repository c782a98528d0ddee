"""`jobsheet figures JOB`: what every operation asks, and what gives out first."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, columns, say

if TYPE_CHECKING:
    from jobsheet.model.figure import Figure, Limit
    from jobsheet.model.job import Job, Operation
    from jobsheet.model.setting import Setting
    from jobsheet.reckoning.reckoner import Outcome, Reckoned


@click.command("figures")
@click.argument("job", type=click.Path())
@click.option("--json", "want_json", is_flag=True, help="as JSON, values in SI units")
def command(job: str, want_json: bool) -> int:
    """Figures and limits of every operation of a job."""
    from jobsheet.cli.named_job import job_named
    from jobsheet.reckoning.reckoner import Reckoner

    plan = job_named(job)
    reckoned = Reckoner(learns=True).reckon(plan)
    as_typed, plan = plan, reckoned.job
    if want_json:
        as_json(
            {
                "operations": [
                    _as_data(
                        operation,
                        reckoned.operations[operation.key],
                        reckoned.settings[operation.key],
                        as_typed.find(operation.key)[1],
                    )
                    for _, operation in plan.operations()
                ]
            }
        )
    else:
        _as_text(as_typed, reckoned)
    stopped = any(
        limit.verdict == "beyond" for outcome in reckoned.operations.values() for limit in outcome.limits
    )
    unreckoned = any(outcome.problem for outcome in reckoned.operations.values())
    return 1 if stopped or unreckoned else 0


def _left_empty(operation: Operation, filled: Operation) -> dict[str, Any]:
    """What was left empty and stands as recommended, by its field; nothing where nothing was."""
    from jobsheet.reckoning.adviser.left_empty import filled_texts

    texts = filled_texts(operation, filled)
    return {"as recommended": texts} if texts else {}


def _say_left_empty(operation: Operation, filled: Operation) -> None:
    """The same for reading."""
    from jobsheet.operations.registry import kind

    texts = _left_empty(operation, filled).get("as recommended", {})
    if texts:
        titles = {entry.name: entry.title for entry in kind(operation.kind).entries}
        say("       left empty, and filled in as recommended")
        columns([(titles[name], text) for name, text in texts.items()], "         ")


def _figure(figure: Figure) -> dict[str, Any]:
    """A figure in SI; with the band in which the truth lies nine times in ten, where it has one."""
    data = {"value": figure.value, "unit": figure.unit, "shown": figure.shown}
    if figure.low is not None and figure.high is not None:
        data["band"] = [figure.low, figure.high]
    return data


def limit_data(limit: Limit) -> dict[str, Any]:
    """A limit in SI: its word, its chance and what it happens with, its reason with the remedy;
    where to begin if it was not tried.
    """
    return {
        "name": limit.name,
        "demand": limit.demand,
        "capacity": limit.capacity,
        "unit": limit.unit,
        "share": limit.share,
        "verdict": limit.verdict,
        "chance": limit.chance,
        "odds": limit.odds,
        "from class": limit.from_class,
        "begin at": limit.begin or None,
        "shown": limit.shown,
        "reason": limit.sentence,
    }


def _as_data(operation: Operation, outcome: Outcome, setting: Setting, typed: Any) -> dict[str, Any]:
    figures = outcome.figures.items if outcome.figures else ()
    data: dict[str, Any] = {
        "key": operation.key,
        "number": operation.number,
        "kind": operation.kind,
        "title": outcome.title,
        "figures": {figure.name: _figure(figure) for figure in figures},
        "limits": [limit_data(limit) for limit in outcome.limits],
    }
    data.update(_around(operation, outcome, setting, typed))
    data.update(_left_empty(typed, operation))
    if outcome.problem:
        data["problem"] = outcome.problem
    if outcome.figures and outcome.figures.caveats:
        data["caveats"] = list(outcome.figures.caveats)
    return data


def _around(operation: Any, outcome: Any, setting: Any, typed: Any = None) -> dict[str, Any]:
    """The best cut, both neighbours of the speed, other cutters for the pace,
    and a saw where it is quicker.
    """
    from jobsheet.reckoning.adviser.best_cut import advice_on
    from jobsheet.reckoning.answers.mends import mends_for
    from jobsheet.reckoning.answers.saw_first import saw_first
    from jobsheet.reckoning.answers.speeds import neighbours_of

    data: dict[str, Any] = {}
    changed = advice_on(operation, setting)
    if changed is not None:
        data["advice"] = _advice(operation, setting, changed)
    neighbours = neighbours_of(operation, setting, typed)
    if neighbours is not None:
        named = {"below": neighbours.below, "at": neighbours.at, "above": neighbours.above}
        data["speeds"] = {name: _neighbour(neighbour) for name, neighbour in named.items()}
        if neighbours.other_ranges:
            data["speeds"]["other ranges"] = [_neighbour(neighbour) for neighbour in neighbours.other_ranges]
    mends = mends_for(operation, setting, outcome.figures)
    if mends:
        data["other cutters"] = [
            {
                "sort": mend.sort, "label": mend.label, "edits": dict(mend.edits), "pace": mend.pace, "cutting speed": mend.cutting_speed,
                "feed per tooth": mend.feed_per_tooth, "torque share": mend.torque_share,
            }
            for mend in mends
        ]  # fmt: skip
    saw = saw_first(operation, setting)
    if saw is not None:
        data["saw first"] = saw.words
    return data


def _advice(operation: Operation, setting: Setting, changed: Any) -> dict[str, Any]:
    """What the adviser would write, with reasons; what stays at its edge or beyond, and the other way."""
    from jobsheet.reckoning.answers.speeds import pilot_proposed

    advised = changed.advised
    pilot = pilot_proposed(operation, setting, advised)
    return {
        "write": [
            {"field": value.name, "text": value.text, "why": value.why, "source": value.source}
            for value in changed.values
        ],
        "passes": advised.passes,
        "seconds": advised.seconds,
        "stays": [{"name": stay.name, "verdict": stay.verdict} for stay in advised.stays],
        "other way": advised.other_way,
        "others that go": list(advised.rivals),
        "pilot": pilot.drill if pilot is not None else None,
    }


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


def _text_around(operation: Operation, outcome: Outcome, setting: Setting, typed: Any) -> None:
    """The same for reading."""
    from jobsheet.reckoning.adviser.best_cut import advice_on
    from jobsheet.reckoning.answers.mends import mends_for
    from jobsheet.reckoning.answers.saw_first import saw_first
    from jobsheet.reckoning.answers.speeds import neighbours_of, pilot_proposed, pilot_words

    neighbours = neighbours_of(operation, setting, typed)
    if (
        neighbours is not None
        and neighbours.at.share is not None
        and (neighbours.below or neighbours.above or neighbours.other_ranges)
    ):
        say("       the speed and those about it")
        columns(_speed_rows(neighbours), "         ")
    changed = advice_on(operation, setting)
    if changed is not None:
        _say_advice(operation, changed)
        pilot = pilot_proposed(operation, setting, changed.advised)
        if pilot is not None:
            say(f"       {pilot_words(pilot)}")
    mends = mends_for(operation, setting, outcome.figures)
    if mends:
        say("       other cutters that a hand winds evenly")
        columns([(mend.label,) for mend in mends], "         ")
    saw = saw_first(operation, setting)
    if saw is not None:
        say(f"       {saw.words}")


def _say_advice(operation: Operation, changed: Any) -> None:
    """What would be written, a line each with its reason, and what stays."""
    from jobsheet.operations.registry import kind

    titles = {entry.name: entry.title for entry in kind(operation.kind).entries}
    if changed.values:
        say("       recommended, to be typed in if you like")
        columns(
            [(titles[value.name], value.text or "empty", value.why) for value in changed.values], "         "
        )
    stays = [f"{stay.title.lower()} {stay.verdict}" for stay in changed.advised.stays]
    if stays:
        say(f"       the best there is leaves {', '.join(stays)}")
    if changed.advised.other_way:
        say(f"       {changed.advised.other_way}")


def _as_text(as_typed: Job, reckoned: Reckoned) -> None:
    from jobsheet.operations.names import FIGURES

    for set_up in reckoned.job.set_ups:
        say(f"Set-up {set_up.number}  {set_up.title}".rstrip())
        for operation in set_up.operations:
            outcome = reckoned.operations[operation.key]
            say(f"\n{operation.number:>5}  {outcome.title}")
            if outcome.problem:
                say(f"       cannot be calculated: {outcome.problem}")
                continue
            figures = outcome.figures.items if outcome.figures else ()
            _say_left_empty(as_typed.find(operation.key)[1], operation)
            columns([(FIGURES[figure.name].title, figure.shown) for figure in figures], "       ")
            rows: list[tuple[str, ...]] = [
                (
                    limit.title,
                    f"{limit.share * 100:.0f} %",
                    limit.verdict,
                    limit.odds,
                    limit.shown,
                    limit.sentence,
                )
                for limit in outcome.limits
            ]
            if rows:
                say("       limits, the nearest to giving out first")
                columns(rows, "         ")
            _text_around(
                operation, outcome, reckoned.settings[operation.key], as_typed.find(operation.key)[1]
            )
            for caveat in outcome.figures.caveats if outcome.figures else ():
                say(f"       {caveat}")
        say("")
    say("Calculated from the values entered; the cut may ask more. Start lighter and watch, listen and feel.")
