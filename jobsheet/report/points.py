"""The points of a set-up: nought is the zero, the rest are numbered as the steps first come to them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from jobsheet.machine.dial_readings import stop
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.machine import Handle, Machine
from jobsheet.model.quantity import Place, spot
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole
from jobsheet.stages.course import shapes_of
from jobsheet.units.show import MINUS, plain

#: More points than this get a card of their own.
ON_THE_SHEET = 6


class Point(Struct, frozen=True, kw_only=True):
    """One place to wind to: its number, its sizes as typed, what is cut there, by which steps."""

    number: int
    x: float
    y: float
    x_text: str
    y_text: str
    diameter: float = 0.0
    steps: tuple[int, ...] = ()


class DialPlace(Struct, frozen=True):
    """A distance at a handle: turns and dial, the line to stop at and how far off it is."""

    dial: str
    line: str
    error: str


def points_of(set_up: SetUp, settings: Mapping[str, Setting]) -> tuple[Point, ...]:
    """Every place that the steps of a set-up go to, once each."""
    found: dict[tuple[int, int], list[Any]] = {}
    for operation in set_up.operations:
        sizes = {
            spot(shape.x, shape.y): shape.diameter
            for shape in shapes_of(operation, settings)
            if isinstance(shape, Hole)
        }
        for place in places_of(operation):
            row = found.setdefault(place.spot, [place, 0.0, []])
            row[1] = max(row[1], sizes.get(place.spot, 0.0))
            if operation.number not in row[2]:
                row[2].append(operation.number)
    return tuple(
        Point(
            number=index, x=place.x.value, y=place.y.value, x_text=place.x.text, y_text=place.y.text,
            diameter=diameter, steps=tuple(steps),
        )
        for index, (place, diameter, steps) in enumerate(found.values(), 1)
    )  # fmt: skip


def places_of(operation: Operation) -> tuple[Place, ...]:
    """The places an operation goes to; none for a kind that has no places."""
    return tuple(getattr(operation.fields, "at", None) or ())


def numbers_of(operation: Operation, points: tuple[Point, ...]) -> tuple[int, ...]:
    """The numbers of the points that an operation goes to, in its own order."""
    by_spot = {spot(point.x, point.y): point.number for point in points}
    return tuple(dict.fromkeys(by_spot[place.spot] for place in places_of(operation)))


def in_words(numbers: tuple[int, ...]) -> str:
    """`point 2`, `points 1–4`, `points 1, 3, 4`."""
    if not numbers:
        return ""
    if len(numbers) == 1:
        return f"point {numbers[0]}"
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = [f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs]
    return f"points {', '.join(words)}"


def dial_place(handle: Handle | None, distance: float, units: str) -> DialPlace:
    """Where a handle stands for a distance from zero, as the dial counts; nothing where there is no handle.

    How far the line is off is in the job's units, those of the drawing's tolerances.
    """
    if handle is None:
        return DialPlace("", "", "")
    found = stop(handle, distance)
    return DialPlace(found.dial, found.line, error_text(found.error, units))


def error_text(error: float, units: str) -> str:
    """How far the line is from the place: `off 0`, `+0.008 mm`."""
    factor, decimals, unit = (1 / 0.0254, 4, "in") if units == "in" else (1e3, 3, "mm")
    text = plain(error * factor, decimals)
    if not float(text.replace(MINUS, "-")):
        return "off 0"
    return f"{'+' if error > 0 else ''}{text} {unit}"


def ways(set_up: SetUp) -> tuple[str, str]:
    """Which way the table goes so that X and Y count up: against the way they count on the work."""
    x = "left" if set_up.zero.x_counts == "right" else "right"
    y = "towards you" if set_up.zero.y_counts == "away" else "away from you"
    return x, y


def approach(set_up: SetUp) -> str:
    """How a point is come to: which way the table goes to count up, and what to do after going too far."""
    x, y = ways(set_up)
    return f"X: table to your {x}. Y: table {y}. If you overshoot, go back half a turn and come up again."


def slack(card: Machine) -> str:
    """The slack of both handles, for the head of the positions; empty where the card has none."""
    parts = [
        f"{handle.name.upper()} {_length(handle.backlash, handle)}"
        for handle in (card.handle("x"), card.handle("y"))
        if handle is not None and handle.backlash
    ]
    return f"slack {', '.join(parts)}" if parts else ""


def _length(value: float, handle: Handle) -> str:
    return f"{plain(value / 0.0254, 3)} in" if handle.dial == "in" else f"{plain(value * 1e3, 2)} mm"
