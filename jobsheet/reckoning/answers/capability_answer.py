"""What a machine will carry in chosen metals, as one card; two machines side by side on the same work.

Each row answers the same question of each machine: the deepest pass of a usual cutter, the largest drill, the
largest tap. Beside the answer stands the band: what it would be if the machine carried as little, as
much as the middle, and as much as its learned capacity allows nine times in ten. Where nothing was
tried the card's band stands there.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from jobsheet.limits.each.chatter import is_measured
from jobsheet.model.capacity import Capacity
from jobsheet.model.job import Job
from jobsheet.model.machine import Machine
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.model.trials import LEARNED
from jobsheet.operations.registry import roles
from jobsheet.reckoning.answers.capability_rows import Capability, Card, OnMachine, Row
from jobsheet.reckoning.answers.fits_answer import fits, for_card
from jobsheet.reckoning.answers.inverse import FROM_CLASS, PLANNED, length_shown, with_depth
from jobsheet.reckoning.answers.largest import Largest, drill_within, tap_within
from jobsheet.reckoning.answers.reach_answer import Pass, reach
from jobsheet.reckoning.answers.what_next import shown_by
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.known_capacity import capacities_of
from jobsheet.reckoning.minutes import minutes_of_job
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.what_if import Tried, at_speed, tried

#: The rows of a card among all that a machine is asked for: no widths, and the drill from solid alone.
_PASSES = {"face": "deepest facing", "slot": "deepest slot", "side": "deepest side cut"}
_TOOLS = {"largest drill from solid": "drill", "largest tap": "tap"}
#: The band of a pass is sought to a share of this.
_NEAR = 1e-4


def capability(
    machines: Sequence[Machine], materials: Sequence[str], *, units: str = "mm", job: Job | None = None,
    shop: Shop | None = None,
) -> Capability:  # fmt: skip
    """The cards of one or two machines in these metals.

    Raises
    ------
    NoSuchEntry
        If there is no such material, or the job's own is not there.
    """
    cards = tuple(
        tuple(card(machine, metal, units=units, shop=shop) for machine in machines) for metal in materials
    )
    on = tuple(on_machine(job, machine, shop) for machine in machines) if job is not None else ()
    return Capability(machines=tuple(machines), materials=cards, units=units, job=job, on=on)


def card(machine: Machine, material: str, *, units: str = "mm", shop: Shop | None = None) -> Card:
    """What this machine will carry in this metal, held in its own vice. Raises NoSuchEntry."""
    found = reach(machine, material, units=units, shop=shop)
    passes = {roles(one.step).process: one for one in found.passes if one.answer.what == "deepest pass"}
    rows = [_of_pass(passes[process], words, found.setting) for process, words in _PASSES.items()]
    rows += [
        _of_tool(largest, _TOOLS[largest.what], found.setting)
        for largest in found.tools
        if largest.what in _TOOLS
    ]
    return Card(
        machine=machine, material=material, title=found.setting.material.title, held=found.held, rows=tuple(rows),
        proof=found.setting.proof,
    )  # fmt: skip


# --- passes -------------------------------------------------------------------------------------------------


def _known(setting: Setting, process: str, cutter_kind: str) -> tuple[Capacity, ...]:
    return capacities_of(setting.proof, process, cutter_kind, measured=is_measured(setting.machine))


def _of_pass(deepest: Pass, words: str, setting: Setting) -> Row:
    answer, units = deepest.answer, setting.units
    cutter = deepest.step.fields.cutter
    known = _known(setting, roles(deepest.step).process, cutter.kind)
    at, sizes = answer.at, [None, None, None]
    if at is not None:
        sizes = [_deepest(deepest, at, setting, known, end) for end in range(3)]  # type: ignore[misc]
    shown = [length_shown(size, units) or "–" for size in sizes]
    planned = answer.plan
    there = _at(deepest, at, setting, planned)
    governing = there.governing if there is not None else None
    untried = there is not None and any(limit.from_class for limit in there.limits)
    wide = deepest.words.partition(" ")[2] if roles(deepest.step).process != "slot" else ""
    size = wide.replace("cut ", "") if wide else ""
    stops = answer.stops
    if planned is not None and planned == answer.untried and answer.untried_limit is not None:
        stops = f"{answer.untried_limit.title.lower()}: {answer.untried_words}"
    return Row(
        what=f"{words} {size}".strip(), cutter=f"{deepest.cutter}, {deepest.feed}", plan=answer.plan_shown, plan_size=planned,
        verdict=FROM_CLASS if untried else governing.verdict if governing is not None else "beyond",
        low=shown[0], middle=shown[1], high=shown[2], stops=stops,
        words="cut before" if not untried and governing is not None and governing.verdict == "cut before" else PLANNED,
        proved=any(each.spoke for each in known),
        shown=shown_by(setting.proof, roles(deepest.step).process, cutter.kind, known, learned=shown[0] != shown[2]),
        speed=there.value("spindle_speed") if there is not None else None,
        torque=there.value("torque") if there is not None else None,
    )  # fmt: skip


def _at(one: Pass, at: Tried | None, setting: Setting, depth: float | None) -> Tried | None:
    """The cut at a depth, at the speed that the answer was found with."""
    if at is None or depth is None:
        return at
    fields = at_speed(with_depth(one.step.fields, depth), at.value("spindle_speed"))
    return tried(one.step.kind, fields, setting)


def _deepest(one: Pass, at: Tried, setting: Setting, known: Sequence[Capacity], end: int) -> float | None:
    """How deep it goes while every learned limit is asked no more than one end of its
    band; the others as in the answer.
    """
    room = {each.limit: (each.low, each.median, each.high)[end] for each in known}
    most = one.answer.tight if one.answer.stopped is None or one.answer.stopped.name not in LEARNED else None
    low, high = 1e-5, most or 3.0 * (one.step.fields.cutter.diameter or 0.01)

    def within(depth: float) -> bool:
        found = _at(one, at, setting, depth)
        if found is None or found.figures is None:
            return False
        return all(each.share <= room.get(each.limit, math.inf) for each in asked_of(found.figures, setting))

    if not within(low):
        return None
    if within(high):
        return high
    while high - low > _NEAR * high:
        middle = (low + high) / 2
        low, high = (middle, high) if within(middle) else (low, middle)
    return low


# --- tools --------------------------------------------------------------------------------------------------


def _fed(largest: Largest) -> str:
    """At which feed the largest drill is asked: the usual one, or less where that is too much."""
    feed = largest.at.shown("feed_per_turn") if largest.at is not None else ""
    return f"{feed} a turn" if feed else "usual feed"


def _of_tool(largest: Largest, process: str, setting: Setting) -> Row:
    known = _known(setting, process, process)
    by_power = process == "drill" or largest.way == "under power"
    shown = ["–", "–", "–"]
    if by_power and (largest.expected or largest.tight):
        shown = [_tool_within(process, setting, known, end) for end in range(3)]
    governing = largest.at.governing if largest.at is not None else None
    # Where the hand or the drill itself stops it, test cuts would never come to what is learned.
    learned = (
        by_power and shown[0] != shown[2] and largest.stopped is not None and largest.stopped.name in LEARNED
    )
    return Row(
        what=f"{largest.what}, {largest.way}" if largest.way else largest.what, cutter=_fed(largest) if process == "drill" else "coarse thread, usual drill",
        plan=largest.expected or largest.tight or "–", plan_size=largest.expected_size or largest.tight_size,
        verdict=governing.verdict if governing is not None else "beyond", low=shown[0], middle=shown[1], high=shown[2],
        shown=shown_by(setting.proof, process, process, known, learned=learned, turns=by_power),
        stops=largest.stops, words=largest.words, note=largest.note, proved=by_power and any(each.spoke for each in known),
        speed=largest.at.value("spindle_speed") if largest.at is not None and by_power else None,
        torque=largest.at.value("torque") if largest.at is not None and by_power else None,
    )  # fmt: skip


def _tool_within(process: str, setting: Setting, known: Sequence[Capacity], end: int) -> str:
    """The largest drill or thread that asks the spindle no more than one end of
    its band, and nothing else beyond.
    """
    room = {each.limit: (each.low, each.median, each.high)[end] for each in known}
    spindle = ("spindle-torque", "spindle-power")

    def judge(found: Tried) -> bool:
        if found.figures is None:
            return False
        if any(limit.verdict == "beyond" and limit.name not in spindle for limit in found.limits):
            return False
        return all(each.share <= room.get(each.limit, math.inf) for each in asked_of(found.figures, setting))

    if process == "drill":
        size = drill_within(setting, judge)
        return size.name if size is not None else "–"
    return tap_within(setting, judge) or "–"


# --- a job on each ------------------------------------------------------------------------------------------


def on_machine(job: Job, machine: Machine, shop: Shop | None = None) -> OnMachine:
    """The same job on a machine: its minutes there, and what is beyond. Raises NoSuchEntry."""
    there = job if job.machine == machine.name else for_card(job, machine, shop)[0]
    reckoned = Reckoner(shop, learns=True).reckon(there)
    fit = fits(job, machine.name, shop)
    cuts = []
    for _, operation in there.operations():
        figures = reckoned.operations[operation.key].figures
        speed, torque = (
            (figures.value("spindle_speed"), figures.value("torque")) if figures is not None else (None, None)
        )
        if speed is not None and torque is not None:
            cuts.append((operation.number, speed, torque))
    beyond = [
        (step.number, f"{limit.title.lower()}: {limit.sentence or limit.shown}") for step, limit in fit.beyond
    ]
    beyond += [(step.number, step.after.problem) for step in fit.steps if step.after.problem]
    return OnMachine(
        machine=machine, minutes=minutes_of_job(reckoned), fits=fit.fits, beyond=tuple(sorted(beyond)),
        cuts=tuple(cuts),
    )  # fmt: skip
