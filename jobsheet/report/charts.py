"""Charts as neutral drawings: what trials taught of a limit, and torque against speed.
Window and sheet paint them alike.

Dashed and pencil is what the card says, solid ink what trials have shown; a blue line is what to plan to.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

from jobsheet.drawing.drawn import Drawing, Item, Line, Point, Text
from jobsheet.drawing.making import box, moved
from jobsheet.drawing.mark_shapes import mark_at
from jobsheet.drawing.placing import Placer, box_of, text_width
from jobsheet.limits.evidence import chance_over
from jobsheet.model.capacity import Capacity
from jobsheet.model.trials import Trial
from jobsheet.reckoning.ladder.ladder_sizes import in_size, two_figures
from jobsheet.reckoning.ladder.rung import Ladder
from jobsheet.report.torque_chart import torque_chart
from jobsheet.units.table import INCH

__all__ = ["chance_chart", "chance_words", "torque_chart", "trial_mark"]

#: Outcomes by how they count: a soft sign is near the capacity, the others over it. What slipped or was hard
#: to wind says nothing of a limit that is learned.
SOFT, BAD = ("noisy", "slowed"), ("chatter", "stalled", "broke")
_LEVELS = ((1.0, "always"), (0.75, "3 in 4"), (0.5, "1 in 2"), (0.25, "1 in 4"), (0.0, "never"))
#: Room left of the axis, above the top line, at the right end; and a mark's size [points].
LEFT, TOP, RIGHT, MARK, ROW = 40.0, 12.0, 16.0, 9.0, 11.0
#: A curve is drawn by so many points.
POINTS = 110


def chance_words(ladder: Ladder, limit: str) -> str:
    """What the upright axis counts: the caption of the chart's panel."""
    if limit == "chatter":
        return f"chance that a cut of this {ladder.grows} stays quiet"
    grown = f"this {ladder.grows}" if ladder.milled else "this torque"
    return f"chance that the spindle does not slow at {grown}"


def trial_mark(outcome: str, size: float) -> tuple[Item, ...]:
    """The sign of an outcome in a square: punched disc clean, open diamond a
    soft sign, × a bad end, a stroke else.
    """
    if outcome == "clean":
        return mark_at("cut before", size, 0.0, 0.0)
    middle, far = size / 2, size * 0.42
    if outcome in SOFT:
        corners = (
            (middle, middle - far),
            (middle + far, middle),
            (middle, middle + far),
            (middle - far, middle),
        )
        return (Line(corners, size * 0.14, closed=True, fill="paper"),)
    if outcome in BAD:
        return tuple(
            Line(((middle - far, middle - way * far), (middle + far, middle + way * far)), size * 0.2)
            for way in (1, -1)
        )
    return (Line(((middle - far, middle), (middle + far, middle)), size * 0.14, ink="pencil"),)


class _Scale:
    """From a share of card or class to what grows, in the unit that is shown, through the rungs; and back.

    Between two rungs the share goes as a power of the size, beyond them as between the last two.
    """

    def __init__(self, ladder: Ladder, limit: str) -> None:
        pairs: list[tuple[float, float]] = []
        for rung in ladder.rungs:
            asked = rung.of(limit)
            if asked is None or asked.share <= 0:
                continue
            if ladder.milled:
                grown = getattr(rung.fields, ladder.grows, None)
                value = grown.value / (1e-3 if ladder.units == "mm" else INCH) if grown is not None else 0.0
            else:
                value = asked.demand
            if value > 0 and (not pairs or (asked.share > pairs[-1][0] and value > pairs[-1][1])):
                pairs.append((asked.share, value))
        if not ladder.milled and pairs:
            # A drill of another size turns at another speed: the axis has the
            # torque of the topmost rung's speed.
            pairs = pairs[-1:]
        self.unit = ("mm" if ladder.units == "mm" else "in") if ladder.milled else "N·m"
        if not pairs:  # nothing was planned: the share itself
            pairs, self.unit = [(1.0, 100.0)], "%"
        self.pairs = [(math.log(share), math.log(size)) for share, size in pairs]

    def _read(self, value: float, here: int, there: int) -> float:
        at = math.log(max(value, 1e-12))
        pairs = self.pairs
        if len(pairs) == 1:
            return math.exp(pairs[0][there] + at - pairs[0][here])
        index = next((i for i in range(1, len(pairs)) if at <= pairs[i][here]), len(pairs) - 1)
        low, high = pairs[index - 1], pairs[index]
        part = (at - low[here]) / (high[here] - low[here])
        return math.exp(low[there] + part * (high[there] - low[there]))

    def size(self, share: float) -> float:
        """What grows, for a share."""
        return self._read(share, 0, 1)

    def share(self, size: float) -> float:
        """The share at a size."""
        return self._read(size, 1, 0)


