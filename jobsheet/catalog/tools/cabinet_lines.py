"""The lines of a cabinet: cutting tools as in a job, and in the same manner what holds, lifts and measures.

drills 1 mm to 10 mm by 0.5 mm
parallels 6 x 20 x 120 mm
collet chuck, collets 6 mm, 8 mm, 10 mm
drill chuck 1 mm to 13 mm
tap wrench 180 mm
micrometer 0 mm to 25 mm
plug gauge 16 H7

A size has its unit written: the same line goes into jobs in millimetres and in inches.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import cache

from msgspec import Struct

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.catalog.tools.drill_sets import drill_set
from jobsheet.catalog.tools.drills import name_in, read_drill_size
from jobsheet.catalog.tools.threads import read_thread
from jobsheet.catalog.trade.tolerances import read_size
from jobsheet.errors import QuantityError
from jobsheet.model.quantity import Cutter, Thread
from jobsheet.units.grammar import nearest, read
from jobsheet.units.lazily import pattern

#: Section -> the kinds of cutter that stand in it. Others hold what is no cutter.
KINDS_OF: dict[str, tuple[str, ...]] = {
    "cutters": (
        "end mill", "slot drill", "face mill", "fly cutter", "chamfer mill", "slitting saw", "boring head",
    ),
    "drills": ("drill", "spot drill", "centre drill", "core drill"),
    "taps": ("tap",),
    "reamers": ("reamer",),
    "countersinks": ("countersink", "counterbore"),
    "finders": ("edge finder",),
}  # fmt: skip
SECTIONS = (*KINDS_OF, "holders", "parallels", "gauges", "wrenches", "bench")
SECTION_OF = {kind: section for section, kinds in KINDS_OF.items() for kind in kinds}
#: What holds a tool -> how a job says it.
HOLDERS = {
    "collet chuck": "collet", "drill chuck": "drill chuck", "end-mill holder": "end-mill holder",
    "end mill holder": "end-mill holder", "arbor": "arbor", "tapping head": "tapping head",
}  # fmt: skip
GAUGES = (
    "depth micrometer", "micrometer", "depth gauge", "height gauge", "calliper", "caliper", "bore gauge",
    "plug gauge", "slot gauge", "thread gauge", "radius gauge", "feeler gauge", "gauge blocks", "gauge",
    "dial indicator", "dial test indicator", "square", "rule",
)  # fmt: skip
#: More drills than this in one line is a slip: the number drills, the largest set, are 80.
MOST = 400
_RANGE = pattern(r"^drills?\s+(?P<low>.+?)\s+to\s+(?P<high>.+?)(?:\s+by\s+(?P<step>.+))?$", re.IGNORECASE)
_NUMBER = pattern(r"^\s*(?P<number>\d+(?:[.,]\d+)?|\d+/\d+|\d+[ \-]\d+/\d+)\s*(?P<unit>mm|in|\")?\s*$")
_SPAN = pattern(r"^(?P<low>.+?)\s*(?:\bto\b|–|-)\s*(?P<high>.+)$", re.IGNORECASE)
_ACROSS = pattern(r"\s*[x×]\s*", re.IGNORECASE)
_UNIT = pattern(r"(mm|in|\")\s*$", re.IGNORECASE)


class Read(Struct, frozen=True, kw_only=True):
    """What one line says; a line that names a set of drills gives several."""

    what: str
    name: str
    cutter: Cutter | None = None
    thread: Thread | None = None
    styles: tuple[str, ...] = ()
    size: float | None = None
    low: float | None = None
    high: float | None = None
    sizes: tuple[float, ...] = ()


def read_line(section: str, text: str, missing: str = "") -> tuple[Read, ...]:
    """What a line of a section says.

    Parameters
    ----------
    section : str
        One of `SECTIONS`
    text : str
        The line, without its place
    missing : str
        Of a set of drills, the sizes that are not there

    Raises
    ------
    QuantityError
        With a sentence that says what to write.
    """
    line = text.strip()
    if not line:
        raise QuantityError("nothing is written here; write what it is, such as end mill 12 mm, 4 teeth")
    if section == "drills" and (match := _RANGE.match(line.split(",", maxsplit=1)[0])):
        return _set(match, line, missing)
    if missing.strip():
        raise QuantityError(
            "only a set of drills has missing ones; write it as drills 1 mm to 10 mm by 0.5 mm"
        )
    if section in KINDS_OF:
        return (_tool(section, line),)
    return (_OTHERS[section](line),)


def _tool(section: str, line: str) -> Read:
    """A cutting tool or a finder: read as in a job, in both systems, which must agree."""
    cutter, inches = read_cutter(line, "mm"), read_cutter(line, "in")
    if cutter != inches:
        raise QuantityError(
            f"“{line}” has a size without its unit; write it out, such as 12 mm: the line goes into jobs of both systems"
        )
    if cutter.kind not in KINDS_OF[section]:
        right = SECTION_OF[cutter.kind]
        raise QuantityError(f"a {cutter.kind} stands under {right}, not under {section}; put it there")
    thread = read_thread(cutter.size) if cutter.kind == "tap" and cutter.size else None
    sized = cutter.kind not in ("edge finder", "boring head", "fly cutter")
    if sized and cutter.diameter is None:
        raise QuantityError(f"“{line}” has no size; write, for example, {cutter.kind} {_sample(cutter.kind)}")
    return Read(what=line, name=cutter.kind, cutter=cutter, thread=thread, styles=tap_styles(cutter.style))


def _sample(kind: str) -> str:
    return {"tap": "M6", "reamer": "16 mm H7"}.get(kind, "12 mm")


def tap_styles(style: str) -> tuple[str, ...]:
    """The taps of a set, one by one: `taper and plug` are two."""
    return tuple(part for part in re.split(r",\s*|\s+and\s+", style.casefold()) if part)


# --- sets of drills ---


def _set(match: re.Match[str], line: str, missing: str) -> tuple[Read, ...]:
    """Every drill of a set as a line of its own."""
    head, comma, rest = line.partition(",")
    del head
    behind = f",{rest}" if comma else ""
    names = _named_run(match) or _measured_run(match)
    gone = [read_drill_size(part, "mm") for part in re.split(r",\s+|;\s*", missing) if part.strip()]
    drills, left_out = [], 0
    for name in names:
        tool = _tool("drills", f"drill {name}{behind}")
        diameter = tool.cutter.diameter if tool.cutter else None
        if diameter is not None and any(abs(diameter - one) < 1e-7 for one in gone):
            left_out += 1
            continue
        drills.append(tool)
    if left_out < len(gone):
        raise QuantityError(
            f"“{missing.strip()}”: not all of these are in the set; write only sizes that it has"
        )
    return tuple(drills)


def _named_run(match: re.Match[str]) -> list[str]:
    """A run of numbers or letters, such as #1 to #60; empty where it is none."""
    low, high = name_in(match["low"]), name_in(match["high"])
    if low is None or high is None:
        return []
    known = [row.name for name in ("number", "letter") for row in drill_set(name)]
    if match["step"] or low not in known or high not in known or low.startswith("#") != high.startswith("#"):
        raise QuantityError(f"“{match[0]}” is not a run of drills; write drills #1 to #60, or drills A to Z")
    family = drill_set("number" if low.startswith("#") else "letter")
    order = [row.name for row in family]
    first, last = sorted((order.index(low), order.index(high)))
    return order[first : last + 1]


