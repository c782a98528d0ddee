"""What the spindle gives at each speed, for long and for seconds, with the cuts of a job on it."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from jobsheet.drawing.drawn import Drawing, Ellipse, Item, Line, Point, Text
from jobsheet.drawing.placing import Placer, text_width
from jobsheet.machine.spindle import highest, lowest, steps, torque_at
from jobsheet.model.machine import Machine, SpeedRange
from jobsheet.units.show import trimmed

LEFT, TOP, RIGHT, FOOT = 34.0, 16.0, 12.0, 40.0
#: A stepless range is drawn by so many points.
POINTS = 60
Place = Callable[[float, float], Point]


def torque_chart(
    machine: Machine,
    cuts: Sequence[tuple[str, float, float]],
    width: float,
    height: float,
    *,
    factor: float | None = None,
) -> Drawing:
    """Continuous and peak torque against speed, whose axis is logarithmic, with the machine's own speeds.

    Parameters
    ----------
    cuts : sequence of (words, speed [rev/s], torque [N·m])
        Numbered points; the number is what the words begin with, or their place in the list
    factor : float, optional
        What trials make of the card's peak torque: drawn solid then, the card's dashed
    """
    slow, fast = lowest(machine), highest(machine)
    spans = [_points(machine, span) for span in machine.spindle.ranges]
    top = max(peak for span in spans for _, _, peak in span) * max(1.0, factor or 1.0)
    top = max([top, *(torque for _, _, torque in cuts)])
    step = _step(top)
    most = math.ceil(top / step - 1e-9) * step
    frame = (LEFT, TOP, width - RIGHT, height - FOOT)
    ends = (math.log(slow / 1.12), math.log(fast * 1.12))

    def at(speed: float, torque: float) -> Point:
        part = (math.log(speed) - ends[0]) / (ends[1] - ends[0])
        return frame[0] + part * (frame[2] - frame[0]), frame[3] - torque / most * (frame[3] - frame[1])

    placer = Placer((LEFT + 2, 2.0, width - 2, frame[3] - 1))
    items = _grid(frame, step, most)
    for item in items:
        if isinstance(item, Line):
            placer.line(item.points, faint=True)
    items += _speeds(machine, frame, at)
    for span in spans:
        items += _curves(span, at, placer, factor)
    items += _points_of(cuts, at, placer)
    items += _names(spans, at, placer, factor)
    items.append(Text(frame[0] - 30, 8, "N·m", "caption"))
    items.append(Text((frame[0] + frame[2]) / 2, height - 4, "spindle speed, rpm", "caption", "middle"))
    return Drawing(width, height, tuple(items))


def _step(span: float) -> float:
    raw = span / 7
    power = 10.0 ** math.floor(math.log10(raw))
    return next(factor * power for factor in (1, 2, 5, 10) if factor * power >= raw * (1 - 1e-9))


def _points(machine: Machine, span: SpeedRange) -> list[tuple[float, float, float]]:
    """Speed, continuous and peak torque over one range, from its slowest to its fastest."""
    speeds = [step.speed for step in span.steps]
    if span.lowest is not None and span.highest is not None:
        ratio = span.highest / span.lowest
        speeds += [span.lowest * ratio ** (index / POINTS) for index in range(POINTS + 1)]
        if span.base and span.lowest < span.base < span.highest:
            speeds.append(span.base)
    return [(speed, *torque_at(machine, span, speed)) for speed in sorted(set(speeds))]


def _grid(frame: tuple[float, ...], step: float, most: float) -> list[Item]:
    items: list[Item] = []
    for index in range(round(most / step) + 1):
        y = frame[3] - (frame[3] - frame[1]) * index * step / most
        if index:
            items.append(Line(((frame[0], y), (frame[2], y)), 0.4, ink="rule"))
        items.append(Text(frame[0] - 6, y + 3, f"{index * step:.6g}", "caption", "end"))
    return [*items, Line(((frame[0], frame[3]), (frame[2], frame[3])), 1.0, ink="edge")]


def _speeds(machine: Machine, frame: tuple[float, ...], at: Place) -> list[Item]:
    """The speeds there are: each step, or both ends of each stepless range;
    those too near go on a second line.
    """
    marked = [(speed.speed, speed.marked) for speed in steps(machine)]
    if not marked:
        found = {speed for span in machine.spindle.ranges for speed in (span.lowest, span.highest) if speed}
        marked = [(speed, f"{speed * 60:.0f}") for speed in sorted(found)]
    items: list[Item] = []
    free = [-1e9, -1e9]
    for speed, words in marked:
        x = at(speed, 0.0)[0]
        items.append(Line(((x, frame[3] - 3), (x, frame[3] + 3)), 1.0, ink="edge"))
        half = text_width(words, "caption") / 2
        row = next((row for row in (0, 1) if x - half > free[row] + 3), None)
        if row is not None:
            items.append(Text(x, frame[3] + 13 + 10 * row, words, "caption", "middle"))
            free[row] = x + half
    return items


def _curves(
    span: list[tuple[float, float, float]], at: Place, placer: Placer, factor: float | None
) -> list[Item]:
    """For long thin, for seconds thick; a learned peak is ink and solid, the card's then dashed pencil."""
    long = tuple(at(speed, torque) for speed, torque, _ in span)
    short = tuple(at(speed, torque) for speed, _, torque in span)
    for line in (long, short):
        placer.line(line)
    items: list[Item] = [Line(long, 1.0, "pencil", ink="pencil")]
    if factor is None:
        items.append(Line(short, 1.6, "removed"))
    else:
        learned = tuple(at(speed, torque * factor) for speed, _, torque in span)
        placer.line(learned)
        items += [Line(short, 1.0, "removed", ink="pencil"), Line(learned, 2.0)]
    if len(span) < POINTS:
        for points in (long, short):
            items += [
                Ellipse(x, y, 1.6, 1.6, weight=0.8, fill="paper", ink="pencil" if points is long else "ink")
                for x, y in points
            ]
    return items


