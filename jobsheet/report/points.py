"""The points of a set-up: nought is the zero, the rest are numbered as the steps first come to them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from jobsheet.machine.dial_readings import stop
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.machine import Handle
from jobsheet.model.quantity import Place, spot
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Hole
from jobsheet.report.dial_words import error_text
from jobsheet.stages.course import shapes_of

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
    """A distance at a handle: whole turns and the line to stop at, and how far off that is; empty where it is not."""

    on_lines: str
    error: str


def points_of(set_up: SetUp, settings: Mapping[str, Setting]) -> tuple[Point, ...]:
    """Every place that the steps of a set-up go to, once each."""
    by_place: dict[tuple[int, int], list[Any]] = {}
    for operation in set_up.operations:
        sizes = {
            spot(shape.x, shape.y): shape.diameter
            for shape in shapes_of(operation, settings)
            if isinstance(shape, Hole)
        }
        for place in places_of(operation):
            row = by_place.setdefault(place.spot, [place, 0.0, []])
            row[1] = max(row[1], sizes.get(place.spot, 0.0))
            if operation.number not in row[2]:
                row[2].append(operation.number)
    return tuple(
        Point(
            number=index, x=place.x.value, y=place.y.value, x_text=place.x.text, y_text=place.y.text,
            diameter=diameter, steps=tuple(steps),
        )
        for index, (place, diameter, steps) in enumerate(by_place.values(), 1)
    )  # fmt: skip


def places_of(operation: Operation) -> tuple[Place, ...]:
    """The places an operation goes to; none for a kind that has no places."""
    return tuple(getattr(operation.fields, "at", None) or ())


def numbers_of(operation: Operation, points: tuple[Point, ...]) -> tuple[int, ...]:
    """The numbers of the points that an operation goes to, in its own order."""
    by_spot = {spot(point.x, point.y): point.number for point in points}
    return tuple(dict.fromkeys(by_spot[place.spot] for place in places_of(operation)))


def dial_place(handle: Handle | None, distance: float, units: str) -> DialPlace:
    """Where a handle stands for a distance from zero, as the dial counts; nothing where there is no handle.

    How far the line is off is in the job's units, those of the drawing's tolerances.
    """
    if handle is None:
        return DialPlace("", "")
    found = stop(handle, distance)
    return DialPlace(found.on_lines, error_text(found.error, units))
