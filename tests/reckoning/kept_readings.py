"""What the reckoning says of many cuts, kept as the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each formula, kind, limit and
answer: it says that something reads otherwise now. After a change that is meant, look through what changed in
`readings.yaml`, then `python -m tests.reckoning.kept_readings` writes it anew. The cuts were drawn by chance, by
edits of the sample jobs and of those of each kind, on all cards and metals; of some thousands those
are kept that go a way through operations, limits and reckoning which none before them went.
"""

from __future__ import annotations

import json
from collections.abc import Callable
from functools import cache
from pathlib import Path

import yaml
from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.limits.each.headroom import tool_length
from jobsheet.model.job import Job, Operation
from jobsheet.model.lying import lying, stock_box
from jobsheet.model.own_tools import Cabinet
from jobsheet.model.shop import Shop
from jobsheet.model.trials import Trial
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.aimed import aim_of
from jobsheet.paths import resources, sample_jobs
from jobsheet.reckoning.answers.all_answers import answers_in_parts
from jobsheet.reckoning.answers.capability_answer import card, on_machine
from jobsheet.reckoning.answers.fits_answer import fits
from jobsheet.reckoning.answers.inverse import deepest_pass, widest_pass
from jobsheet.reckoning.answers.mends import mends_for
from jobsheet.reckoning.answers.reach_answer import reach
from jobsheet.reckoning.answers.saw_first import saw_first
from jobsheet.reckoning.answers.speeds import pilot_for
from jobsheet.reckoning.answers.stopwatch_answer import stopwatch
from jobsheet.reckoning.cabinet.cabinet_look import look_through
from jobsheet.reckoning.known_capacity import snapshot_of
from jobsheet.reckoning.ladder.job_needs import job_needs
from jobsheet.reckoning.ladder.ladder_expected import takes_words, words_of
from jobsheet.reckoning.ladder.ladder_in_step import in_step
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.odd_trials import odd_trials
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job
from jobsheet.storage.records.proof_log import Log, records_from
from tests.later import on_day
from tests.reckoning import kept_asks
from tests.reckoning.kept_asks import TODAY, Lines
from tests.review.test_rules import edited
from tests.told import told, whole

FILE = Path(__file__).parent / "readings.yaml"
_HOMES = (sample_jobs(), FILE.parents[1] / "operations" / "jobs", FILE.parents[1] / "review" / "jobs")


@cache
def start(name: str) -> Job:
    """A job by its file's name, read once: it is a value."""
    return read_job(next(path for home in _HOMES if (path := home / f"{name}.yaml").exists()))


def changed(asked: dict) -> Job:
    """The job that is asked about."""
    return edited(start(asked["job"]), [tuple(one) for one in asked.get("edits", ())])


def reckoned(asked: dict) -> Reckoned:
    """It, reckoned; with what a log says of its machine where there is one."""
    job, reckoner = changed(asked), Reckoner()
    if "log" in asked:
        reckoner.take_proof(job.machine, snapshot_of(job.machine, _trials(asked), TODAY, reckoner.shop))
    return reckoner.reckon(job)


def _trials(asked: dict) -> tuple[Trial, ...]:
    """The demonstration's test cuts on that machine, some of them with another end."""
    text = (resources() / "proof" / f"{asked['log']}.txt").read_bytes()
    ends = asked.get("ends", {})
    return tuple(
        replace(one, outcome=ends.get(str(place), one.outcome))
        for place, one in enumerate(records_from(text)[0])
    )


@cache
def cabinet() -> Cabinet:
    """What the demonstration's workshop has."""
    return cabinet_from_text(
        (resources() / "cabinets" / "harrowmoss.yaml").read_text("utf-8"), "cabinet.yaml"
    )


def _parts(name: str, value: object, parts: tuple[str, ...]) -> Lines:
    """A line for each part of an answer that is there."""
    for part in parts:
        if (one := getattr(value, part)) is not None and one not in ((), ""):
            yield f"{name} {part}: {told(one)}"


