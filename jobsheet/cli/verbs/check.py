"""`jobsheet check JOB`: the review, and the stop notes that nobody has acknowledged yet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import click

from jobsheet.cli.output import as_json, say

if TYPE_CHECKING:
    from jobsheet.model.job import Job
    from jobsheet.model.remark import Remark
    from jobsheet.review.mending.fix_tried import FixTried
    from jobsheet.review.notes.notes import Notes


@click.command("check")
@click.argument("job", type=click.Path())
@click.option("--json", "want_json", is_flag=True, help="as JSON")
def command(job: str, want_json: bool) -> int:
    """Read a plan through: remarks with their reasons, verdicts that say stop, notes to acknowledge."""
    from jobsheet.cli.named_job import job_named, shots_named
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.review.engine import reviewed
    from jobsheet.review.notes.notes import notes_for

    plan = job_named(job)
    reckoned = Reckoner(learns=True).reckon(plan)
    typed, plan = plan, reckoned.job
    from jobsheet.holdings.of_stock import at_odds
    from jobsheet.holdings.to_say import said_once, unasked
    from jobsheet.review.mending.fix_tried import fix_tried
    from jobsheet.review.plan.solid_facts import facts_of
    from jobsheet.storage.photos.kept_photographs import problem_words
    from jobsheet.storage.words.stock_words import without_fact

    gone = [problem_words(plan, shot) for shot in shots_named(plan, job) if shot.problem]
    facts = facts_of(plan, reckoned)
    read = reviewed(plan, reckoned, facts)
    remarks = [(remark, fix_tried(remark, typed, reckoned, facts)) for remark in read.open]
    notes = notes_for(plan, reckoned)
    from jobsheet.review.notes.legal import by_law, today

    day = today()
    legal = by_law(notes, reckoned.shop.country).figures
    numbers = {operation.key: operation.number for _, operation in plan.operations()}
    over = [
        (numbers[key], limit)
        for key, outcome in reckoned.operations.items()
        for limit in outcome.limits
        if limit.verdict == "beyond"
    ]
    problems = [
        (numbers[key], outcome.problem) for key, outcome in reckoned.operations.items() if outcome.problem
    ]
    if want_json:
        law = [
            {"id": figure.id, "place": figure.place, "words": figure.words(day), "source": figure.source}
            for figure in legal
        ]
        as_json(
            {
                **_data(plan, remarks, over, problems, notes, numbers),
                "set aside": _aside(read.aside),
                "not checked": [
                    {
                        "what": not_checked.what,
                        "operation": numbers.get(not_checked.operation),
                        "why": not_checked.why,
                    }
                    for not_checked in read.not_checked
                ],
                "to be said": [{"set-up": number, "facts": unsaid} for number, unsaid in said_once(plan)],
                "words of the stock that no rule reads": list(without_fact(plan.stock)),
                "does not agree with the stock": [
                    {"set-up": set_up.number, "why": differs}
                    for set_up in plan.set_ups
                    if (differs := at_odds(set_up, plan.stock))
                ],
                "not followed by the solids": [set_up.number for set_up in plan.set_ups if unasked(set_up)],
                "photographs that are gone": gone,
                "law and advice": law,
            }
        )
    else:
        from jobsheet.review.engine import title_of

        for missing in read.not_checked:
            say(missing.words(numbers.get(missing.operation)))
        for sentence in gone:
            say(sentence)
        if words := ", ".join(f"“{one}”" for one in without_fact(plan.stock)):
            say(f"said of the stock in words only, which no rule reads: {words}")
        for number, unsaid in said_once(plan):
            say(
                f"to be said yet of the holding in set-up {number}: {unsaid}; what rests on that was not checked"
            )
        for set_up in plan.set_ups:
            if differs := at_odds(set_up, plan.stock):
                say(f"in set-up {set_up.number} {differs}")
            if unchecked := unasked(set_up):
                say(f"not checked in set-up {set_up.number}: {unchecked}")
        _text(typed, remarks, over, problems, notes, numbers)
        if not (remarks or over or problems or read.not_checked):
            say("No remarks.")
        for remark, why in read.aside:
            by = f" ({why.initials})" if why.initials else ""
            say(f"set aside: {remark.message}: {why.reason}{by} ({title_of(remark.rule)})")
        for figure in legal:
            say(f"law and advice: {figure.words(day)}")
    failed = any(
        missing.line is None for missing in read.not_checked
    )  # a line that is not compared stops nobody
    stops = over or problems or failed or any(remark.severity == "hazard" for remark in read.open)
    return 1 if stops else 0


def _data(
    plan: Job, remarks: Any, over: Any, problems: Any, notes: Notes, numbers: dict[str, int]
) -> dict[str, Any]:
    return {
        "remarks": [
            {
                "rule": one.rule, "severity": one.severity, "operations": [numbers[key] for key in one.operations],
                "message": one.message, "why": one.why, **_fix(one, tried, plan),
            }
            for one, tried in remarks
        ],
        "beyond": [{"operation": number, "limit": limit.name, "share": limit.share, "sentence": limit.sentence} for number, limit in over],
        "problems": [{"operation": number, "sentence": sentence} for number, sentence in problems],
        "stop notes": [{"id": note.id, "text": note.text, "initials of": note.initials} for note in notes.stops],
    }  # fmt: skip


def _fix(remark: Remark, tried: FixTried | None, plan: Job) -> dict[str, Any]:
    """What mends it with what that ends and leaves; or why nothing is offered."""
    from jobsheet.review.mending.fix_words import by_hand, outcome, refusal

    if tried is None:
        return {"fix": None, "by hand": by_hand(remark)} if remark.by_hand else {"fix": None}
    if not tried.offered:
        return {"fix": None, "why no fix": refusal(remark, tried)}
    return {"fix": tried.fix.label, "fix outcome": list(outcome(remark, tried, plan))}


def _aside(aside: Any) -> list[dict[str, str]]:
    return [
        {
            "rule": one.rule,
            "about": why.about,
            "message": one.message,
            "reason": why.reason,
            "initials": why.initials,
        }
        for one, why in aside
    ]


def _text(plan: Job, remarks: Any, over: Any, problems: Any, notes: Notes, numbers: dict[str, int]) -> None:
    from jobsheet.edit.difference import changes
    from jobsheet.review.engine import title_of
    from jobsheet.review.mending.fix_words import by_hand, outcome, refusal

    for number, sentence in problems:
        say(f"step {number} cannot be calculated: {sentence}")
    for number, limit in over:
        say(
            f"beyond  step {number}: {limit.title.lower()}, {limit.shown} ({limit.share * 100:.0f} %). {limit.sentence[:1].upper()}{limit.sentence[1:]}".rstrip(
                ". "
            )
            + "."
        )
    for remark, tried in remarks:
        steps = " and ".join(str(numbers[key]) for key in remark.operations)
        where = f"step {steps}" if steps else "the whole job"
        say(f"{remark.severity}  {where}: {remark.message}.")
        say(f"        {remark.why} ({title_of(remark.rule)})")
        if tried is None:
            if remark.by_hand:
                say(f"        by hand: {by_hand(remark)}.")
            continue
        if not tried.offered:
            say(f"        {refusal(remark, tried)}")
            continue
        say(f"        can be mended: {tried.fix.label}")
        for line in (*changes(plan, tried.job), *outcome(remark, tried, plan)):
            say(f"            {line}")
    for stop in notes.stops:
        say(f"stop note, not acknowledged: {stop.text} (initials of: {stop.initials})")
