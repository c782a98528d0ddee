"""The speed that was chosen between its neighbours, and what carries the cut where it does not: a slower step, or a pilot hole."""

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
from jobsheet.reckoning.what_if import Tried, tried

#: The drills that most workshops have, by the units of the job.
_BOXES = {"mm": "1 to 13 mm by 0.5", "in": "1/16 to 1/2 in by 1/64"}
#: A pilot beyond this share of the drill is a hole of its own, not a pilot (common practice).
_LARGEST_PILOT = 0.75


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
    """The speed that is set and the steps about it; where a stepless drive has it in another range too, that as well."""

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


class Proposal(Struct, frozen=True, kw_only=True):
    """What carries the cut: `what` is `speed`, `pilot` or `nothing`; the edits are what to type."""

    what: str
    label: str
    edits: tuple[tuple[str, str], ...] = ()
    speed: Neighbour | None = None
    pilot: Pilot | None = None


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


def neighbours_of(operation: Operation, setting: Setting) -> Neighbours | None:
    """The cut at its own speed and at the steps about it; None where no spindle is set or it cannot be reckoned."""
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
        return _neighbour(step, tried(kind, what_if.at_speed(fields, step.speed), setting), wanted)

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


def proposal_for(operation: Operation, setting: Setting) -> Proposal | None:
    """What to set where the spindle does not carry the cut, or a drill asks more than the hand gives.

    The fastest step that carries it; for a drill that none carries, or that no hand pushes, the pilot that
    makes it so. None where the cut is carried as it stands.
    """
    fields, kind = operation.fields, operation.kind
    if not hasattr(fields, "spindle"):
        return None
    now = tried(kind, fields, setting)
    share = _share(now)
    push = now.limit("quill-push")
    pushed = push is not None and push.verdict == "beyond"
    torque = now.limit("spindle-torque")
    stalls = torque is not None and torque.verdict == "beyond"
    if now.figures is None or share is None or (share <= 1 and not pushed and not stalls):
        return None
    chosen = tried(kind, what_if.at_speed(fields, None), setting)
    at = at_speed(setting.machine, chosen.value("spindle_speed") or 0.0)
    carried = _share(chosen)
    if not pushed and at is not None and carried is not None and carried <= 1:
        neighbour = _neighbour(at, chosen, chosen.value("wanted_speed"))
        label = f"{at.marked} rpm works: {neighbour.cutting_shown}, {carried * 100:.0f} % of the torque"
        return Proposal(
            what="speed", label=label, edits=(("spindle", f"{at.marked} rpm"),), speed=neighbour
        )  # fmt: skip
    if roles(operation).hole == "drill" and fields.cutter.kind == "drill":
        pilot = pilot_for(operation, setting)
        if pilot is not None:
            edits = (("spindle", ""),) if fields.spindle is not None else ()
            return Proposal(what="pilot", label=_pilot_words(pilot), edits=edits, pilot=pilot)
    return Proposal(what="nothing", label="No speed of this machine works: take less at once")


def _pilot_words(pilot: Pilot) -> str:
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
    best: tuple[int, Pilot] | None = None
    for size in box(_BOXES[setting.units]):
        if not least < size.diameter <= diameter * _LARGEST_PILOT:
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
    """The pilot drill itself, at its own usual feed, and the drill after it; both at the speed that carries them."""
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
    feed = first.value("feed_per_turn") or 0.0
    return Pilot(
        drill=size.name, diameter=size.diameter, feed=feed, feed_shown=show("feed_per_turn", feed, setting.units),
        speed=first.value("spindle_speed") or 0.0, share=_share(first), push=first.value("lever_push"),
        after_speed=after.value("spindle_speed") or 0.0, after_torque=after.value("torque") or 0.0,
        after_share=_share(after), after_thrust=after.value("thrust") or 0.0, after_push=after.value("lever_push"),
    )  # fmt: skip
