"""The dial readings of a set-up, step by step: places, walls with the cutter's
offset, passes as a running total.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.machine.dial_readings import Stop, approach_words, running, stop, wall_at, walls_warning
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.machine import Handle, Machine
from jobsheet.model.quantity import SAME_PLACE, Place, Quantity
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import depth_handle, millimetres
from jobsheet.reckoning.reckoner import Outcome, Reckoned
from jobsheet.reckoning.touch import Touch

#: On which side of its own cut a wall bounds the work, as small numbers or large
#: ones, where x counts right and y away.
_LOW = {"front": True, "left": True, "rear": False, "right": False}
_COUNTS = {"front": "away", "rear": "away", "left": "right", "right": "right"}


class At(Struct, frozen=True, kw_only=True):
    """One place with its two handles; `words` says what it is, `back` which
    handles come from above: back off first.
    """

    words: str
    x: Stop | None
    y: Stop | None
    back: tuple[str, ...] = ()


class Wall(Struct, frozen=True, kw_only=True):
    """A wall cut by the side of the cutter: where its centre goes, where the
    wall should be and comes out [m].
    """

    handle: str
    side: str
    centre: Stop
    wall: float
    comes_out: float


class Readings(Struct, frozen=True, kw_only=True):
    """What one step sets at the dials; `depths` are the readings after each layer,
    from where its cutter was touched.
    """

    key: str
    number: int
    places: tuple[At, ...] = ()
    wall: Wall | None = None
    depths: tuple[Stop, ...] = ()
    depth_handle: str = ""
    #: From where the depths count.
    depth_zero: str = ""
    warnings: tuple[str, ...] = ()


def readings_of(set_up: SetUp, reckoned: Reckoned, machine: Machine) -> tuple[Readings, ...]:
    """The readings of every step of a set-up that winds a handle to a place or a depth."""
    readings: list[Readings] = []
    last: dict[str, float] = {}
    walls: list[Wall] = []
    touch = Touch()
    for operation in set_up.operations:
        units = reckoned.job.units
        places = tuple(_at(machine, place, last, cuts=cuts) for place, cuts in _places(operation, units))
        wall = wall_of(set_up, operation, machine)
        touch = touch.at(operation)
        depths, handle = depths_of(operation, reckoned.operations[operation.key], machine, touch.wound)
        warnings = [
            f"{axis.upper()} {stop.drawing}: {stop.warning}"
            for at in places
            for axis, stop in (("x", at.x), ("y", at.y))
            if stop is not None and stop.warning
        ]
        warnings += [f"depth: {stop.warning}" for stop in depths if stop.warning]
        if wall is not None:
            warnings += _pairs(machine, wall, walls)
            walls.append(wall)
        if places or depths:
            readings.append(
                Readings(
                    key=operation.key, number=operation.number, places=places, wall=wall, depths=depths,
                    depth_handle=handle.name if handle and depths else "",
                    depth_zero=zero_words(touch, operation, units) if depths else "",
                    warnings=tuple(dict.fromkeys(warnings)),
                )
            )  # fmt: skip
        touch = touch.after(operation)
    return tuple(readings)


def _places(operation: Operation, units: str) -> list[tuple[Place, bool]]:
    """Where the cutter's centre goes, and whether it comes there in the cut,
    along a wall that is already as long.

    A pocket's corners are computed; each is one wall after the other, so a
    handle that turns back is backed off.
    """
    fields = operation.fields
    found = [(place, False) for name in ("at", "ends") for place in getattr(fields, name, None) or ()]
    try:
        corners = tuple(getattr(fields, "around", ()))
    except JobsheetError:  # its own figures say what is missing
        corners = ()
    found += [(Place(_worded(x, units), _worded(y, units)), False) for x, y in corners]
    return found + [(place, index > 0) for index, place in enumerate(getattr(fields, "path", None) or ())]


def _worded(value: float, units: str) -> Quantity:
    return Quantity(value, millimetres(value, units)[0])


def _at(machine: Machine, place: Place, last: dict[str, float], *, cuts: bool) -> At:
    """One place; `last` holds where the handles stand before it and is moved on."""
    stops: dict[str, Stop | None] = {}
    back = []
    for axis, size in (("x", place.x), ("y", place.y)):
        handle = machine.handle(axis)
        stops[axis] = stop(handle, size.value, size.text) if handle is not None else None
        if not cuts and axis in last and size.value < last[axis] - SAME_PLACE:
            back.append(axis)
        last[axis] = size.value
    return At(words=place.text, x=stops["x"], y=stops["y"], back=tuple(back))


def wall_of(set_up: SetUp, operation: Operation, machine: Machine) -> Wall | None:
    """The wall inside the work that a step cuts along its own path; None for every other step."""
    fields = operation.fields
    path, side = getattr(fields, "path", None), getattr(fields, "side", "")
    cutter = getattr(fields, "cutter", None)
    if path is None or side not in _LOW or cutter is None or cutter.diameter is None:
        return None
    axis = "y" if side in ("front", "rear") else "x"
    handle = machine.handle(axis)
    if handle is None:
        return None
    size: Any = getattr(path.points[0], axis)
    counts = set_up.zero.y_counts if axis == "y" else set_up.zero.x_counts
    low = _LOW[side] == (counts == _COUNTS[side])
    name = "low" if low else "high"
    centre = stop(handle, size.value, size.text)
    return Wall(
        handle=axis, side=name, centre=centre, wall=wall_at(size.value, cutter.diameter, name),
        comes_out=wall_at(centre.place, cutter.diameter, name),
    )  # fmt: skip


def _pairs(machine: Machine, wall: Wall, before: list[Wall]) -> list[str]:
    """Warnings where this wall and one cut before bound one feature and fall on different turns."""
    handle = machine.handle(wall.handle)
    pairs = []
    for other in before:
        if handle is None or other.handle != wall.handle or other.side == wall.side:
            continue
        if words := walls_warning(handle, other.centre, wall.centre):
            pairs.append(words)
    return pairs


def zero_words(touch: Touch, operation: Operation, units: str) -> str:
    """From where the depth dial counts: this cutter's own touch, and what came off the top since."""
    if touch.wound <= 0 or touch.step == operation.number:
        return "0 where this cutter touches the top"
    off, unit = millimetres(touch.wound, units)
    return f"0 where this cutter touched the top before step {touch.step}, {off} {unit} higher"


def depths_of(
    operation: Operation, outcome: Outcome, machine: Machine, wound: float = 0.0
) -> tuple[tuple[Stop, ...], Handle | None]:
    """The readings of the depth after each layer of a milling step, and the handle that sets it.

    `wound` is what came off the top since its cutter was touched on it [m].
    """
    figures, handle = outcome.figures, depth_handle(machine)
    if figures is None or handle is None or "milling" not in kind_of(operation.kind).groups:
        return (), handle
    if roles(operation).hole:
        return (
            (),
            handle,
        )  # fed down with the quill: its stop stands in the row, a millimetre below what goes through
    depth = getattr(operation.fields, "depth", None)
    total = (depth.value if depth is not None else None) or figures.value("hole_depth")
    if not total or depth is None:
        return (), handle
    layers = figures.count("layers")
    drawing = depth.text if wound <= 0 else f"{depth.text} below the top"
    return running(handle, (total / layers,) * layers, drawing, start=wound), handle


def approaches(machine: Machine) -> tuple[tuple[str, str], ...]:
    """For each table handle how places are come to: always from the low side,
    with the back-off of its own backlash.
    """
    return tuple(
        (name, approach_words(handle)) for name in ("x", "y") if (handle := machine.handle(name)) is not None
    )