def _points_of(cuts: Sequence[tuple[str, float, float]], at: Place, placer: Placer) -> list[Item]:
    """Each cut as a dot; those of about one place share their numbers, from the highest down."""
    groups: dict[Point, list[str]] = {}
    dots: list[Point] = []
    for index, (words, speed, torque) in enumerate(cuts, 1):
        number = words.split()[0].rstrip(".") if words.strip()[:1].isdigit() else str(index)
        x, y = at(speed, torque)
        near = next((key for key in groups if math.hypot(key[0] - x, key[1] - y) < 9), None)
        groups.setdefault(near or (x, y), []).append(number)
        dots.append((x, y))
    items: list[Item] = []
    for x, y in dots:
        items.append(Ellipse(x, y, 2.6, 2.6, weight=0.0, fill="ink"))
        placer.box((x - 3, y - 3, x + 3, y + 3))
    for (x, y), numbers in groups.items():
        words = ", ".join(numbers[:4]) + (" …" if len(numbers) > 4 else "")
        items += placer.put(
            (Text(x + dx, y + dy, words, "strong", anchor),)
            for far in (1.0, 1.6, 2.4, 3.4)
            for dx, dy, anchor in (
                (6 * far, 3, "start"), (-6 * far, 3, "end"), (0, -6 * far, "middle"), (0, 5 + 8 * far, "middle"),
                (5 * far, -4 * far, "start"), (-5 * far, -4 * far, "end"),
            )
        )  # fmt: skip
    return items


def _names(
    spans: list[list[tuple[float, float, float]]],
    at: Place,
    placer: Placer,
    factor: float | None,
) -> list[Item]:
    """What each curve is, beside the first of them."""
    items: list[Item] = []
    card = "the card's peak" if factor is not None else "for seconds (peak)"
    wanted: list[tuple[str, Callable[[tuple[float, float, float]], float]]] = [
        (card, lambda one: one[2]),
        ("for long (continuous)", lambda one: one[1]),
    ]
    if factor is not None:
        wanted.insert(0, (f"learned peak: × {trimmed(factor, 2)}", lambda one: one[2] * factor))
    for words, of in wanted:
        choices: list[tuple[Text, ...]] = []
        for span in spans[0][len(spans[0]) // 3 :] + spans[0][: len(spans[0]) // 3]:
            x, y = at(span[0], of(span))
            choices += [
                (Text(x + dx, y + dy, words, "caption", anchor),)
                for dx, dy, anchor in (
                    (6, -6, "start"), (10, -12, "start"), (-6, 12, "end"), (-6, -8, "end"), (0, 14, "middle"), (4, 22, "start"),
                )
            ]  # fmt: skip
        items += placer.put(choices)
    return items