def _step(span: float, most: int) -> float:
    """A round distance between ticks, so that there are at most so many."""
    raw = span / max(most, 1)
    power = 10.0 ** math.floor(math.log10(raw))
    return next(factor * power for factor in (1, 2, 5, 10) if factor * power >= raw * (1 - 1e-9))


def _sized(scale: _Scale, ladder: Ladder, limit: str, share: float) -> tuple[float, str]:
    """A share on the axis, and as a size to plan to; by the rungs where no
    size of such cuts asks so little.
    """
    found = in_size(ladder, limit, share)
    if found is None:
        size = scale.size(share)
        return size, f"{two_figures(size, down=True)} {scale.unit}"
    unit = {"mm": 1e-3, "in": INCH}.get(scale.unit, 1.0)
    return found.value / unit, found.short


def _about(scale: _Scale, ladder: Ladder, limit: str, share: float) -> str:
    """About how much a share is; beyond the largest cut that is ever set it is only more than that."""
    size = in_size(ladder, limit, share)
    if size is None:
        return f"{two_figures(scale.size(share))} {scale.unit}"
    return f"more than {size.about}" if size.capped else size.about


def chance_chart(
    ladder: Ladder, before: Capacity, after: Capacity | None, trials: Sequence[Trial], width: float, height: float, *,
    planned: float | None,
) -> Drawing:  # fmt: skip
    """Chance that a cut ends well against what grows, with the trials under the axis.

    Parameters
    ----------
    before, after : Capacity
        The same limit before any trial and as learned; only `before` is drawn where nothing was tried
    trials : sequence of Trial
        Those of this process and kind of cutter; others are left out
    width, height : float
        The box [points], from about 330 × 300 up
    planned : float or None
        What to plan to, as a share of card or class (as `Capacity.planned`); None draws no line
    """
    scale = _Scale(ladder, before.limit)
    seen = [
        (asked.share, trial.outcome)
        for trial in trials
        if not trial.strikes
        and trial.process == ladder.process
        and trial.cutter_kind == ladder.cutter.kind
        and (asked := trial.of(before.limit)) is not None
    ]
    most = _reach(scale, ladder, before, after, [share for share, _ in seen])
    rows = _stacked([scale.size(share) for share, _ in seen], most, width - LEFT - RIGHT)
    legend = any(outcome != "clean" for _, outcome in seen)
    foot = ROW * (max(rows, default=0) + 1) + 34.0 + (13.0 if legend else 0.0)
    frame = (LEFT, TOP, width - RIGHT, height - foot)
    placer = Placer((LEFT + 2, 2.0, width - 2, height - foot - 2))

    def at(size: float, chance: float) -> Point:
        return (
            frame[0] + min(size / most, 1.0) * (frame[2] - frame[0]),
            frame[3] - chance * (frame[3] - frame[1]),
        )

    items: list[Item] = []
    if after is not None:
        items += _band(scale, after, frame, lambda size: at(size, 0.0)[0], most)
    items += _levels(frame)
    for item in items:  # words keep off band edges and level lines too
        if isinstance(item, Line) and not item.closed:
            placer.line(item.points, faint=True)
    old = _curve(before, scale, most, at)
    placer.line(old)
    items.append(Line(old, 1.2, "pencil", ink="pencil"))
    new: tuple[Point, ...] = ()
    if after is not None:
        new = _curve(after, scale, most, at)
        placer.line(new)
        items.append(Line(new, 2.0))
    items += _axis(scale, ladder, frame, most, rows, width)
    for (share, outcome), row in zip(seen, rows, strict=True):
        x = at(min(scale.size(share), most), 0.0)[0]
        items += moved(trial_mark(outcome, MARK), x - MARK / 2, frame[3] + 6 + row * ROW)
    if legend:
        items += _legend([outcome for _, outcome in seen], width, height)
    if planned:
        size, words = _sized(scale, ladder, before.limit, planned)
        if size < most:
            chance = 0.0 if after is None else chance_over(after, planned)
            items += _plan(size, words, frame, at, placer, chance)
    if after is not None:
        ends = [_about(scale, ladder, after.limit, share) for share in (after.low, after.median, after.high)]
        items += _learned_words(ends, wide=_is_wide(after), frame=frame, curve=new, placer=placer)
    items += _before_words(old, placer, learned=after is not None)
    return Drawing(width, height, tuple(items))


def _reach(
    scale: _Scale, ladder: Ladder, before: Capacity, after: Capacity | None, shares: Sequence[float]
) -> float:
    """The right end of the axis: all trials, the band where it is not endless, and where it is all over."""
    asked = [one.share for rung in ladder.rungs if (one := rung.of(before.limit)) is not None]
    most = max([*(share * 1.25 for share in shares), *(share * 1.1 for share in asked), 1e-6])
    if after is not None:
        most = max(most, min(after.high * 1.25, after.median * 2.2))
    else:
        most = max(most, before.median * 1.6)
    size = scale.size(most)
    step = _step(size, 6)
    return math.ceil(size / step - 1e-9) * step


