"""Reminders: what is true of a step and said beside it, never counted and never
asking for an answer. Data, not rules.

Each is said once in a set-up, where it first applies, and at most three stand
beside a step: more would not be read.
"""

from __future__ import annotations

from functools import cache
from typing import Any

from msgspec import Struct

from jobsheet.catalog.reading.data import shipped
from jobsheet.holdings.all_holdings import roles_of
from jobsheet.machine.card_words import largest_drill
from jobsheet.machine.spindle import steps
from jobsheet.model.job import Job, Operation
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.quantity import Depth, Size
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.notes.notes import set_up_facts, sheet_facts, step_facts
from jobsheet.review.notes.triggers import holds

#: So many stand beside a step.
BESIDE = 3
#: A hole deeper than so many diameters is deep (common practice).
DEEP = 8
#: A drill above this share of the machine's noted largest is near it (common practice).
NEAR = 0.8
#: Growth of metals for ten degrees, by family [m/m] (linear expansion, CTE3; trade tables).
GROWTH = {"aluminium": 23e-5, "steel": 12e-5, "stainless": 16e-5, "copper": 18e-5, "iron": 10.5e-5}


class Reminder(Struct, frozen=True):
    """One row of the data."""

    id: str
    where: str
    trigger: str
    text: str
    source: str


class Reminders(Struct, frozen=True):
    """What is said: on the sheet, at the head of each set-up, as ticks of each
    set-up, beside each step, by key.
    """

    sheet: tuple[Reminder, ...]
    set_ups: dict[str, tuple[Reminder, ...]]
    ticks: dict[str, tuple[Reminder, ...]]
    steps: dict[str, tuple[Reminder, ...]]


@cache
def rows() -> tuple[Reminder, ...]:
    """Every reminder there is, in the order in which they are said."""
    return tuple(
        Reminder(name, row["where"], row["trigger"], row["text"], row["source"])
        for name, row in shipped("reminders.yaml")["reminders"].items()
    )


def reminders_for(job: Job, reckoned: Reckoned) -> Reminders:
    """The reminders that this job calls up."""
    base = sheet_facts(job) | _job_facts(job)
    sheet = tuple(row for row in rows() if row.where == "sheet" and holds(row.trigger, base))
    set_ups: dict[str, tuple[Reminder, ...]] = {}
    ticks: dict[str, tuple[Reminder, ...]] = {}
    beside: dict[str, tuple[Reminder, ...]] = {}
    for index, set_up in enumerate(job.set_ups):
        head = base | set_up_facts(set_up, reckoned) | _set_up_facts(job, index)
        of_set_up = [row for row in rows() if row.where in ("set-up", "tick", "trainee")]
        fired = [row for row in of_set_up if holds(row.trigger, head)]
        set_ups[set_up.key] = tuple(row for row in fired if row.where != "tick")
        ticks[set_up.key] = tuple(
            row
            for row in of_set_up
            if row.where == "tick" and holds(row.trigger, head | {"sheet": index == 0})
        )
        said: set[str] = {row.id for row in fired}
        for operation in set_up.operations:
            facts = head | step_facts(operation) | _step_facts(operation, reckoned)
            reminders = [
                row
                for row in rows()
                if row.where in ("step", "trainee") and row.id not in said and holds(row.trigger, facts)
            ][:BESIDE]
            said.update(row.id for row in reminders)
            beside[operation.key] = tuple(reminders)
    return Reminders(sheet, set_ups, ticks, beside)


def _job_facts(job: Job) -> dict[str, Any]:
    """What is true of the whole job."""
    faced = {
        set_up.up
        for set_up in job.set_ups
        if any(roles(operation).mills == "flat" for operation in set_up.operations)
    }
    facts: dict[str, Any] = {"job.squaring": len(faced) >= 3, "job.many": job.part.quantity > 1}
    from jobsheet.errors import JobsheetError
    from jobsheet.storage.card_files import find_card

    try:
        dials = {handle.dial for handle in find_card(job.machine).handles if handle.name in ("x", "y")}
    except JobsheetError:
        return facts
    facts["job.units-differ"] = bool(dials - {job.units})
    return facts


