"""The stopwatch: a length and seconds, or turns and seconds, give back the real feed,
and with it what the cut really asks.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.cutting.feed import feed_from_speed, feed_per_tooth
from jobsheet.cutting.hand import handle_speed, stopwatch_feed
from jobsheet.cutting.inputs import positive
from jobsheet.errors import CalcError, CommandError
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.names import show
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.what_if import Tried, tried

#: What a hand can time [s], and what no handle or quill is fed at [m/s]: a slip of the pen, not a feed.
SHORTEST, LONGEST, FASTEST = 0.1, 86400.0, 0.5


class Timed(Struct, frozen=True, kw_only=True):
    """What the watch says: real feed [m/s], feed per tooth or a turn [m],
    pace [rev/s], and the cut reckoned with it.

    `each` is `feed_per_tooth` or `feed_per_turn`; `edits` writes the real feed into the step.
    """

    feed: float
    each: str
    chip: float
    pace: float | None
    found: Tried
    planned: Tried
    edits: tuple[tuple[str, str], ...]


def stopwatch(
    operation: Operation,
    setting: Setting,
    *,
    seconds: float,
    length: float | None = None,
    turns: float | None = None,
) -> Timed:
    """The real feed of a step that was timed.

    Parameters
    ----------
    seconds : float
        Time on the watch [s]
    length : float
        How far it went in that time [m]; or
    turns : float
        Turns of the handle in that time [rev]

    Raises
    ------
    CalcError
        If the step has no feed, or length and turns are both given or both missing.
    CommandError
        If the step cannot be reckoned as it is planned: the sentence that stands at it.
    """
    fields, kind = operation.fields, operation.kind
    if not SHORTEST <= seconds <= LONGEST:
        raise CalcError("time", f"{seconds:g} s", f"from {SHORTEST:g} s to a day")
    if (length is None) == (turns is None):
        raise CalcError("stopwatch", "not one way", "a length or a number of turns, one of them")
    planned = tried(kind, fields, setting)
    if planned.problem:
        raise CommandError(planned.problem)
    speed = planned.value("spindle_speed")
    if speed is None or not hasattr(fields, "feed") or planned.figures is None:
        raise CalcError("step", f"“{operation.number}”", "one that is fed while the spindle turns")
    by_table = planned.figures.get("handle_pace") is not None
    handle = setting.machine.handle(getattr(fields, "along", "x") or "x") if by_table else None
    if length is not None:
        positive(length=length, seconds=seconds)
        feed = length / seconds
    elif handle is not None:
        feed = stopwatch_feed(turns=turns or 0.0, lead=handle.travel, time=seconds)
    else:
        raise CalcError("turns", f"{turns:g}", "a length: this step is not wound by a handle")
    if feed > FASTEST:
        raise CalcError(
            "feed", f"{feed:g} m/s", "one that a hand can give: look at the length and the seconds"
        )
    pace = handle_speed(feed=feed, lead=handle.travel) if handle is not None else None
    if by_table:
        teeth = fields.cutter.teeth or 1
        chip, each = feed_per_tooth(table_feed=feed, teeth=teeth, spindle_speed=speed), "feed_per_tooth"
        changed, edits = _with_feed(kind, fields, feed, setting)
    else:
        chip, each = feed_from_speed(table_feed=feed, spindle_speed=speed), "feed_per_turn"
        changed, edits = _with_feed(kind, fields, chip, setting)
    return Timed(
        feed=feed, each=each, chip=chip, pace=pace, found=tried(kind, _held(changed, speed), setting),
        planned=planned, edits=edits,
    )  # fmt: skip


def _held(fields: Any, speed: float) -> Any:
    """The same step at the speed it was planned with: the watch says nothing about the spindle."""
    return replace(fields, spindle=Quantity(speed, f"{speed * 60:.0f} rpm"))


def _with_feed(
    kind: str, fields: Any, feed: float, setting: Setting
) -> tuple[Any, tuple[tuple[str, str], ...]]:
    """The fields with this feed in place of every other way of saying it, and the edits that type it."""
    entry = kind_of(kind).entry("feed")
    name = "table_feed" if entry is not None and entry.asks == "feed" else "feed_per_turn"
    others = [other for other in ("feed_per_tooth", "feed_per_edge") if hasattr(fields, other)]
    text = show(name, feed, setting.units)
    changed = replace(fields, feed=Quantity(feed, text), **dict.fromkeys(others))
    return changed, (*((other, "") for other in others), ("feed", text))