def _stacked(sizes: Sequence[float], most: float, room: float) -> list[int]:
    """Which row each mark stands in, so that two of about one size do not cover each other."""
    rows: list[int] = []
    for index, size in enumerate(sizes):
        near = {rows[other] for other in range(index) if abs(sizes[other] - size) / most * room < MARK + 1}
        rows.append(next(row for row in range(len(sizes) + 1) if row not in near))
    return rows


def _curve(
    capacity: Capacity, scale: _Scale, most: float, at: Callable[[float, float], Point]
) -> tuple[Point, ...]:
    points = [at(0.0, 1.0)]
    for index in range(1, POINTS + 1):
        size = most * index / POINTS
        points.append(at(size, 1.0 - chance_over(capacity, scale.share(size))))
    return tuple(points)


#: A band of more than this, high over low, is none to plan by: it is a strip on
#: the axis, and no field (estimate).
WIDE, STRIP = 2.0, 14.0


def _is_wide(after: Capacity) -> bool:
    """Whether so little is known that a field of nine in ten would flood the chart."""
    return after.high > WIDE * after.low


def _band(
    scale: _Scale, after: Capacity, frame: tuple[float, ...], across: Callable[[float], float], most: float
) -> list[Item]:
    """Nine in ten, with its two edges; the right one only where it is inside.
    Where it is wide a strip on the axis.
    """
    low, high = scale.size(after.low), scale.size(after.high)
    left, right = across(low), across(min(high, most))
    top = frame[3] - STRIP if _is_wide(after) else frame[1]
    items: list[Item] = [Line(box(left, top, right - left, frame[3] - top), 0.0, closed=True, fill="band")]
    edges = [left, *([right] if high <= most else [])]
    return items + [Line(((x, top), (x, frame[3])), 1.0, ink="bluemark") for x in edges]


def _levels(frame: tuple[float, ...]) -> list[Item]:
    items: list[Item] = []
    for chance, words in _LEVELS:
        y = frame[3] - chance * (frame[3] - frame[1])
        if chance:
            items.append(Line(((frame[0], y), (frame[2], y)), 0.4, ink="rule"))
        items.append(Text(frame[0] - 6, y + 3, words, "caption", "end"))
    return items


def _axis(
    scale: _Scale, ladder: Ladder, frame: tuple[float, ...], most: float, rows: Sequence[int], width: float
) -> list[Item]:
    """The axis with its numbers under the rows of trials, and what it counts."""
    items: list[Item] = [Line(((frame[0], frame[3]), (frame[2], frame[3])), 1.0, ink="edge")]
    room = frame[2] - frame[0]
    step = _step(most, 6)
    count = round(most / step)
    under = frame[3] + 7 + ROW * (max(rows, default=0) + 1) + 8
    for index in range(count + 1):
        x = frame[0] + room * index / count
        items.append(Line(((x, frame[3] - 3), (x, frame[3] + 3)), 1.0, ink="edge"))
        words = f"{step * index:.6g}"
        if index < count:
            items.append(Text(x, under, words, "caption", "middle"))
        else:
            items.append(Text(width - 2, under, f"{words} {scale.unit}", "caption", "end"))
    if rows:
        items.append(Text(frame[0] - 6, frame[3] + 7 + MARK / 2 + 3, "trials", "caption", "end"))
    items.append(
        Text((frame[0] + frame[2]) / 2, under + 15, _grows_words(ladder, room, scale), "caption", "middle")
    )
    return items


def _grows_words(ladder: Ladder, room: float, scale: _Scale) -> str:
    """What grows, with as much of the rest as there is room for."""
    title = ladder.setting.material.title.split(",")[0]
    title = title[:1].lower() + title[1:] if title[1:2].islower() else title
    cutter = ladder.cutter.text.split(",")[0]
    if ladder.milled:
        fixed = "width" if ladder.grows == "depth" else "depth"
        kept = getattr(ladder.rungs[-1], fixed) if ladder.rungs else dict(ladder.texts).get(fixed, "")
        how = f" {kept} {'wide' if fixed == 'width' else 'deep'}" if kept else ""
        lead = f"{ladder.grows} of a {ladder.process} cut{how}"
    else:
        lead = "torque of the drill" if ladder.process == "drill" else "torque of the tap"
        cutter = ladder.cutter.kind if ladder.process == "drill" else cutter
    for words in (f"{lead}, {cutter}, {title}", f"{lead}, {cutter}", lead):
        if text_width(words, "caption") <= room:
            return words
    return f"{ladder.grows} [{scale.unit}]"