def _measured_run(match: re.Match[str]) -> list[str]:
    """A run of sizes by a step; the unit stands at one of them or at all."""
    parts = {name: _NUMBER.match(match[name] or "") for name in ("low", "high", "step")}
    units = {part["unit"] for part in parts.values() if part is not None and part["unit"]}
    if any(part is None for part in parts.values()) or len({unit.replace('"', "in") for unit in units}) != 1:
        raise QuantityError(
            f"“{match[0]}” is not a set of drills; write drills 1 mm to 10 mm by 0.5 mm, or drills #1 to #60"
        )
    unit = units.pop().replace('"', "in")
    low, high, step = (_fraction(parts[name]["number"]) for name in ("low", "high", "step"))  # type: ignore[index]
    if not 0 < low <= high or step <= 0 or (high - low) / step > MOST:
        raise QuantityError(
            f"“{match[0]}”: it runs from a small size to a larger one, in at most {MOST} steps"
        )
    count = int((high - low) / step)
    if low + step * count != high:
        raise QuantityError(f"“{match[0]}”: by this step it does not come to {match['high'].strip()}")
    return [f"{_written(low + step * index, unit)} {unit}" for index in range(count + 1)]


def _fraction(text: str) -> Fraction:
    whole, _, part = text.replace(",", ".").replace("-", " ").partition(" ")
    return Fraction(whole) + (Fraction(part) if part else 0)


def _written(size: Fraction, unit: str) -> str:
    """6.5, 13/64, 1-1/16: as it is marked on a drill."""
    if unit == "mm":
        return f"{float(size):g}"
    whole, rest = divmod(size, 1)
    parts = [str(whole)] if whole or not rest else []
    return "-".join([*parts, *([f"{rest.numerator}/{rest.denominator}"] if rest else [])])


# --- what is no cutter ---


def length_of(text: str) -> float:
    """A length whose unit is written [m]; raises QuantityError."""
    both = read(text, "length", "mm"), read(text, "length", "in")
    if abs(both[0] - both[1]) > 1e-12:
        raise QuantityError(f"“{text.strip()}” has no unit; write {text.strip()} mm or {text.strip()} in")
    return both[0]


def span_of(text: str) -> tuple[float, float] | None:
    """A range such as `0 mm to 25 mm`, `0-25 mm` [m]; a unit at its end holds
    for both. None where it is none.
    """
    match = _SPAN.match(text.strip())
    if match is None:
        return None
    unit = _UNIT.search(match["high"])
    low = match["low"] if _UNIT.search(match["low"]) or unit is None else f"{match['low']} {unit[1]}"
    try:
        found = length_of(low), length_of(match["high"])
    except QuantityError:
        return None
    return found if found[0] < found[1] else None


