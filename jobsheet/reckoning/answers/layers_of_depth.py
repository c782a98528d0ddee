"""How a depth is parted into passes that are carried, and whether the bulk comes off sooner with a saw."""

from __future__ import annotations

from math import ceil
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CalcError
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations import written
from jobsheet.operations.names import show
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.answers.inverse import Answer, deepest_pass
from jobsheet.reckoning.what_if import tried
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: A thinner slice than this is not sawn off: the saw wanders by as much (common practice) [m].
LEAST_SAWN = 5e-3


class Passes(Struct, frozen=True, kw_only=True):
    """A depth in equal layers that are carried, with the last one kept for the finish; what to type for it."""

    count: int
    each: float
    finish: float
    verdict: str
    edits: tuple[tuple[str, str], ...]
    words: str


class SawFirst(Struct, frozen=True, kw_only=True):
    """The bulk sawn off before milling: minutes of the saw and of the rest against milling all of it [s]."""

    saw_time: float
    rest_time: float
    mill_time: float
    off: float
    leave: float
    words: str


def split_passes(
    operation: Operation, setting: Setting, finish: float = 0.0, deepest: Answer | None = None
) -> Passes:
    """The depth of a milling step in equal layers that are as expected, or at least carried; the finish kept apart.

    Parameters
    ----------
    finish : float
        What is kept for the last, light layer [m]
    deepest : Answer
        The deepest pass where it is known already; asking for it is nearly all of the work

    Raises
    ------
    CalcError
        If nothing is left to rough, or no layer however thin is carried.
    """
    fields = operation.fields
    depth = fields.depth.value if getattr(fields, "depth", None) is not None else None
    total = depth if depth is not None else setting.thickness
    if not 0 <= finish < total:
        raise CalcError("finish", f"{finish * 1e3:g} mm", "less than the whole depth")
    found = deepest if deepest is not None else deepest_pass(operation, setting)
    most, verdict = (found.expected, "expected") if found.expected else (found.tight, "tight")
    if not most:
        raise CalcError("depth", "of any size", f"carried: {found.stops}")
    if found.plan is not None and found.plan < most:
        most, verdict = found.plan, "unknown"
    count = max(1, ceil((total - finish) / most - 1e-9))
    each = (total - finish) / count
    units = setting.units
    unit = 1e-3 if units == "mm" else INCH
    text = f"{trimmed(each / unit, 4)} {units}"
    typed = _typed_layer(each / unit, (total - finish) / unit, count, units)
    words = f"{count} layer{'' if count == 1 else 's'} of {text}"
    if finish:
        words += f", then {trimmed(finish / unit, 4)} {units} to finish"
    edits = () if finish or not hasattr(fields, "layer") else (("layer", "" if count == 1 else typed),)
    return Passes(count=count, each=each, finish=finish, verdict=verdict, edits=edits, words=words)


def _typed_layer(each: float, total: float, count: int, units: str) -> str:
    """A layer as it is typed: rounded up, never down, so that no sliver is left for one layer more."""
    for decimals in (2, 3, 4, 6) if units == "mm" else (3, 4, 6):
        rounded = ceil(each * 10**decimals - 1e-6) / 10**decimals
        if ceil(total / rounded - 1e-9) == count:
            return f"{trimmed(rounded, decimals)} {units}"
    return f"{each:.9g} {units}"


def saw_first(
    operation: Operation, setting: Setting, leave: float = 1e-3, saw: str = "hand saw"
) -> SawFirst | None:
    """Whether the bulk is off sooner with a saw: None where milling is as quick, or there is nothing to saw off.

    A side of the work as high as the cut is one saw cut, a step two; `leave` stays for milling [m].
    """
    fields, kind = operation.fields, operation.kind
    whole, mills = tried(kind, fields, setting), roles(operation).mills
    mill = whole.value("cutting_time")
    if mill is None or mills not in ("wall", "flat") or getattr(fields, "path", None) is not None:
        return None
    name = "width" if mills == "wall" else "depth"
    thick = getattr(fields, name).value
    off = thick - leave
    if off < LEAST_SAWN:
        return None
    kept = Quantity(leave, f"{leave * 1e3:.9g} mm")
    rest = tried(kind, replace(fields, **{name: kept}), setting).value("cutting_time")
    if rest is None:
        return None
    long, wide, high = setting.extent
    if mills == "flat":
        cuts = [(long, wide)]
    else:
        length = fields.length.value if fields.length is not None else (wide if fields.along == "y" else long)
        through = fields.depth.value >= high - 1e-6
        cuts = [(length, fields.depth.value)] + ([] if through else [(length, fields.width.value)])
    sawn = 0.0
    for across, tall in cuts:
        found = tried(written.SAW, _saw(across, tall, off, saw), setting).value("bench_minutes")
        if found is None:
            return None
        sawn += found
    if sawn + rest >= mill:
        return None
    show_time = "cutting_time"
    words = (
        f"Saw first: {show(show_time, sawn, setting.units)} with a {saw} and {show(show_time, rest, setting.units)} to mill the"
        f" rest, against {show(show_time, mill, setting.units)} to mill all of it"
    )
    return SawFirst(saw_time=sawn, rest_time=rest, mill_time=mill, off=off, leave=leave, words=words)


def _saw(across: float, tall: float, off: float, saw: str) -> Any:
    def made(value: float) -> Quantity:
        return Quantity(value, f"{value * 1e3:.9g} mm")

    return kind_of(written.SAW).fields(off=made(off), area=made(across), thickness=made(tall), saw=saw)
