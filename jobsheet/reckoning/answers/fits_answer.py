"""A job on another machine's card: what changes in every step, and what no longer fits."""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.limits.register import governing
from jobsheet.machine.spindle import at_speed
from jobsheet.model.figure import Limit
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.machine import Machine
from jobsheet.model.quantity import Quantity
from jobsheet.model.shop import Shop
from jobsheet.reckoning.answers.readings import readings_of
from jobsheet.reckoning.reckoner import Outcome, Reckoned, Reckoner
from jobsheet.reckoning.what_if import tried
from jobsheet.storage.card_files import card_digest, find_card, planned_for


class Side(Struct, frozen=True, kw_only=True):
    """One step on one machine: what is set, what the torque takes, and the limit nearest to giving out."""

    spindle: str = ""
    pace: str = ""
    seconds: str = ""
    torque_share: float | None = None
    governing: str = ""
    verdict: str = ""
    beyond: tuple[Limit, ...] = ()
    untried: tuple[Limit, ...] = ()
    problem: str = ""


class StepFit(Struct, frozen=True, kw_only=True):
    """One step on both; `retyped` is the speed that is set where the typed one
    is none of the other machine's.
    """

    key: str
    number: int
    title: str
    before: Side | None
    after: Side
    retyped: str = ""

    @property
    def changed(self) -> bool:
        """Whether anything that is set or judged is another."""
        return self.before is None or bool(self.retyped) or self.before != self.after

    @property
    def no_longer(self) -> tuple[Limit, ...]:
        """The limits that are beyond on the other machine and were not before."""
        known = {limit.name for limit in self.before.beyond} if self.before is not None else set()
        return tuple(limit for limit in self.after.beyond if limit.name not in known)


class Fit(Struct, frozen=True, kw_only=True):
    """A whole job on another card. `dials_change` says that every reading is redone; `card_changed` that
    the job's own card is another now.
    """

    job: Job
    other: Job
    machine: Machine
    steps: tuple[StepFit, ...]
    dials_change: bool
    card_changed: bool

    @property
    def beyond(self) -> tuple[tuple[StepFit, Limit], ...]:
        """Everything that is beyond on the other machine."""
        return tuple((step, limit) for step in self.steps for limit in step.after.beyond)

    @property
    def fits(self) -> bool:
        """Whether every step can be reckoned there and nothing is beyond."""
        return not self.beyond and not any(step.after.problem for step in self.steps)


def fits(job: Job, name: str, shop: Shop | None = None) -> Fit:
    """The job on the card of that name; on its own card it only says whether that was changed since.

    Raises
    ------
    NoSuchEntry, DocumentError
        If there is no such card, or it or the material cannot be used.
    """
    machine = find_card(name)
    other, retyped = for_card(job, machine, shop)
    after = Reckoner(shop, learns=True).reckon(other)
    before: Reckoned | None = None
    try:
        before = Reckoner(shop, learns=True).reckon(job)
        own: Machine | None = find_card(job.machine)
    except JobsheetError:
        own = None  # planned for a card that is not here: there is nothing to compare with
    steps = tuple(
        StepFit(
            key=operation.key, number=operation.number, title=after.operations[operation.key].title,
            before=_side(before.operations[operation.key]) if before is not None else None,
            after=_side(after.operations[operation.key]), retyped=retyped.get(operation.key, ""),
        )
        for _, operation in other.operations()
    )  # fmt: skip
    dials = own is None or before is None or _readings(job, before, own) != _readings(other, after, machine)
    return Fit(
        job=job, other=other, machine=machine, steps=steps, dials_change=dials, card_changed=card_changed(job)
    )


def card_changed(job: Job) -> bool:
    """Whether the card that the job was planned with is another one today."""
    try:
        return bool(job.card_hash) and card_digest(job.machine) != job.card_hash
    except JobsheetError:
        return False


def for_card(job: Job, machine: Machine, shop: Shop | None = None) -> tuple[Job, dict[str, str]]:
    """The job for another card, and by key the speeds that were put in place of those that it has not."""
    other = planned_for(job, machine.name)
    settings = Reckoner(shop).reckon(other).settings
    retyped: dict[str, str] = {}
    set_ups: list[SetUp] = []
    for set_up in other.set_ups:
        operations = []
        for operation in set_up.operations:
            changed, text = _at_its_speeds(operation, machine, settings[operation.key])
            operations.append(changed)
            if text:
                retyped[operation.key] = text
        set_ups.append(replace(set_up, operations=tuple(operations)))
    return replace(other, set_ups=tuple(set_ups)), retyped


def _at_its_speeds(operation: Operation, machine: Machine, setting: Any) -> tuple[Operation, str]:
    """A step whose typed speed the machine has not, with the nearest that it has."""
    typed = getattr(operation.fields, "spindle", None)
    if typed is None or at_speed(machine, typed.value) is not None:
        return operation, ""
    speed = tried(operation.kind, operation.fields, setting).value("spindle_speed")
    step = at_speed(machine, speed) if speed is not None else None
    if step is None:
        return operation, ""
    text = f"{step.marked} rpm"
    fields = replace(operation.fields, spindle=Quantity(step.speed, text))
    return replace(operation, fields=fields), text


def _side(outcome: Outcome) -> Side:
    figures = outcome.figures
    if figures is None:
        return Side(problem=outcome.problem)
    torque = next((limit for limit in outcome.limits if limit.name == "spindle-torque"), None)
    worst = governing(outcome.limits)
    return Side(
        spindle=figures.shown("spindle_speed"), pace=figures.shown("handle_pace"), seconds=figures.shown("seconds_a_turn"),
        torque_share=torque.share if torque is not None else None, governing=worst.title if worst is not None else "",
        verdict=worst.verdict if worst is not None else "",
        beyond=tuple(limit for limit in outcome.limits if limit.verdict == "beyond"),
        untried=tuple(limit for limit in outcome.limits if limit.verdict == "not tried"),
    )  # fmt: skip


def _readings(job: Job, reckoned: Reckoned, machine: Machine) -> list[Any]:
    """Every reading of a job as text."""
    rows: list[Any] = []
    for set_up in job.set_ups:
        for readings in readings_of(set_up, reckoned, machine):
            stops = [stop for at in readings.places for stop in (at.x, at.y)]
            rows.append([stop.dial if stop is not None else "" for stop in (*stops, *readings.depths)])
    return rows
