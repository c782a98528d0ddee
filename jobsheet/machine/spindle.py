"""What the spindle has: its speeds, and the torque and power it gives at each."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.cutting.kienzle import power_from_torque
from jobsheet.cutting.motor import constant_power_torque
from jobsheet.model.identity import by_identity
from jobsheet.model.machine import Machine, SpeedRange

#: A typed speed this near to a step is that step (a person writes 315 for 320): common practice.
SAME_STEP = 0.03


class Speed(Struct, frozen=True, kw_only=True):
    """One speed with what the spindle gives there: torques [N·m] and power [W] at the spindle nose."""

    speed: float
    marked: str
    position: str
    range: str
    index: int
    count: int
    continuous: float
    peak: float
    power: float


class Choice(Struct, frozen=True, kw_only=True):
    """The speed that was chosen, its neighbours, and why it is this one."""

    at: Speed
    wanted: float
    below: Speed | None
    above: Speed | None
    #: `asked`, `next below`, `slowest`, `fastest`, `carries the torque`, `not on this machine`
    why: str


def torque_at(machine: Machine, span: SpeedRange, speed: float) -> tuple[float, float]:
    """Continuous and peak torque [N·m] at the spindle in one range at one speed [rev/s].

    Source: cutting-data section 1.12. Plate power is constant over the steps of an induction
    drive; an electronic drive gives constant torque below its base speed. The cap (belt slip, gear
    teeth) stands over both.
    """
    spindle = machine.spindle
    at = max(speed, span.base) if span.base else speed
    continuous = constant_power_torque(
        power=spindle.power.value, efficiency=span.efficiency.value, spindle_speed=at
    )
    peak = continuous * spindle.short_peak
    if span.cap:
        continuous, peak = min(continuous, span.cap.value), min(peak, span.cap.value)
    return continuous, peak


def _made(
    machine: Machine, span: SpeedRange, speed: float, marked: str, position: str, index: int, count: int
) -> Speed:
    continuous, peak = torque_at(machine, span, speed)
    return Speed(
        speed=speed, marked=marked, position=position, range=span.name, index=index, count=count,
        continuous=continuous, peak=peak, power=power_from_torque(torque=continuous, spindle_speed=speed),
    )  # fmt: skip


@by_identity(64)
def steps(machine: Machine) -> tuple[Speed, ...]:
    """The speeds of a stepped drive, slowest first; empty for a stepless one."""
    count = sum(len(span.steps) for span in machine.spindle.ranges)
    rows = [(step, span) for span in machine.spindle.ranges for step in span.steps]
    rows.sort(key=lambda row: row[0].speed)
    return tuple(
        _made(machine, span, step.speed, step.marked, step.position, index, count)
        for index, (step, span) in enumerate(rows, 1)
    )


def lowest(machine: Machine) -> float:
    """The slowest speed there is [rev/s]."""
    return min(speed for speed, _ in _ends(machine))


def highest(machine: Machine) -> float:
    """The fastest speed there is [rev/s]."""
    return max(speed for _, speed in _ends(machine))


def _ends(machine: Machine) -> Iterator[tuple[float, float]]:
    for span in machine.spindle.ranges:
        if span.steps:
            speeds = [step.speed for step in span.steps]
            yield min(speeds), max(speeds)
        if span.lowest is not None and span.highest is not None:
            yield span.lowest, span.highest


def at_speed(machine: Machine, speed: float) -> Speed | None:
    """That speed as the machine has it, in the range that gives most torque; None if it has not."""
    for step in steps(machine):
        if abs(step.speed - speed) <= SAME_STEP * step.speed:
            return step
    best = None
    for span in machine.spindle.ranges:
        if span.lowest is not None and span.highest is not None and span.lowest <= speed <= span.highest:
            marked = f"{speed * 60:.0f}"
            found = _made(machine, span, speed, marked, span.name, 0, 0)
            if best is None or found.continuous > best.continuous:
                best = found
    return best


def _stepless(machine: Machine, wanted: float) -> Speed:
    """The wanted speed on a stepless drive, to a round number a knob can be set to, or the nearest end."""
    bottom, top = lowest(machine), highest(machine)
    rounding = 10 / 60
    speed = max(bottom, min(top, wanted))
    rounded = int(speed / rounding + 1e-9) * rounding
    return at_speed(machine, max(rounded, bottom)) or _nearest(machine, speed)


def _nearest(machine: Machine, wanted: float) -> Speed:
    """The speed of the machine that is nearest, whatever its drive."""
    known = steps(machine)
    if known:
        return min(known, key=lambda step: abs(step.speed - wanted))
    speed = at_speed(machine, max(lowest(machine), min(highest(machine), wanted)))
    assert speed is not None
    return speed


def neighbours(machine: Machine, speed: float) -> tuple[Speed | None, Speed | None]:
    """The next step below and above; None at the ends and for a stepless drive."""
    known = steps(machine)
    below = [step for step in known if step.speed < speed * (1 - 1e-9)]
    above = [step for step in known if step.speed > speed * (1 + 1e-9)]
    return (below[-1] if below else None), (above[0] if above else None)


def choose(machine: Machine, wanted: float, torque: float, asked: float | None) -> Choice:
    """The speed to set.

    A speed that the person asked for stands as it is. Else the fastest step that is not above the
    wanted speed and whose continuous torque carries the cut; if none carries it, the slowest, and
    the limits say so.

    Parameters
    ----------
    wanted : float
        Speed from the cutting speed [rev/s]
    torque : float
        Mean torque of the cut [N·m]
    asked : float or None
        Speed typed by the person [rev/s]
    """
    if asked is not None:
        speed = at_speed(machine, asked)
        at = speed or _nearest(machine, asked)
        below, above = neighbours(machine, asked if speed is None else at.speed)
        return Choice(
            at=at, wanted=asked, below=below, above=above, why="asked" if speed else "not on this machine"
        )
    known = steps(machine)
    if not known:
        at = _stepless(machine, wanted)
        why = "slowest" if wanted < lowest(machine) else "fastest" if wanted > highest(machine) else "asked"
        return Choice(at=at, wanted=wanted, below=None, above=None, why=why)
    allowed = [step for step in known if step.speed <= wanted * (1 + 1e-9)]
    at, why = (allowed[-1], "next below") if allowed else (known[0], "slowest")
    carrying = [step for step in allowed if step.continuous >= torque]
    if carrying and carrying[-1] is not at:
        at, why = carrying[-1], "carries the torque"
    below, above = neighbours(machine, at.speed)
    return Choice(at=at, wanted=wanted, below=below, above=above, why=why)