def _step(found: Reckoned, operation: Operation) -> Lines:
    """Figures, limits and words of one step."""
    outcome, setting = found.operations[operation.key], found.settings[operation.key]
    kind, fields = kind_of(operation.kind), found.filled(operation).fields
    yield f"fields: {told(fields)}"
    yield f"around: {told((setting.extent, setting.pilot, setting.wound, setting.skin, setting.thickness))}"
    yield f"held: {told((setting.grip, setting.top, setting.load, setting.profile))}"
    if outcome.problem:
        yield f"problem: {outcome.problem}"
    if outcome.figures is not None:
        for one in outcome.figures.items:
            yield f"figure {told(one)}"
        yield from _parts("figures", outcome.figures, ("caveats", "missing_speed", "gaps", "edge"))
        for step in outcome.figures.working:
            yield f"working {step.figure} = {told(step.result)} by {step.formula} of {told(step.inputs)}"
    for limit in outcome.limits:
        yield f"limit {whole(limit)}"
    yield from _parts("row", outcome, ("rows", "dials"))
    yield f"governs: {outcome.governing.name if outcome.governing else 'nothing'}"
    yield f"roles: {told(kind.plays(fields))}"
    try:
        yield f"sweep: {told(kind.sweep(fields, setting))}"
        yield f"leaves: {told((kind.holes(fields), kind.takes_off(fields), kind.outline(fields)))}"
    except JobsheetError as error:
        yield f"no shape: {error}"
    yield f"needs: {told(tool_length(fields, setting))}"
    set_up = found.job.find(operation.key)[0]
    aim = aim_of(lying(set_up, stock_box(found.job)), setting.extent, found.job.units)
    yield f"words: {told((kind.title_of(fields), kind.words(fields), kind.row_words(fields, aim)))}"


def of_step(asked: dict) -> Lines:
    """All that is said of one step."""
    found = reckoned(asked)
    yield from _step(found, found.job.find(asked["of"])[1])


def of_answers(asked: dict) -> Lines:
    """What the machine answers about one step."""
    found = reckoned(asked)
    set_up, operation = found.job.find(asked["of"])
    *_, said = answers_in_parts(set_up, operation, found)
    yield from _parts("answers", said, ("readings", "headroom", "neighbours", "rivals", "deepest", "height"))
    if said.changed is not None:
        yield f"changed: {told(said.changed.edits)}"
        yield from _parts("changed", said.changed, ("values",))
        yield from _parts(
            "advised", said.changed.advised, ("values", "passes", "seconds", "rivals", "other_way")
        )
    setting, figures = found.settings[operation.key], found.operations[operation.key].figures
    for words, ask in (
        ("deepest pass", deepest_pass),
        ("widest pass", widest_pass),
        ("saw first", saw_first),
    ):
        try:
            yield f"{words}: {told(ask(operation, setting))}"
        except JobsheetError as error:
            yield f"no {words}: {error}"
    if kind_of(operation.kind).plays(operation.fields).hole == "drill":
        yield f"pilot for: {told(pilot_for(operation, setting))}"
    yield f"mends: {told(mends_for(operation, setting, figures))}"


def of_job(asked: dict) -> Lines:
    """What is said of a whole job."""
    found = reckoned(asked)
    yield f"time: {told((found.cutting_time, found.worst))}"
    yield f"minutes: {told(minutes_of_job(found))}"
    for key, one in found.operations.items():
        yield f"{key}: {one.problem or told((one.governing and (one.governing.name, one.governing.share, one.governing.verdict), [row.do for row in one.rows]))}"
    for need in job_needs(found):
        yield f"needs: {told((need.process, need.cutter_kind, need.steps, need.verdicts, need.why))}"
        yield from _ladder(need.ladder)
    yield f"cabinet: {told(look_through(found.job, cabinet()))}"


def of_fits(asked: dict) -> Lines:
    """What becomes of a job on another machine."""
    found = fits(changed(asked), asked["on"])
    yield f"changes: {told((found.dials_change, found.card_changed))}"
    for one in found.steps:
        yield f"step {told((one, one.changed, one.no_longer))}"
    yield f"fits: {told((found.fits, found.beyond))}"
    yield f"on it: {told(on_machine(changed(asked), find_card(asked['on'])))}"


