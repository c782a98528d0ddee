"""The speed that was chosen between its neighbours, and the pilot hole after which a drill is
carried that is not from the solid.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.cuts.feeds import drill_feed
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.catalog.tools.drill_sets import DrillSize, box
from jobsheet.catalog.tools.webs import pilot as usual_pilot
from jobsheet.errors import JobsheetError
from jobsheet.machine.spindle import Speed, at_speed, neighbours
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations import written
from jobsheet.operations.names import show
from jobsheet.operations.registry import roles
from jobsheet.reckoning import what_if
from jobsheet.reckoning.adviser.advised import Advised
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.adviser.left_empty import filled, left_of
from jobsheet.reckoning.what_if import Tried, tried

#: The drills that most workshops have, by the units of the job.
_BOXES = {"mm": "1 to 13 mm by 0.5", "in": "1/16 to 1/2 in by 1/64"}
#: A pilot beyond this share of the drill is a hole of its own, not a pilot (common practice).
_LARGEST_PILOT = 0.75
#: A drill deeper than so many of its diameters buckles (estimate: factor 2, a bar of 0.6 of it).
_SLENDEST = 17.0


class Neighbour(Struct, frozen=True, kw_only=True):
    """One speed of the machine with this cut at it; shares are of the continuous torque there.

    `verdict` is that of the torque; `worst` names the limit nearest to giving out, with its own verdict.
    `over` is how far the speed lies above the one that the cutting speed asks for [-].
    """

    marked: str
    speed: float
    position: str
    cutting_speed: float | None
    cutting_shown: str
    torque: float | None
    continuous: float
    share: float | None
    verdict: str
    worst: str
    worst_verdict: str
    pace: float | None
    over: float | None


class Neighbours(Struct, frozen=True, kw_only=True):
    """The speed that is set and the steps about it; where a stepless drive has it
    in another range too, that as well.
    """

    below: Neighbour | None
    at: Neighbour
    above: Neighbour | None
    other_ranges: tuple[Neighbour, ...] = ()


class Pilot(Struct, frozen=True, kw_only=True):
    """A pilot hole that makes a drill possible: its own figures and those of the drill after it."""

    drill: str
    diameter: float
    feed: float
    feed_shown: str
    speed: float
    share: float | None
    push: float | None
    after_speed: float
    after_torque: float
    after_share: float | None
    after_thrust: float
    after_push: float | None


def _share(one: Tried) -> float | None:
    limit = one.limit("spindle-torque")
    return limit.share if limit is not None else None


def _neighbour(step: Speed, one: Tried, wanted: float | None) -> Neighbour:
    torque, worst = one.limit("spindle-torque"), one.governing
    return Neighbour(
        marked=step.marked, speed=step.speed, position=step.position or step.range,
        cutting_speed=one.value("cutting_speed"), cutting_shown=one.shown("cutting_speed"), torque=one.value("torque"),
        continuous=step.continuous, share=torque.share if torque else None, verdict=torque.verdict if torque else "unknown",
        worst=worst.title if worst else "", worst_verdict=worst.verdict if worst else "unknown",
        pace=one.value("handle_pace"), over=step.speed / wanted - 1 if wanted else None,
    )  # fmt: skip


def neighbours_of(
    operation: Operation, setting: Setting, typed: Operation | None = None
) -> Neighbours | None:
    """The cut at its own speed and at the steps about it; None where no spindle
    is set or it cannot be reckoned.

    Parameters
    ----------
    typed : Operation, optional
        The step as it is typed: what it leaves to the adviser is at each speed as recommended there,
        as it will be once that speed is set
    """
    fields, kind = operation.fields, operation.kind
    if not hasattr(fields, "spindle"):
        return None
    now = tried(kind, fields, setting)
    speed = now.value("spindle_speed")
    found = at_speed(setting.machine, speed) if speed is not None else None
    if speed is None or found is None:
        return None
    wanted = tried(kind, what_if.at_speed(fields, None), setting).value("wanted_speed")

    def there(step: Speed | None) -> Neighbour | None:
        if step is None:
            return None
        return _neighbour(step, tried(kind, _at(operation, typed, step.speed, setting), setting), wanted)

    below, above = neighbours(setting.machine, speed)
    others = []
    for span in setting.machine.spindle.ranges if not found.count else ():
        only = replace(setting.machine, spindle=replace(setting.machine.spindle, ranges=(span,)))
        step = at_speed(only, speed)
        if step is not None and step.range != found.range:
            one = tried(kind, what_if.at_speed(fields, speed), replace(setting, machine=only))
            others.append(_neighbour(step, one, wanted))
    return Neighbours(
        below=there(below), at=_neighbour(found, now, wanted), above=there(above), other_ranges=tuple(others)
    )


def _at(operation: Operation, typed: Operation | None, speed: float, setting: Setting) -> Any:
    """The fields of a step at another speed: with what it leaves to the adviser as recommended there."""
    if typed is None or not left_of(typed).names:
        return what_if.at_speed(operation.fields, speed)
    there = filled(replace(typed, fields=what_if.at_speed(typed.fields, speed)), setting)
    return what_if.at_speed(operation.fields, speed) if there is None else there.fields


def pilot_proposed(operation: Operation, setting: Setting, advised: Advised | None) -> Pilot | None:
    """The pilot to drill first where this drill cannot be carried from what
    stands there, however it is fed.
    """
    if advised is None or advised.clears:
        return None
    if roles(operation).hole != "drill" or operation.fields.cutter.kind != "drill":
        return None
    usual = usual_pilot(operation.fields.cutter.diameter or 0.0).high
    there = best_cut(operation, replace(setting, pilot=usual))
    return pilot_for(replace(operation, fields=there.fields) if there is not None else operation, setting)


def pilot_words(pilot: Pilot) -> str:
    """What to drill first, and what comes of the drill then."""
    push = f", lever {pilot.after_push:.0f} N" if pilot.after_push is not None else ""
    share = f", {pilot.after_share * 100:.0f} % of the torque" if pilot.after_share is not None else ""
    return f"Drill {pilot.drill} first: then {pilot.after_torque:.2f} N·m at {pilot.after_speed * 60:.0f} rpm{share}{push}"


def pilot_for(operation: Operation, setting: Setting) -> Pilot | None:
    """The pilot of the usual box after which this drill is carried, and which is carried itself.

    The best comes first: of a pilot's usual size (up to a third of the drill) with every limit as expected;
    of that size with torque for long and an easy push; a larger one; and one after which nothing is beyond.
    Of equals the smallest.
    """
    diameter = operation.fields.cutter.diameter
    if diameter is None:
        return None
    usual, least = usual_pilot(diameter).high, setting.pilot or 0.0
    asked = operation.fields.depth.value
    depth = asked if asked is not None else setting.thickness
    best: tuple[int, Pilot] | None = None
    for size in box(_BOXES[setting.units]):
        if not least < size.diameter <= diameter * _LARGEST_PILOT:
            continue
        if depth > _SLENDEST * size.diameter:  # it would buckle before it is through
            continue
        made = _with_pilot(operation, setting, size)
        if made is None or not made[0].carried or not made[1].carried or not made[1].value("pilot"):
            continue
        rank = _rank(*made, setting.shop.easy_push, small=size.diameter <= usual * (1 + 1e-3))
        if best is None or rank < best[0]:
            best = rank, _as_pilot(size, *made, setting)
    return best[1] if best is not None else None


def _rank(first: Tried, after: Tried, easy: float, *, small: bool) -> int:
    """How good a pilot is; nought is best. `easy` is the workshop's easy push [N]."""
    if first.easy and after.easy:
        return 0 if small else 2
    push = after.limit("quill-push")
    lasting = (_share(after) or 0.0) <= 1 and (push is None or push.demand <= easy)
    return 1 if small and lasting else 3


