"""A ladder inside the job: the roughing layers of a real step as rungs, so that learning costs
no test steel and ends at the size.

Each layer asks at most what a rung may; together they are just the depth of the step. Nothing of the
plan is changed: the sheet of the ladder is taken to the machine in place of the step's own layers,
and each layer is entered as it went.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from msgspec.structs import replace

from jobsheet.clock import today
from jobsheet.errors import CommandError
from jobsheet.holdings.all_holdings import words_of
from jobsheet.limits.each.chatter import is_measured
from jobsheet.machine.handles import dial_text, reading
from jobsheet.model.capacity import Capacity
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.model.trials import MILLED, MILLING
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import depth_handle
from jobsheet.proving.chance import chance_over
from jobsheet.reckoning.asked import asked_of
from jobsheet.reckoning.known_capacity import after_clean, capacities_of, last_clean
from jobsheet.reckoning.ladder import ladder_cuts as cuts
from jobsheet.reckoning.ladder import ladder_refused as refused_by
from jobsheet.reckoning.ladder.ladder_attempt import Made
from jobsheet.reckoning.ladder.ladder_climb import finished
from jobsheet.reckoning.ladder.ladder_expected import with_expected
from jobsheet.reckoning.ladder.ladders import STOP_WORDS
from jobsheet.reckoning.ladder.rung import Ladder, Rung
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.reckoning.what_if import tried, with_texts

#: More layers than this are no ladder but a day's work.
MOST = 12
#: What is left of a depth under so much of a layer goes into the one before (common practice: nothing rubs).
SCRAP = 0.25
START = (
    "In the part itself: these layers stand in place of the step's own. The next one only after a clean one, none left out.",
    "After the first sign go on with layers as deep as the last clean one, and write down what happened.",
)


def in_step(reckoned: Reckoned, number: int, *, date: str = "") -> Ladder:
    """The layers of that step as rungs; with the reason instead where it has none that could teach.

    Raises
    ------
    CommandError
        If the job has no such step, or it is not milled in layers.
    """
    found = next(
        ((at, operation) for at, operation in reckoned.job.operations() if operation.number == number), None
    )
    if found is None:
        there = ", ".join(str(operation.number) for _, operation in reckoned.job.operations())
        raise CommandError(f"There is no step {number} in this job; there are {there}.")
    set_up, operation = found
    process, setting = roles(operation).process, reckoned.settings.get(operation.key)
    if process not in (*MILLING, *MILLED) or setting is None or not hasattr(operation.fields, "layer"):
        raise CommandError(f"Step {number} is not milled in layers: there is no ladder inside it.")
    outcome = reckoned.operations[operation.key]
    if outcome.figures is None:
        raise CommandError(outcome.problem or f"Step {number} cannot be reckoned.")
    each = _layer(operation, setting)
    whole = each * outcome.figures.count("layers")
    known = capacities_of(
        setting.proof, process, operation.fields.cutter.kind, measured=is_measured(setting.machine)
    )
    ladder = Ladder(
        machine=setting.machine, process=process, kind=operation.kind, cutter=operation.fields.cutter,
        material=reckoned.job.material, units=setting.units, setting=setting, date=date or today(), holding=words_of(set_up.holding),
        start=START, stop=STOP_WORDS, chance=setting.shop.proof_chance, inside=_named(reckoned, number), capacities=known, up_to=_asked(operation, setting, each),
    )  # fmt: skip
    refused = refused_by.by_material(setting.material) or refused_by.by_cutter(operation.fields.cutter)
    if refused:
        return replace(ladder, refused=refused)
    return with_expected(_climbed(ladder, operation, each, whole))


def _named(reckoned: Reckoned, number: int) -> str:
    part = reckoned.job.part.number
    return f"{part}, step {number}" if part else f"step {number}"


def _layer(operation: Operation, setting: Setting) -> float:
    """How deep a layer of the step is as it is planned [m]."""
    found = tried(operation.kind, operation.fields, setting)
    for step in found.figures.working if found.figures is not None else ():
        if step.figure == "cutting_stiffness":
            return float(dict(step.inputs)["depth"])
    raise CommandError(f"Step {operation.number} has no depth that could grow.")


def _asked(operation: Operation, setting: Setting, depth: float) -> tuple[tuple[str, float], ...]:
    return tuple((asked.limit, asked.share) for asked in _made(operation, setting, depth).asked)


def _made(operation: Operation, setting: Setting, depth: float) -> Made:
    """One layer of the step as deep as that [m], all else as it is planned."""
    text = cuts.size_text(depth, setting.units)
    fields = replace(
        with_texts(operation.kind, operation.fields, (("depth", text),), setting.units), layer=None
    )
    found = tried(operation.kind, fields, setting)
    asked = asked_of(found.figures, setting) if found.figures is not None else ()
    names = [entry.name for entry in kind_of(operation.kind).entries]
    texts = {name: getattr(getattr(fields, name, None), "text", "") for name in names}
    return Made(
        name=text, cutter=fields.cutter, texts={name: text for name, text in texts.items() if text}, found=found, asked=asked
    )  # fmt: skip


def _climbed(ladder: Ladder, operation: Operation, planned: float, whole: float) -> Ladder:
    """Layers that grow as rungs do, never over the planned one, and end at the depth of the step."""
    from jobsheet.proving.rungs import next_share

    capacities = {capacity.limit: capacity for capacity in ladder.capacities}
    last: dict[str, float | None] = {limit: last_clean(capacity) for limit, capacity in capacities.items()}
    least, done = cuts.LEAST[ladder.units]["depth"], 0.0
    rungs: list[Rung] = []
    while whole - done > least / 2:
        targets = {
            limit: next_share(capacity, last[limit] if limit == "chatter" else None, ladder.chance)
            for limit, capacity in capacities.items()
        }
        spent = next((limit for limit, target in targets.items() if target is None), None)
        if spent is not None and not rungs:
            return replace(
                ladder,
                refused="Such cuts ended badly here before, or nothing above the last clean one has so small a chance.",
            )
        depth = planned if spent is not None else _deepest(ladder, operation, planned, targets)
        if depth < least:
            return replace(
                ladder,
                refused=f"Even {cuts.size_text(least, ladder.units)} asks more than may be tried: another cutter, or less wide.",
            )
        if not rungs and depth > planned * 0.98:
            return replace(
                ladder,
                refused="The layer as it is planned is no more than may be tried at once: cut it, and write down how it went.",
            )
        depth = _of_the_rest(depth, whole - done, least)
        rung, made = _rung(ladder, operation, depth, done, len(rungs) + 1, capacities, last)
        rungs.append(rung)
        done += depth
        for asked in made.asked:
            capacities[asked.limit] = after_clean(capacities[asked.limit], asked.share)
            last[asked.limit] = max(asked.share, last[asked.limit] or 0.0)
        if len(rungs) > MOST:
            return replace(
                ladder, refused=f"That would be over {MOST} layers: prove it in scrap first (prove needs)."
            )
    return replace(
        ladder, rungs=tuple(rungs), ends=f"{cuts.size_text(whole, ladder.units)} deep: the step is done."
    )


def _deepest(
    ladder: Ladder, operation: Operation, planned: float, targets: Mapping[str, float | None]
) -> float:
    """The deepest layer that asks no more than it may, set as a dial sets it; the planned one at most [m]."""

    def within(depth: float) -> bool:
        asked = _made(operation, ladder.setting, depth).asked
        return all(other.share <= (targets.get(other.limit) or math.inf) * (1 + 1e-6) for other in asked)

    if within(planned):
        return planned
    low, high = 0.0, planned
    for _ in range(16):
        middle = (low + high) / 2
        low, high = (middle, high) if within(max(middle, 1e-6)) else (low, middle)
    return cuts.settled(low, ladder.units, finest=True)


def _of_the_rest(depth: float, rest: float, least: float) -> float:
    """The layer, or all that is left where the next one would only rub."""
    left = rest - depth
    if left <= 0:
        return rest
    return rest / 2 if left < max(SCRAP * depth, least) and rest / 2 >= least else depth


def _rung(
    ladder: Ladder,
    operation: Operation,
    depth: float,
    done: float,
    number: int,
    capacities: Mapping[str, Capacity],
    last: Mapping[str, float | None],
) -> tuple[Rung, Made]:
    """One layer as a rung: its dial stands at all that is cut so far."""
    made = _made(operation, ladder.setting, depth)
    rung = finished(ladder, made, number, capacities, last, chance_over)
    handle = depth_handle(ladder.setting.machine)
    if handle is not None:
        start = ladder.setting.wound or 0.0
        rung = replace(
            rung, dial=dial_text(handle, reading(handle, start + done + depth)), handle=handle.name
        )
    return rung, made