def _ladder(ladder) -> Lines:
    if ladder is None:
        return
    yield f"ladder: {told((ladder.title, ladder.holding, ladder.grows, ladder.texts, ladder.refused, ladder.ends, ladder.words, ladder.inside))}"
    for one in ladder.capacities:
        known = {name: getattr(one, name) for name in one.__struct_fields__ if name != "cells"}
        yield f"known {told(known)}"
    if ladder.expected is not None:
        yield f"expected: {told(ladder.expected)}; {words_of(ladder.expected)}"
    for rung in ladder.rungs:
        values = {name: getattr(rung, name) for name in rung.__struct_fields__ if name != "figures"}
        yield f"rung {told(values)}"
        yield f"takes {told(takes_words(ladder.process, rung.asked, ladder.units))}"


def of_plan(asked: dict) -> Lines:
    """A ladder of test cuts, and what of the log is odd."""
    how = {name: one for name, one in asked.items() if name not in ("ask", "says", "log", "ends", "machine")}
    for name in ("chance", "growth"):
        if name in how:
            how[name] = float(how[name])
    trials = _trials(asked) if "log" in asked else ()
    yield from _ladder(plan(asked["machine"], date=TODAY, trials=trials, **how))
    if trials:
        known = snapshot_of(asked["machine"], trials, TODAY, Shop())
        yield f"odd: {told(odd_trials(known, Log(machine=asked['machine'], trials=trials)))}"


def of_inside(asked: dict) -> Lines:
    """The layers of one step as a ladder."""
    found = reckoned(asked)
    yield from _ladder(in_step(found, found.job.find(asked["of"])[1].number, date=TODAY))


def of_stopwatch(asked: dict) -> Lines:
    """What a stopped time says of one step."""
    found = reckoned(asked)
    operation = found.job.find(asked["of"])[1]
    by = {name: float(asked[name]) for name in ("seconds", "length", "turns") if name in asked}
    said = stopwatch(operation, found.settings[operation.key], **by)
    yield f"stopwatch: {told((said.feed, said.each, said.chip, said.pace, said.edits, said.found.limits))}"


def of_reach(asked: dict) -> Lines:
    """How far a machine goes in a metal."""
    found = reach(find_card(asked["machine"]), asked["material"], units=asked["units"])
    yield f"held: {found.held}"
    for one in (*found.passes, *found.tools):
        yield told({name: getattr(one, name) for name in one.__struct_fields__ if name not in ("at", "step")})


def of_card(asked: dict) -> Lines:
    """The page of what a machine carries in a metal."""
    found = card(find_card(asked["machine"]), asked["material"], units=asked["units"])
    yield f"held: {found.title}, {found.held}"
    for row in found.rows:
        yield f"row {told(row)}"


ASKS: dict[str, Callable[[dict], Lines]] = {
    "step": of_step,
    "answers": of_answers,
    "job": of_job,
    "fits": of_fits,
    "plan": of_plan,
    "inside": of_inside,
    "stopwatch": of_stopwatch,
    "reach": of_reach,
    "card": of_card,
    "log": lambda asked: kept_asks.of_log(asked, _trials(asked)),
    "rung": lambda asked: kept_asks.of_rung(asked, _trials(asked) if "log" in asked else ()),
    "ran": lambda asked: kept_asks.of_ran(asked, reckoned(asked)),
    "days": lambda asked: kept_asks.of_days(asked, reckoned(asked)),
    "picks": lambda asked: kept_asks.of_picks(asked, reckoned(asked), cabinet()),
    "paces": kept_asks.of_paces,
    "look": kept_asks.of_look,
}


def reading(asked: dict) -> list[str]:
    """What is said, a line for each thing; a refusal is said too."""
    lines: list[str] = []
    try:
        with on_day(TODAY):
            lines.extend(ASKS[asked["ask"]](asked))
    except JobsheetError as error:
        lines.append(f"refused: {error}")
    return lines


def questions() -> list[dict]:
    """What is asked, with what was said of it."""
    return yaml.load(FILE.read_text(encoding="utf-8"), yaml.CBaseLoader)


def write(kept: list[dict]) -> None:
    """Write every question with what is said of it now."""
    lines = []
    for one in kept:
        first = "- "
        for name, value in one.items():
            if name != "says":
                lines.append(f"{first}{name}: {json.dumps(value, ensure_ascii=False)}")
                first = "  "
        lines.append("  says:")
        lines += [f"    - {json.dumps(line, ensure_ascii=False)}" for line in reading(one)]
    FILE.write_text("\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    write(questions())