def _set_up_facts(job: Job, index: int) -> dict[str, Any]:
    set_up = job.set_ups[index]
    plays = roles_of(set_up.holding)
    faced = [
        set_up.up
        for set_up in job.set_ups[:index]
        if any(roles(operation).mills == "flat" for operation in set_up.operations)
    ]
    vice = plays.jaws
    return {
        "holding.kind": "vice" if vice else "straps" if plays.on_top else "other" if plays.holds else "",
        "holding.parallels": getattr(set_up.holding, "rests_on", None) == "parallels",
        "set-up.third": _third(set_up.up, tuple(dict.fromkeys(faced))),
        "set-up.upright": vice and set_up.up in ("left", "right"),
        "set-up.positions": any(getattr(operation.fields, "at", None) for operation in set_up.operations),
        "set-up.after-a-cut": any(
            "milling" in kind_of(o.kind).groups for set_up in job.set_ups[:index] for o in set_up.operations
        ),
        "set-up.last": index == len(job.set_ups) - 1,
    }


def _third(up: str, faced: tuple[str, ...]) -> str:
    """Opposite which of the two faces before it the third is; nothing where it
    is no third, or opposite neither.
    """
    if len(faced) != 2:
        return ""
    return {OPPOSITE[faced[0]]: "opposite-first", OPPOSITE[faced[1]]: "opposite-second"}.get(up, "")


def _step_facts(operation: Operation, reckoned: Reckoned) -> dict[str, Any]:
    """What is true of a step beyond what the safety notes ask."""
    fields = operation.fields
    outcome, setting = reckoned.operations.get(operation.key), reckoned.settings.get(operation.key)
    figures = outcome.figures if outcome is not None else None
    size, asked = getattr(fields, "measure", None), getattr(fields, "tolerances", None)
    limits = isinstance(size, Size) and size.high > size.low
    places = tuple(getattr(fields, "at", None) or ())
    facts: dict[str, Any] = {
        "sizes.limits": limits,
        "sizes.positions": bool(places),
        "sizes.flatness": bool(asked and asked.flat),
        "sizes.finish": bool(asked and asked.finish),
        "slot.second-side": getattr(fields, "path", None) is not None
        and getattr(fields, "side", "") == "rear",
        "step.passes": (figures.value("passes") or figures.value("layers") or 1.0)
        if figures is not None
        else 1.0,
    }
    cutter = getattr(fields, "cutter", None)
    depth = getattr(fields, "depth", None)
    diameter = cutter.diameter if cutter is not None else None
    if diameter and isinstance(depth, Depth):
        deep = depth.value if depth.value is not None else (setting.thickness if setting is not None else 0.0)
        facts["hole.deep"] = deep > DEEP * diameter
    if setting is None or figures is None:
        return facts
    handle = setting.machine.handle("x")
    if handle is not None and places:
        facts["position.turns"] = max(abs(place.x.value) for place in places) >= handle.travel
    wanted, known = figures.value("wanted_speed"), steps(setting.machine)
    if wanted and known and roles(operation).hole != "tap":
        around = [step.speed for step in known]
        facts["speed.between"] = (
            min(around) < wanted < max(around) and min(abs(one / wanted - 1) for one in around) > 0.15
        )
    if cutter is not None and cutter.kind == "drill" and diameter:
        noted = largest_drill(setting.machine)
        if noted:
            facts["drill.near-largest"] = diameter > NEAR * noted
    growth = GROWTH.get(setting.material.family)
    if limits and growth and isinstance(size, Size):
        facts["sizes.grows"] = size.nominal * growth > (size.high - size.low) / 4
    return facts
