"""What a field of a step can be filled with from the cabinet: entries that do
this work, the nearest first.
"""

from __future__ import annotations

import math
import re
from typing import Any

from msgspec import Struct

from jobsheet.catalog.tools.cabinet_lines import KINDS_OF
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import tap_drill
from jobsheet.model.job import Job, Operation
from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.model.quantity import Cutter, Place, Quantity, Thread
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.cabinet.cabinet_look import SAME, of_the_step

#: More than this is no longer looked through at a glance.
MOST = 20


class Pick(Struct, frozen=True, kw_only=True):
    """One entry to choose: the text that the field takes, how it is shown,
    and why it cannot be fetched now.
    """

    text: str
    shown: str
    away: str = ""
    note: str = ""


def picks(
    job: Job, operation: Operation, name: str, cabinet: Cabinet, *, most: int = MOST
) -> tuple[Pick, ...]:
    """What the cabinet has for the field of that name; nothing where it is no field for tools.

    A tap has the thread that the step names. A drill comes by how near it is to the size that is wanted: that
    of the thread which is cut later at the same place, else that of the drill which stands there. What a line
    says of the step and not of the tool (how far out, in what held) is kept.
    """
    entry = kind_of(operation.kind).entry(name)
    if entry is None:
        return ()
    if name == "wrench":
        return _wrenches(operation, cabinet)
    if entry.asks != "cutter":
        return ()
    now = getattr(operation.fields, name, None)
    cutter = now if isinstance(now, Cutter) else None
    thread = getattr(operation.fields, "thread", None)
    # Where a step by hand may have anything in its spindle, it is what stands there, else a finder.
    allowed = entry.choices or ((cutter.kind,) if cutter is not None else KINDS_OF["finders"])
    fitting = [
        thing
        for thing in cabinet.things
        if thing.cutter is not None
        and thing.cutter.kind in allowed
        and (thing.cutter.kind != "tap" or _cuts(thing, thread))
    ]
    wanted = _wanted(job, operation, cutter)
    fitting.sort(
        key=lambda thing: (
            _unlike(thing, cutter),
            _far(thing, wanted),
            _other_teeth(thing, cutter),
            not thing.here,
        )
    )
    kept = of_the_step(cutter) if cutter is not None else ()
    return tuple(_pick(thing, kept) for thing in fitting[:most])


def _pick(thing: Thing, kept: tuple[str, ...]) -> Pick:
    said = [part for part in kept if part not in thing.what]
    text = ", ".join(part for part in (thing.what, *said, thing.place) if part)
    return Pick(text=text, shown=thing.line, away=thing.away, note=thing.note)


def _cuts(thing: Thing, thread: Thread | None) -> bool:
    if thread is None or thing.thread is None:
        return True
    return abs(thread.major - thing.thread.major) <= SAME and abs(thread.pitch - thing.thread.pitch) <= SAME


def _unlike(thing: Thing, cutter: Cutter | None) -> bool:
    """Another kind of tool comes after all of the kind that stands there."""
    return cutter is not None and thing.name != cutter.kind


def _other_teeth(thing: Thing, cutter: Cutter | None) -> bool:
    return cutter is not None and thing.cutter is not None and thing.cutter.teeth != cutter.teeth


def _far(thing: Thing, wanted: float | None) -> float:
    """How far its size is from the wanted one, as a ratio."""
    size = thing.cutter.diameter if thing.cutter is not None else None
    if size is None or not wanted:
        return 0.0
    return round(abs(math.log(size / wanted)), 6)


def _wanted(job: Job, operation: Operation, cutter: Cutter | None) -> float | None:
    """The diameter that is looked for [m]."""
    if roles(operation).hole == "drill" and (cutter is None or cutter.kind == "drill"):
        later = _tapped_later(job, operation)
        name = tap_drill(later) if later is not None else None
        if name is not None:
            return read_drill_size(name)
    return cutter.diameter if cutter is not None else None


def _tapped_later(job: Job, operation: Operation) -> Thread | None:
    """The thread that a later step of the set-up cuts at one of the same places."""
    set_up, _ = job.find(operation.key)
    here = _spots(operation)
    steps = set_up.operations
    for later in steps[steps.index(operation) + 1 :]:
        thread = getattr(later.fields, "thread", None)
        if isinstance(thread, Thread) and here & _spots(later):
            return thread
    return None


def _spots(operation: Operation) -> frozenset[tuple[int, int]]:
    places: Any = getattr(operation.fields, "at", None) or ()
    return frozenset(place.spot for place in places if isinstance(place, Place))


def _wrenches(operation: Operation, cabinet: Cabinet) -> tuple[Pick, ...]:
    """The lengths of the tap wrenches, the nearest first."""
    now = getattr(operation.fields, "wrench", None)
    wanted = now.value if isinstance(now, Quantity) else 0.0
    things = [
        thing for thing in cabinet.of("wrenches") if thing.name == "tap wrench" and thing.size is not None
    ]
    things.sort(key=lambda thing: abs((thing.size or 0.0) - wanted))
    return tuple(
        Pick(
            text=re.sub(r"^.*?wrench(?:es)?\s+", "", thing.what.split(", ")[0]), shown=thing.line, away=thing.away, note=thing.note
        )
        for thing in things
    )  # fmt: skip