def _parallels(line: str) -> Read:
    """Thickness x height x length, or thickness x height."""
    match = re.match(r"^parallels?\s+(.+)$", line, re.IGNORECASE)
    sizes = _ACROSS.split(match[1].strip()) if match else []
    unit = _UNIT.search(sizes[-1]) if sizes else None
    if not 2 <= len(sizes) <= 3 or unit is None:
        raise QuantityError(
            f"“{line}”: write thickness, height and length, such as parallels 6 x 20 x 120 mm"
        )
    lengths = [length_of(size if _UNIT.search(size) else f"{size} {unit[1]}") for size in sizes]
    if min(lengths) <= 0:
        raise QuantityError(f"“{line}”: each size must be above zero")
    return Read(what=line, name="parallels", size=lengths[0], high=lengths[1], sizes=tuple(lengths))


def _holder(line: str) -> Read:
    head, _, rest = line.partition(",")
    name = next(
        (name for name in sorted(HOLDERS, key=len, reverse=True) if head.casefold().startswith(name)), None
    )
    if name is None:
        near = nearest(head, tuple(HOLDERS))
        hint = f"did you mean {near}?" if near else f"write {', '.join(dict.fromkeys(HOLDERS.values()))}"
        raise QuantityError(f"“{head}” names no holder; {hint}")
    inside = head[len(name) :].strip()
    low = high = None
    if inside and (span := span_of(inside)):
        low, high = span
    elif inside and not re.match(r"^M\d", inside):
        low = high = length_of(inside)
    collets = re.match(r"^\s*collets?\s+(.+)$", rest, re.IGNORECASE)
    sizes = tuple(length_of(part) for part in re.split(r",\s+", collets[1])) if collets else ()
    return Read(what=line, name=HOLDERS[name], low=low, high=high, sizes=sizes)


def _wrench(line: str) -> Read:
    match = re.match(r"^(?P<name>.*?wrench(?:es)?)\s+(?P<length>.+)$", line, re.IGNORECASE)
    if match is None:
        raise QuantityError(f"“{line}” is no wrench with its length; write tap wrench 180 mm")
    return Read(what=line, name=match["name"].casefold(), size=length_of(match["length"].split(",")[0]))


@cache
def _gauges() -> tuple[tuple[str, re.Pattern[str]], ...]:
    """The kinds of gauge, the longest name first, each with what a text that begins with it looks like."""
    longest = sorted(GAUGES, key=len, reverse=True)
    return tuple((name, pattern(rf"{re.escape(name)}s?(?![a-z])")) for name in longest)


def gauge_named(text: str) -> tuple[str, str] | None:
    """The kind of gauge that a text begins with, and what stands behind it; None where it is none."""
    folded = text.strip().casefold()
    for name, begins in _gauges():
        if folded.startswith(name) and begins.match(folded):
            return name.replace("caliper", "calliper"), text.strip()[len(name) :].removeprefix("s").strip()
    return None


def gauge_sizes(size: str, units: str = "mm") -> tuple[float | None, float | None]:
    """The limits of a gauge for a size (`10.00/10.05`, `16 H7`), or the range of a measuring tool [m]."""
    if not size:
        return None, None
    if (span := span_of(size) or span_of(f"{size} {units}")) is not None:
        return span
    match = re.match(r"^([\d.,]+)\s*/\s*([\d.,]+)\s*(mm|in)?$", size)
    if match is not None and "." in match[1] + match[2]:
        unit = match[3] or units
        return length_of(f"{match[1]} {unit}"), length_of(f"{match[2]} {unit}")
    try:
        found = read_size(size, units)
    except QuantityError:
        return None, None
    return found.low, found.high


def _gauge(line: str) -> Read:
    named = gauge_named(line)
    if named is None:
        near = nearest(line.split(maxsplit=1)[0], GAUGES)
        hint = f"did you mean {near}?" if near else "write, for example, micrometer 0 mm to 25 mm"
        raise QuantityError(f"“{line}” names no gauge; {hint}")
    name, size = named
    if name == "thread gauge" and size:
        thread = read_thread(size)
        return Read(what=line, name=name, thread=thread)
    low, high = gauge_sizes(size.split(", ")[0])
    if size and re.match(r"^\d", size) and low is None:
        raise QuantityError(
            f"“{size}” is no size of a gauge; write 0 mm to 25 mm, 10.00/10.05 mm or 16 mm H7"
        )
    return Read(what=line, name=name, low=low, high=high)


def _bench(line: str) -> Read:
    return Read(what=line, name=line.casefold())


_OTHERS = {
    "holders": _holder, "parallels": _parallels, "gauges": _gauge, "wrenches": _wrench, "bench": _bench,
}  # fmt: skip
