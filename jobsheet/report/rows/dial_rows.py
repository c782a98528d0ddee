"""Every reading that a step winds to, beside its holes: depths of its layers, walls, ends,
cuts along the outside, half a tip.
"""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

from jobsheet.machine.dial_readings import Stop, error_text, stop
from jobsheet.model.job import Operation
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import millimetres
from jobsheet.reckoning.answers.readings import At, Readings, readings_of
from jobsheet.report.blocks import DialRow
from jobsheet.report.plan import Course, Plan
from jobsheet.report.rows.outside_cuts import outside
from jobsheet.units.grammar import read
from jobsheet.units.show import MINUS

#: A line has two ends; what has more places than that goes round.
ENDS = 2
#: How a size to begin at ends where it is a depth.
_DEEP = " deep"


def dial_rows(plan: Plan, course: Course, operation: Operation) -> tuple[DialRow, ...]:
    """The readings of one step, sideways first and then down, as a hand sets them."""
    said = _said(plan, course).get(operation.key)
    rows = [*_outside(plan, course, operation), *_half_tip(plan, operation)]
    if said is not None:
        if not getattr(operation.fields, "at", None):
            rows += _places(plan, said)
        rows += _depths(plan, operation, said)
    return tuple(rows)


def _said(plan: Plan, course: Course) -> dict[str, Readings]:
    """What the answers say of the dials of a set-up, by step; asked once a set-up."""
    key = f"readings {course.set_up.key}"
    if key not in plan.drawn:
        plan.drawn[key] = {
            readings.key: readings for readings in readings_of(course.set_up, plan.reckoned, plan.card)
        }
    found: dict[str, Readings] = plan.drawn[key]
    return found


def _row(plan: Plan, caption: str, stops: Iterable[Stop]) -> DialRow:
    """Where to stop, and what the lines are off where any of them is."""
    each = tuple(stops)
    off = tuple(error_text(stop.error, plan.job.units) for stop in each)
    back = next((turns for stop in each if (turns := stop.on_lines.split(" ")[0]).startswith(MINUS)), "")
    return DialRow(
        # Nobody guesses that a line counts up from a turn that was wound back.
        caption=f"{caption}; {back}: past 0, then up" if back else caption,
        readings=tuple(stop.on_lines for stop in each),
        beside=off if any(one != "0" for one in off) else (),
    )


def _size(plan: Plan, value: float) -> str:
    return millimetres(value, plan.job.units)[0]


def _outside(plan: Plan, course: Course, operation: Operation) -> list[DialRow]:
    """The cuts inward of a side: the centre from the zero, or how far in from where the edge touched."""
    stops = outside(plan.reckoned, course.set_up, operation)
    handle = plan.card.handle(stops.handle) if stops is not None else None
    if stops is None or handle is None:
        return []
    name = stops.handle.upper()
    last = ", the last at full depth" if stops.last_full else ""
    each = "each cut in" if len(stops.distances) > 1 else "cut in"
    if stops.touched:
        sizes = ", ".join(_size(plan, distance) for distance in stops.distances)
        caption = f"{name} from touching the {stops.side} side, {each} {sizes}{last}"
    else:
        caption = f"{name} of the centre, {stops.side} side, {each.removesuffix(' in')}{last}"
    return [_row(plan, caption, (stop(handle, distance) for distance in stops.distances))]


def _half_tip(plan: Plan, operation: Operation) -> list[DialRow]:
    """What is wound on from where the edge finder jumped."""
    figures = plan.reckoned.operations[operation.key].figures
    if figures is None or roles(operation).beside != "find":
        return []
    half = figures.value("wind_on") or figures.value("half_tip")
    rows = []
    for axis in ("x", "y"):
        handle = plan.card.handle(axis)
        if half and handle is not None:
            rows.append(
                _row(plan, f"{axis.upper()} on from the edge, {_size(plan, half)}", [stop(handle, half)])
            )
    if len(rows) == 2 and (rows[0].readings, rows[0].beside) == (rows[1].readings, rows[1].beside):
        dial_row = rows[0]
        return [
            DialRow(
                caption=f"X and Y{dial_row.caption[1:]}", readings=dial_row.readings, beside=dial_row.beside
            )
        ]
    return rows


def _places(plan: Plan, said: Readings) -> list[DialRow]:
    """Ends, corners and walls in one row: each handle's own stops in the order they are wound
    to, with the letter of the handle.
    """
    what = "wall" if said.wall is not None else "ends" if len(said.places) <= ENDS else "walls"
    stops = [(axis, stop) for axis in ("x", "y") for stop in _once(said.places, axis)]
    if not stops:
        return []
    sizes = [
        f"{axis.upper()} {' and '.join(stop.drawing for own, stop in stops if own == axis)}"
        for axis in dict.fromkeys(axis for axis, _ in stops)
    ]
    caption = f"centre at the {what}, {', '.join(sizes)}"
    for axis in ("x", "y"):
        if any(axis in at.back for at in said.places) and len([1 for own, _ in stops if own == axis]) == 1:
            caption += f"; {axis.upper()} from above: back off past it"
    row = _row(plan, caption, (stop for _, stop in stops))
    named = tuple(f"{axis.upper()} {text}" for (axis, _), text in zip(stops, row.readings, strict=True))
    return [DialRow(caption=caption, readings=named, beside=row.beside)]


def _once(places: tuple[At, ...], axis: str) -> list[Stop]:
    found: dict[str, Stop] = {}
    for place in places:
        one: Any = getattr(place, axis)
        if one is not None:
            found.setdefault(one.on_lines, one)
    return list(found.values())


def _begin(plan: Plan, operation: Operation, said: Readings) -> tuple[str, list[Stop]]:
    """Where to stop first in a cut that was never tried, and the size in words; nothing
    where its first layer is no deeper.
    """
    handle = plan.card.handle(said.depth_handle)
    outcome, setting = plan.reckoned.operations[operation.key], plan.reckoned.settings.get(operation.key)
    sizes = (limit.begin for limit in outcome.limits if limit.verdict == "not tried")
    size = next((size.removesuffix(_DEEP) for size in sizes if size.endswith(_DEEP)), "")
    if handle is None or setting is None or not size:
        return "", []
    first = (setting.wound or 0.0) + read(size, "length", plan.job.units)
    return (size, [stop(handle, first)]) if first < said.depths[0].distance else ("", [])


def _depths(plan: Plan, operation: Operation, said: Readings) -> list[DialRow]:
    """The depth after each layer, running from where this cutter was touched."""
    if not said.depths:
        return []
    depths = said.depths
    zero = "from touch"
    if depths[0].distance > 0 and not said.depth_zero.startswith("0 where this cutter touches"):
        zero = "on from the touch before"
    deep = depths[0].distance if len(depths) == 1 else depths[1].distance - depths[0].distance
    layers = (
        f"{len(depths)} layers of {_size(plan, deep)}" if len(depths) > 1 else f"{_size(plan, deep)} down"
    )
    size, first = _begin(plan, operation, said)
    begin = f"{size} first, then " if first else ""
    return [_row(plan, f"{said.depth_handle} {zero}, {begin}{layers}", [*first, *depths])]