def _with_pilot(operation: Operation, setting: Setting, size: DrillSize) -> tuple[Tried, Tried] | None:
    """The pilot drill itself, at its own usual feed, and the drill after it;
    both at the speed that carries them.
    """
    from jobsheet.operations.kinds.drill import Fields

    fields: Any = operation.fields
    try:
        feed = drill_feed(size.diameter, setting.material).value
        cutter = read_cutter(f"drill {size.name}", setting.units)
    except JobsheetError:
        return None
    text = show("feed_per_turn", feed, setting.units)
    own = Fields(cutter=cutter, at=fields.at, depth=fields.depth, feed=Quantity(feed, text))
    after = what_if.at_speed(fields, None)
    if hasattr(after, "hole"):
        after = replace(after, hole=None)
    return tried(written.DRILL, own, setting), tried(
        operation.kind, after, replace(setting, pilot=size.diameter)
    )


def _as_pilot(size: DrillSize, first: Tried, after: Tried, setting: Setting) -> Pilot:
    feed = first.number("feed_per_turn")
    return Pilot(
        drill=size.name, diameter=size.diameter, feed=feed, feed_shown=show("feed_per_turn", feed, setting.units),
        speed=first.number("spindle_speed"), share=_share(first), push=first.value("lever_push"),
        after_speed=after.number("spindle_speed"), after_torque=after.number("torque"),
        after_share=_share(after), after_thrust=after.number("thrust"), after_push=after.value("lever_push"),
    )  # fmt: skip
