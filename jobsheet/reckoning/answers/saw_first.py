"""Whether the bulk comes off sooner with a saw."""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations import written
from jobsheet.operations.names import show
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.what_if import tried

#: A thinner slice than this is not sawn off: the saw wanders by as much (common practice) [m].
LEAST_SAWN = 5e-3


class SawFirst(Struct, frozen=True, kw_only=True):
    """The bulk sawn off before milling: minutes of the saw and of the rest against milling all of it [s]."""

    saw_time: float
    rest_time: float
    mill_time: float
    off: float
    leave: float
    words: str


def saw_first(
    operation: Operation, setting: Setting, leave: float = 1e-3, saw: str = "hand saw"
) -> SawFirst | None:
    """Whether the bulk is off sooner with a saw: None where milling is as quick,
    or there is nothing to saw off.

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