def _legend(outcomes: Sequence[str], width: float, height: float) -> list[Item]:
    """Only the signs that are there, in one line at the foot."""
    groups = (("clean",), SOFT, BAD, ("slipped", "too hard to wind"))
    parts = []
    for group in groups:
        there = [one for one in group if one in outcomes]
        if there:
            parts.append((there[0], ", ".join(there)))
    total = sum(MARK + 4 + text_width(words, "caption") for _, words in parts) + 14 * (len(parts) - 1)
    x, y = max((width - total) / 2, 2.0), height - 4.0
    items: list[Item] = []
    for outcome, words in parts:
        items += moved(trial_mark(outcome, MARK), x, y - MARK + 1)
        items.append(Text(x + MARK + 4, y, words, "caption"))
        x += MARK + 4 + text_width(words, "caption") + 14
    return items


def _plan(
    size: float, plan: str, frame: tuple[float, ...], at: Callable[[float, float], Point], placer: Placer,
    chance: float,
) -> list[Item]:  # fmt: skip
    """The blue line of what to plan to, with its words beside it."""
    x = at(size, 0.0)[0]
    line = ((x, frame[1] - 6), (x, frame[3]))
    words = f"plan to {plan}"
    below = (
        "chance of a bad end " + (f"{chance * 100:.0f} %" if chance >= 0.01 else "under 1 %")
        if chance
        else ""
    )
    placer.line(line)
    heights = [frame[1] + (frame[3] - frame[1]) * part for part in (0.2, 0.35, 0.5, 0.65, 0.8, 0.92)]
    choices = []
    for below_it, style in ((below, "label bold"), ("", "label bold"), ("", "strong")):
        for y in heights:
            for shift, anchor in ((-5.0, "end"), (5.0, "start")):
                first = Text(x + shift, y, words, style, anchor, ink="bluemark")
                second = (Text(x + shift, y + 11, below_it, "caption", anchor),) if below_it else ()
                choices.append((first, *second))
    return [Line(line, 2.0, ink="bluemark"), *placer.put(choices)]


def _learned_words(
    ends: Sequence[str], *, wide: bool, frame: tuple[float, ...], curve: Sequence[Point], placer: Placer
) -> list[Item]:
    """What was learned, in words, with a line to its curve; `ends` are low, middle and high."""
    low, middle, high = ends
    number, _, unit = low.partition(" ")
    words = f"learned: {middle}" if middle.startswith("more") else f"learned: about {middle}"
    band = f"9 in 10 between {number if high.endswith(unit) else low} and {high.removesuffix(f' {unit}')}"
    if wide:
        band += ": wide still"
    target = min(curve, key=lambda point: abs(point[1] - (frame[1] + (frame[3] - frame[1]) * 0.27)))
    room = max(text_width(words, "strong"), text_width(band, "caption"))
    parts = (0.1, 0.16, 0.24, 0.32, 0.4, 0.05, 0.5, 0.6, 0.7, 0.8, 0.9)

    def beside(ways: Sequence[float]) -> list[tuple[Text, ...]]:
        heights = [frame[1] + (frame[3] - frame[1]) * part for part in parts]
        return [
            (Text(target[0] + way, y, words, "strong"), Text(target[0] + way, y + 11, band, "caption"))
            for y in heights
            for way in ways
        ]

    # To the right first: at the left its line would cross that of the plan.
    texts = placer.put(beside((30.0, 45.0, 60.0, 80.0, 100.0, 18.0))) or placer.put(
        beside([-away - room for away in (30.0, 60.0, 90.0)])
    )
    if not texts:
        return []
    left, top, right, _ = box_of(texts)
    start = (left - 2, top + 4) if left > target[0] else (right + 2, top + 4)
    end = min(curve, key=lambda point: abs(point[1] - min(max(start[1] + 14, frame[1] + 20), frame[3] - 10)))
    return [*texts, Line((start, end), 0.6)]


def _before_words(curve: Sequence[Point], placer: Placer, *, learned: bool) -> tuple[Text, ...]:
    """Whose word the dashed curve is, near it where there is room."""
    lines = (
        ("before any trial,", "from the card") if learned else ("nothing tried yet:", "from the card alone")
    )
    choices = []
    for index in [*range(POINTS * 3 // 5, POINTS, 3), *range(POINTS * 3 // 5, POINTS // 8, -3)]:
        x, y = curve[index]
        for dx, dy, anchor in ((6, -14, "start"), (6, -22, "start"), (-6, 14, "end"), (-6, 24, "end")):
            choices.append(
                tuple(
                    Text(x + dx, y + dy + 10 * row, words, "caption", anchor)
                    for row, words in enumerate(lines)
                )
            )
    return placer.put(choices)
