"""Figures to work out, made from what a job's own steps ask: speed, the machine's step,
feed, pace, dial, tap drill, layers.

Every question gives the figures that it needs, so that a slip costs once. How near is right is the
reference's table on lessons, section 4 (the project's own proposal); the formulas are definitions, and are
written here as they are worked on paper, apart from the ones the program reckons with.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import ceil, pi

from msgspec import Struct

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.catalog.tools.threads import tap_drill
from jobsheet.cutting.tapping import percent_of_thread
from jobsheet.lessons.questions import Question, Slipped
from jobsheet.lessons.seeds import Draws
from jobsheet.machine.handles import last_line, reading, scale_text
from jobsheet.machine.spindle import steps as speeds_of
from jobsheet.model.machine import Handle
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.review.plan.faces import Step, plan_of
from jobsheet.review.plan.zero_faces import letters_at_zero
from jobsheet.review.rule import View
from jobsheet.review.rules.threads.thread_height_in_bounds import BOUNDS
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: How near is right: a speed, as 320 v/D, 300 v/D and 4 CS/D all pass; a feed; a
#: pace [turns a minute]; a dial [lines].
SPEED, FEED, PACE, LINE = 0.06, 0.02, 0.5, 1
#: The nearest line is right, of two that are as near both [lines].
HALF = 0.51
BENCH = "common practice, no source"


class Units(Struct, frozen=True, kw_only=True):
    """The units of a job as a bench writes them: a length, a cutting speed, and
    how many of the length are in it.
    """

    length: str
    metre: float
    speed: str
    speeds: float
    factor: float

    def size(self, value: float, decimals: int = 2) -> str:
        """A length [m] as it is written."""
        return trimmed(value / self.metre, decimals + (2 if self.length == "in" else 0))


METRIC = Units(length="mm", metre=1e-3, speed="m/min", speeds=1 / 60, factor=1000.0)
IMPERIAL = Units(length="in", metre=INCH, speed="ft/min", speeds=12 * INCH / 60, factor=12.0)
Maker = Callable[[Step, Units, View], Iterator[Question]]


def figure_questions(
    reckoned: Reckoned, draws: Draws, count: int, keys: frozenset[str] = frozenset()
) -> tuple[Question, ...]:
    """So many questions at most, each of another sort as long as there are sorts,
    about steps of these keys or of all.
    """
    view = View(reckoned.job, reckoned)
    units = IMPERIAL if reckoned.job.units == "in" else METRIC
    steps = [step for step in plan_of(view).steps if not keys or step.key in keys]
    chosen: list[Question] = []
    used: set[str] = set()
    for maker in draws.shuffled(MAKERS):
        made = [
            (step, question)
            for step in steps
            for question in maker(step, units, view)
            if not _tells(question, chosen)
        ]
        fresh = [pair for pair in made if pair[0].key not in used] or made
        if fresh and len(chosen) < count:
            step, question = draws.chosen(fresh)
            used.add(step.key)
            chosen.append(question)
    return tuple(sorted(chosen, key=lambda question: _SORTS.index(question.kind)))


def _tells(question: Question, others: list[Question]) -> bool:
    """Whether one question has the answer of another in it."""
    return any(other.answer in question.ask or question.answer in other.ask for other in others)


def _tool(step: Step) -> str:
    name = short_name(step.fields.cutter)
    return name[:1].upper() + name[1:]


def _speed(step: Step, units: Units, view: View) -> Iterator[Question]:
    edge = step.figures.edge if step.figures is not None else None
    cutter = getattr(step.fields, "cutter", None)
    if edge is None or cutter is None or not cutter.diameter or not step.roles.speed:
        return
    wide = cutter.diameter / units.metre
    speed = max(1, round(edge.start / units.speeds))
    exact = units.factor * speed / (pi * wide)
    yield Question(
        kind="speed", unit="rpm",
        ask=f"{_tool(step)}, {view.job.material}, at {speed} {units.speed}. How many turns a minute is that, before you look at the machine?",
        working=(f"n = {units.factor:.0f} × {speed} ÷ (π × {trimmed(wide, 3)})",), answer=f"{exact:.0f} rpm",
        low=ceil(exact * (1 - SPEED)), high=exact * (1 + SPEED), tolerance=f"{ceil(exact * (1 - SPEED))} to {int(exact * (1 + SPEED))}",
        source=BENCH,
        slips=(
            Slipped(value=2 * exact, what="the radius was taken for the diameter"),
            Slipped(value=exact / 2, what="the diameter was doubled"),
            Slipped(value=pi * exact, what="π was forgotten"),
            Slipped(value=exact / 25.4, what="millimetres and inches were mixed"),
            Slipped(value=exact * 25.4, what="millimetres and inches were mixed"),
        ),
    )  # fmt: skip


def _position(step: Step, units: Units, _view: View) -> Iterator[Question]:
    edge = step.figures.edge if step.figures is not None else None
    cutter = getattr(step.fields, "cutter", None)
    there = [round(speed.speed * 60) for speed in speeds_of(step.setting.machine)]
    if edge is None or cutter is None or not cutter.diameter or not step.roles.speed or not there:
        return
    speed = max(1, round(edge.start / units.speeds))
    wanted = units.factor * speed / (pi * cutter.diameter / units.metre)
    below = [one for one in there if one <= wanted]
    if not below or any(abs(one - wanted) <= SPEED * wanted for one in there):
        return  # a position so near may be argued for
    right = below[-1]
    above = next((one for one in there if one > wanted), None)
    listed = " ".join(str(one) for one in there)
    yield Question(
        kind="position", unit="rpm", ask=f"{_tool(step)}: you worked out {wanted:.0f} rpm. The machine has {listed}. Which do you set?",
        working=(f"the highest that is not above {wanted:.0f}",), answer=f"{right} rpm", low=right, high=right,
        tolerance="that position", source="common practice",
        slips=(Slipped(value=above, what="the next one above: the edge runs faster than it should"),) if above else (),
    )  # fmt: skip


def _feed(step: Step, units: Units, _view: View) -> Iterator[Question]:
    figures, cutter = step.figures, getattr(step.fields, "cutter", None)
    if figures is None or cutter is None or not step.roles.sizes or not cutter.teeth:
        return
    tooth, turning = figures.value("feed_per_tooth"), figures.value("spindle_speed")
    if not tooth or not turning:
        return
    said, rpm = round(tooth / units.metre, 4 if units.length == "in" else 2), round(turning * 60)
    exact = rpm * cutter.teeth * said
    spread = max(FEED * exact, 1.0 if units.length == "mm" else 0.05)
    if said <= 0:
        return
    yield Question(
        kind="feed", unit=f"{units.length}/min",
        ask=f"{_tool(step)}: {cutter.teeth} teeth, {trimmed(said, 4)} {units.length} a tooth, at {rpm} rpm. What is the table feed?",
        working=(f"{rpm} × {cutter.teeth} × {trimmed(said, 4)}",), answer=f"{trimmed(exact, 1)} {units.length}/min",
        low=exact - spread, high=exact + spread, tolerance=f"within {trimmed(spread, 2)} {units.length}/min", source=BENCH,
        slips=(
            Slipped(value=rpm * said, what="the teeth were forgotten"),
            Slipped(value=cutter.teeth * said, what="the speed was forgotten: that is the feed in one turn"),
        ),
    )  # fmt: skip


def _pace(step: Step, units: Units, _view: View) -> Iterator[Question]:
    feed = step.figures.value("table_feed") if step.figures is not None else None
    handle = _handle(step, "x")
    if not feed or handle is None or not step.roles.sizes:
        return
    typed = round(feed * 60 / units.metre, 2 if units.length == "in" else 0)
    travel = handle.travel / units.metre
    exact = typed / travel
    yield Question(
        kind="pace", unit="turns a minute",
        ask=f"The table is to move {trimmed(typed, 2)} {units.length} a minute; one turn of the X handle moves it {trimmed(travel, 4)} {units.length}."
        " How many turns a minute?",
        working=(f"{trimmed(typed, 2)} ÷ {trimmed(travel, 4)}", f"that is {60 / exact:.1f} s a turn"), answer=f"{exact:.1f} turns a minute",
        low=exact - PACE, high=exact + PACE, tolerance=f"within {PACE} turn a minute", source=BENCH,
        slips=(
            Slipped(value=typed * travel, what="multiplied, where it is to be divided"),
            Slipped(value=60 / exact, what="that is seconds a turn"),
            Slipped(value=exact / 25.4, what="millimetres and inches were mixed"),
            Slipped(value=exact * 25.4, what="millimetres and inches were mixed"),
        ),
    )  # fmt: skip


def _dial(step: Step, units: Units, view: View) -> Iterator[Question]:
    zero = letters_at_zero(view, step.set_up)
    if not step.roles.hole or not zero:
        return
    for axis in ("x", "y"):
        handle = _handle(step, axis)
        if handle is None:
            continue
        for place in step.fields.at.points:
            at = abs(getattr(place, axis).value)
            if at > handle.travel:
                yield _read_off(handle, axis.upper(), at, units)


def _read_off(handle: Handle, axis: str, at: float, units: Units) -> Question:
    found = reading(handle, at)
    turns = found.line_turns
    rest = (at - turns * handle.travel) / handle.line
    slips = []
    if handle.backlash:
        for way, what in ((1, "added"), (-1, "taken off")):
            off = reading(handle, at + way * handle.backlash)
            said = f"the backlash was {what}: coming from the low side it needs nothing"
            slips.append(Slipped(value=off.line_turns * 1000 + off.line, what=said))
    size = units.size(at)
    return Question(
        kind="dial", unit="turns + line",
        ask=f"A hole is {size} {units.length} from the zero. The {axis} handle has {scale_text(handle)}. Which whole turn, which line? Write turns + line.",
        working=(
            f"a turn is {units.size(handle.travel)} {units.length}; {size} is {at / handle.travel:.4f} turns: {turns} whole",
            f"what is left is {rest:.1f} lines; the dial ends at line {last_line(handle)}",
        ),
        answer=f"{turns} turns, line {found.line}", turns=turns, low=max(0.0, rest - LINE - HALF), high=rest + LINE + HALF,
        tolerance="the turns exactly, a turn out is scrap; one line either way", source=BENCH, slips=tuple(slips),
    )  # fmt: skip


def _handle(step: Step, name: str) -> Handle | None:
    return next((handle for handle in step.setting.machine.handles if handle.name == name), None)


def _tap(step: Step, units: Units, view: View) -> Iterator[Question]:
    if step.roles.hole != "tap" or getattr(step.fields.cutter, "style", "") == "form":
        return
    thread, height = step.fields.thread, view.reckoned.shop.thread_height
    usual = tap_drill(thread, height)
    if usual is None:
        return
    least, most = BOUNDS[height]
    whole = thread.pitch / percent_of_thread(thread.major, thread.major - thread.pitch, thread.pitch)
    low, high = ((thread.major - share * whole) / units.metre for share in (most, least))
    pitch, major = trimmed(thread.pitch / units.metre, 4), trimmed(thread.major / units.metre, 4)
    yield Question(
        kind="tap drill", unit=units.length, ask=f"{thread.text}, pitch {pitch} {units.length}: how large do you drill before you tap?",
        working=(f"{major} less one pitch: {trimmed((thread.major - thread.pitch) / units.metre, 4)}", f"this workshop’s thread is {height} high"),
        answer=f"drill {usual}", low=low, high=high,
        tolerance=f"{trimmed(low, 3)} to {trimmed(high, 3)} {units.length}, of those that are in the drawer", source="Virtual Machine Shop, course unit on tapping",
        slips=(Slipped(value=thread.major / units.metre, what="the thread’s own diameter: nothing is left to cut"),),
    )  # fmt: skip


def _layers(step: Step, units: Units, _view: View) -> Iterator[Question]:
    depth, layer = getattr(step.fields, "depth", None), getattr(step.fields, "layer", None)
    deep = step.lie.size[2] if depth is not None and depth.value is None else getattr(depth, "value", 0.0)
    if layer is None or not step.roles.sizes or deep <= layer.value:
        return
    exact = deep / layer.value
    count = ceil(exact - 1e-9)
    yield Question(
        kind="layers", unit="layers",
        ask=f"{_tool(step)}: {units.size(deep)} {units.length} deep, no layer over {units.size(layer.value)} {units.length}. How many layers?",
        working=(f"{units.size(deep)} ÷ {units.size(layer.value)} = {trimmed(exact, 2)}", f"each {units.size(deep / count)} {units.length}"),
        answer=f"{count} layers", low=count, high=count, tolerance="that number", source="common practice",
        slips=(Slipped(value=count - 1, what="rounded down: each layer is then over what was allowed"),),
    )  # fmt: skip


MAKERS: tuple[Maker, ...] = (_speed, _position, _feed, _pace, _dial, _tap, _layers)
_SORTS = ("speed", "position", "feed", "pace", "dial", "tap drill", "layers")
