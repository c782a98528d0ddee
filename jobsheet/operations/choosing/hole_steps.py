"""What can be done next to the holes that stand there, with what it writes into the form of the new step."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.catalog.tools.cabinet_lines import SECTION_OF
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.reaming import reaming_stock
from jobsheet.catalog.tools.threads import ThreadRow, tap_drill, thread_table
from jobsheet.cutting.tapping import percent_of_thread
from jobsheet.errors import CalcError, QuantityError
from jobsheet.model.quantity import Cutter
from jobsheet.operations import written
from jobsheet.operations.choosing.filled import Texts, in_cabinet, with_size, with_thread
from jobsheet.operations.choosing.standing_here import Here
from jobsheet.operations.registry import kind as kind_of
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: A drill so near to a tapping drill cuts the hole for that thread [m]: two steps of
#: a set in tenths (common practice).
_NEAR = 0.11e-3
#: A chamfer stands out over the thread, or the hole, by this share of its
#: diameter (common practice, no source).
_OVER = 1.05
#: A hole that a boring bar goes into [m] (common practice, no source).
_BORED_FROM = 12e-3


class Hole(Struct, frozen=True, kw_only=True):
    """One thing to do to these holes: its kind, the size in its title, why, the texts,
    and why it cannot be cut just now.
    """

    kind: str
    reason: str = ""
    size: str = ""
    texts: Texts = ()
    why_not: str = ""


def _length(metres: float, units: str) -> str:
    """A size as the job writes it, without its unit."""
    return trimmed(metres * 1e3, 2) if units == "mm" else trimmed(metres / INCH, 4)


def _here(here: Here, texts: Texts = ()) -> Texts:
    """At the same places."""
    return (*texts, ("at", here.places.text)) if here.places is not None else texts


def drill(here: Here) -> Hole | None:
    """The hole that was marked; for a thread that is cut later, its tapping drill."""
    if here.has("drill"):
        return None
    thread = here.thread
    size = tap_drill(thread, here.thread_height) if thread is not None else None
    if thread is None or size is None:
        return Hole(kind=written.DRILL, reason="marked here", texts=_here(here))
    line = with_size(kind_of(written.DRILL), size.removesuffix(" mm"), here.units, here.cabinet)
    return Hole(kind=written.DRILL, size=size, reason=f"for {thread.text.strip()}", texts=_here(here, line))


def _thread_for(hole: float, units: str) -> ThreadRow | None:
    """The coarse thread of the job's own system whose tapping drill is nearest."""
    near: list[tuple[float, ThreadRow]] = []
    for row in thread_table().values():
        if not row.fine and row.name.startswith("M") == (units == "mm"):
            off = abs(read_drill_size(row.drill) - hole)
            if off <= _NEAR:
                near.append((off, row))
    return min(near, key=lambda one: one[0])[1] if near else None


def tap(here: Here) -> Hole | None:
    """A thread, where the hole is one for it and none is cut there."""
    hole = here.hole
    row = _thread_for(hole, here.units) if hole is not None else None
    if hole is None or row is None or here.has("tap"):
        return None
    try:
        left = percent_of_thread(row.major, hole, row.pitch)
    except CalcError:
        return None
    name = row.name.split(" ")[0].split("x")[0] if row.name.startswith("M") else row.name
    texts = with_thread(kind_of(written.HAND_TAP), name, here.units, here.cabinet)
    reason = f"{_length(hole, here.units)} leaves {round(left * 100)} % of thread"
    texts = _here(here, texts)
    why_not = _lacking(here, dict(texts).get("cutter", ""), f"no taps {name}")
    return Hole(kind=written.HAND_TAP, size=name, reason=reason, texts=texts, why_not=why_not)


def ream(here: Here) -> Hole | None:
    """A reamer of the next half millimetre or sixteenth, where the hole leaves it its published stock."""
    hole = here.hole
    if hole is None or here.has("ream") or here.has("tap") or here.thread is not None:
        return None
    step = 0.5e-3 if here.units == "mm" else INCH / 16
    to = (int(hole / step + 1e-6) + 1) * step
    stock = reaming_stock(to)
    if stock.outside or not stock.low - 1e-9 <= to - hole <= stock.high + 1e-9:
        return None
    size = _length(to, here.units)
    texts = _here(here, with_size(kind_of(written.REAM), size, here.units, here.cabinet))
    return Hole(
        kind=written.REAM,
        size=size,
        reason=f"{_length(to - hole, here.units)} is left for it",
        texts=texts,
        why_not=_lacking(here, dict(texts).get("cutter", ""), f"no reamer of {size}"),
    )


def countersink(here: Here) -> Hole | None:
    """The edge of the hole; before the tap where there will be one."""
    hole = here.hole
    if hole is None or here.has("countersink"):
        return None
    row = _thread_for(hole, here.units)
    thread = here.thread
    across = thread.major if thread is not None else row.major if row is not None else hole
    tenth = 0.1e-3 if here.units == "mm" else 0.005 * INCH
    to = _length(round(across * _OVER / tenth) * tenth, here.units)
    coming = (row is not None or thread is not None) and not here.done("tap")
    return Hole(
        kind=written.COUNTERSINK,
        size=f"to {to}",
        reason="before the tap" if coming else "takes the burr off",
        texts=_here(here, with_size(kind_of(written.COUNTERSINK), to, here.units, here.cabinet)),
    )


def counterbore(here: Here) -> Hole | None:
    """A seat for the head of a screw, where nothing else goes on in the hole."""
    if here.hole is None or here.has("counterbore") or here.has("tap") or here.thread is not None:
        return None
    return Hole(kind=written.COUNTERBORE, reason="a seat for a head", texts=_here(here))


def bore(here: Here) -> Hole | None:
    """A hole that a boring bar goes into is bored to its size."""
    if here.hole is None or here.hole < _BORED_FROM or here.has("bore") or here.has("tap"):
        return None
    return Hole(kind=written.BORE, reason="to its size, where it has to be", texts=_here(here))


def _lacking(here: Here, line: str, words: str) -> str:
    """What the cabinet lacks of it; nothing where it has it, or says nothing of such tools."""
    if here.cabinet is None or not line:
        return ""
    try:
        cutter: Cutter = read_cutter(line, here.units)
    except QuantityError:
        return ""
    if SECTION_OF.get(cutter.kind, "") not in here.cabinet.sections:
        return ""
    thread = None
    if cutter.kind == "tap":
        entry = kind_of(written.HAND_TAP).entry("thread")
        name = words.removeprefix("no taps ")
        thread = entry.read(name, here.units) if entry is not None else None
    thing = in_cabinet(here.cabinet, cutter, thread)
    return "" if thing is not None else f"{words} in the cabinet"
