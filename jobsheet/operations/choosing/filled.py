"""What a size or a thread, typed with the name of a kind, writes into the form of a new step."""

from __future__ import annotations

import re
from typing import Any

from jobsheet.errors import QuantityError
from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.model.quantity import Cutter, Thread
from jobsheet.operations.choosing.order_of_work import role_of
from jobsheet.operations.kind import Kind
from jobsheet.units.lazily import pattern

Texts = tuple[tuple[str, str], ...]
#: The first size of a cutter's line, with its unit where it has one.
_SIZE = pattern(r"(?<![\w.])(\d+(?:[.,/]\d+)?)(\s*mm|\s*in)?(?= H\d|,|$)")
#: A number alone, without a unit.
_BARE = pattern(r"^\d+(?:[.,]\d+)?$")
#: Roles whose own size is not that of the cutter, and the field that it is typed into.
_OWN_SIZE = {"bore": "to", "countersink": "to", "edge": "size"}
#: Two sizes nearer than this are one [m]: a hundredth of a millimetre, finer than any set of cutters.
_SAME = 1e-5


def with_size(kind: Kind[Any], size: str, units: str, cabinet: Cabinet | None) -> Texts:
    """The texts that a size gives a new step of that kind; nothing where it has no size, or not that one."""
    with_unit = f"{size} {units}" if _BARE.match(size) else size
    name = _OWN_SIZE.get(role_of(kind.name))
    if name is not None:
        return _readable(kind, ((name, with_unit),), units)
    if kind.entry("thread") is not None:
        return with_thread(kind, f"M{size}", units, cabinet) if units == "mm" and _BARE.match(size) else ()
    for entry in kind.entries:
        if entry.asks == "cutter" and not entry.optional and (before := kind.example.get(entry.name)):
            line, hits = _SIZE.subn(
                lambda match: size if match.string[match.end() :].startswith(" H") else with_unit,
                before,
                count=1,
            )
            made = _readable(kind, ((entry.name, line),), units) if hits else ()
            return _from_cabinet(kind, made, units, cabinet)
    return ()


def with_thread(kind: Kind[Any], thread: str, units: str, cabinet: Cabinet | None) -> Texts:
    """The texts that a thread gives a new step of that kind; nothing where it cuts none."""
    if kind.entry("thread") is None:
        return ()
    line = re.sub(r"M\d+", thread, kind.example.get("cutter", f"taps {thread}"), count=1)
    made = _readable(kind, (("cutter", line), ("thread", thread)), units)
    return _from_cabinet(kind, made, units, cabinet)


def _readable(kind: Kind[Any], texts: Texts, units: str) -> Texts:
    """These texts where the form takes all of them, else nothing."""
    try:
        for name, text in texts:
            entry = kind.entry(name)
            if entry is None:
                return ()
            entry.read(text, units)
    except QuantityError:
        return ()
    return texts


def _from_cabinet(kind: Kind[Any], texts: Texts, units: str, cabinet: Cabinet | None) -> Texts:
    """The same texts with the line of the cabinet for the cutter, where it has that cutter."""
    if cabinet is None or not texts:
        return texts
    known = dict(texts)
    entry = kind.entry("cutter")
    cutter = entry.read(known["cutter"], units) if entry is not None and "cutter" in known else None
    if not isinstance(cutter, Cutter):
        return texts
    thread = kind.entry("thread")
    wanted = thread.read(known["thread"], units) if thread is not None and "thread" in known else None
    thing = in_cabinet(cabinet, cutter, wanted)
    if thing is None:
        return texts
    line = ", ".join(part for part in (thing.what, thing.place) if part)
    return _readable(kind, tuple((name, line if name == "cutter" else text) for name, text in texts), units)


def in_cabinet(cabinet: Cabinet, cutter: Cutter, thread: Thread | None = None) -> Thing | None:
    """The thing of the cabinet that is such a cutter, one that is in its place before one that is not."""
    fitting = [
        thing
        for thing in cabinet.things
        if thing.cutter is not None and thing.cutter.kind == cutter.kind and _like(thing, cutter, thread)
    ]
    return min(fitting, key=lambda thing: not thing.here, default=None)


def _like(thing: Thing, cutter: Cutter, thread: Thread | None) -> bool:
    if thread is not None:
        return (
            thing.thread is not None
            and abs(thing.thread.major - thread.major) < _SAME
            and abs(thing.thread.pitch - thread.pitch) < _SAME
        )
    size = thing.cutter.diameter if thing.cutter is not None else None
    return size is not None and cutter.diameter is not None and abs(size - cutter.diameter) < _SAME
