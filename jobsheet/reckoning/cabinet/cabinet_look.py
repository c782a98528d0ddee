"""What a job asks for, looked up in the cabinet: there, elsewhere, not there
now, or lacking, with what is nearest.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache

from msgspec import Struct

from jobsheet.catalog.tools.cutters import MATERIALS, STATES
from jobsheet.catalog.tools.places import lies_in, parted
from jobsheet.errors import QuantityError
from jobsheet.model.identity import by_identity
from jobsheet.model.job import Job
from jobsheet.model.own_tools import Cabinet, Thing
from jobsheet.model.quantity import Cutter
from jobsheet.reckoning.cabinet.cabinet_needs import Need, needs_of
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern
from jobsheet.units.show import trimmed

#: Two tools closer than this are one size [m]: below what a micrometer shows, above the rounding of inches.
SAME = 0.5e-6
#: Of the tools of one kind, so many are named as the nearest.
NEAREST = 2
#: Kinds whose angle matters, also where it is the usual one and not written.
_ANGLED = ("spot drill", "chamfer mill", "countersink", "centre drill")
_SPLIT = pattern(r",\s+|;\s*|\s+·\s+")
#: What a line says of how the tool is held for this step, and not of the tool.
_OF_THE_STEP = pattern(r"^in (a |an |the )?|\bout\b|\bstick-?out\b", re.IGNORECASE)
_FIT = pattern(r"\b(?P<fit>[A-Za-z]{1,2}\d{1,2})$")
_WITHIN = pattern(r"(?:pilot\s+)?(?P<size>[\d.,/]+(?:\s*(?:mm|in))?)", re.IGNORECASE)

HAS, NEAR, LACKS, OUT, ELSEWHERE, SILENT = "has", "near", "lacks", "not there now", "elsewhere", "not listed"


class Look(Struct, frozen=True, kw_only=True):
    """What the cabinet says to one need.

    `status` is `has`, `near`, `lacks`, `not there now`, `elsewhere`, or `not listed` where the
    cabinet says nothing of such things. `near` are the nearest that it has; `sentence` says what
    is lacking, empty where nothing is.
    """

    need: Need
    status: str
    thing: Thing | None = None
    near: tuple[Thing, ...] = ()
    sentence: str = ""

    @property
    def lacking(self) -> bool:
        """Whether it has to be got before this step can be done as planned."""
        return self.status in (NEAR, LACKS, OUT)


def look_through(job: Job, cabinet: Cabinet) -> tuple[Look, ...]:
    """Everything that a job asks for, looked up."""
    look = _remembered(cabinet)
    return tuple(look(need) for need in _needs(job))


@by_identity(8)
def _needs(job: Job) -> tuple[Need, ...]:
    return needs_of(job)


@by_identity(4)
def _remembered(cabinet: Cabinet) -> Callable[[Need], Look]:
    """Looks up in this cabinet, remembered by value: an edit costs the needs that changed."""
    return lru_cache(maxsize=512)(lambda need: look_up(need, cabinet))


def look_up(need: Need, cabinet: Cabinet) -> Look:
    """One need, looked up."""
    if need.plain:
        return _plain(need, cabinet)
    if need.section not in cabinet.sections:
        return Look(need=need, status=SILENT)
    things = cabinet.of(need.section)
    fitting = tuple(thing for thing in things if fits(need, thing))
    if not fitting and (both := _together(need, things)):
        fitting = both
    if not fitting:
        return _lacking(need, cabinet, things)
    here = tuple(thing for thing in fitting if thing.here)
    told = [thing for thing in fitting if need.place and lies_in(thing.place, need.place)]
    right = next((thing for thing in told if thing.here), None)
    if right is not None or (here and not need.place):
        return Look(need=need, status=HAS, thing=right or here[0])
    if not here or told:
        return _away(need, told[0] if told else fitting[0], here)
    return _elsewhere(need, cabinet, here[0])


def _plain(need: Need, cabinet: Cabinet) -> Look:
    """A word without a size: found, or nothing is said."""
    found = [
        thing
        for thing in cabinet.of(need.section)
        if thing.name == need.name or (need.section == "bench" and _named(thing, need))
    ] or [  # `parallels` and `small square` are plain words too
        thing
        for thing in cabinet.things
        if thing.section in ("parallels", "gauges", "holders", "wrenches") and _named(thing, need)
    ]
    if not found:
        return Look(need=need, status=SILENT)
    here = next((thing for thing in found if thing.here), None)
    return Look(need=need, status=HAS, thing=here) if here is not None else _away(need, found[0], ())


def _named(thing: Thing, need: Need) -> bool:
    return re.search(rf"\b{re.escape(thing.name)}s?\b", need.name) is not None


# --- what fits ---


def fits(need: Need, thing: Thing) -> bool:
    """Whether this thing does what is asked."""
    if need.section == "holders":
        return thing.name == need.name and _takes(thing, need.cutter)
    if need.section == "parallels":
        return _same(need.size, thing.size)
    if need.section == "wrenches":
        return thing.name == need.name and _same(need.size, thing.size)
    if need.section == "gauges":
        return _gauges(need, thing)
    if need.cutter is None or thing.cutter is None:
        return False
    return _cuts(need, need.cutter, thing, thing.cutter)


def _same(one: float | None, other: float | None) -> bool:
    return one is not None and other is not None and abs(one - other) <= SAME


def _takes(holder: Thing, cutter: Cutter | None) -> bool:
    """Whether a chuck opens so far; of shanks nothing is known, so only drills
    are asked, whose shank is their size.
    """
    if cutter is None or cutter.kind != "drill" or cutter.diameter is None or holder.high is None:
        return True
    return (holder.low or 0.0) - SAME <= cutter.diameter <= holder.high + SAME


def _gauges(need: Need, thing: Thing) -> bool:
    """A gauge of these limits, or a measuring tool whose range holds what is asked."""
    if need.low is None or need.high is None or thing.low is None or thing.high is None:
        return False
    if _ranged(need.name):
        return thing.name == need.name and thing.low <= need.low + SAME and need.high <= thing.high + SAME
    kin = need.name in thing.name or thing.name in need.name
    return kin and not _ranged(thing.name) and _same(need.low, thing.low) and _same(need.high, thing.high)


def _ranged(name: str) -> bool:
    """Whether it measures over a range, and is no gauge for one size."""
    return name.endswith(("micrometer", "calliper")) or name in (
        "depth gauge",
        "height gauge",
        "bore gauge",
        "rule",
    )


def _together(need: Need, things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """Measuring tools that hold a range between them: 0 to 25 and 25 to 50 for 0 to 50."""
    if need.section != "gauges" or not _ranged(need.name) or need.low is None or need.high is None:
        return ()
    reach, used = need.low, []
    for thing in sorted(
        (thing for thing in things if thing.name == need.name and thing.low is not None and thing.here),
        key=lambda thing: thing.low or 0.0,
    ):
        if (thing.low or 0.0) <= reach + SAME and (thing.high or 0.0) > reach + SAME:
            used.append(thing)
            reach = thing.high or 0.0
    return tuple(used) if reach + SAME >= need.high else ()


def _cuts(need: Need, asked: Cutter, thing: Thing, has: Cutter) -> bool:
    """Whether a cutter is the one that is asked for: what the job writes of it must agree,
    what it leaves open may be as it is.
    """
    if asked.kind != has.kind:
        return False
    if asked.kind == "tap":
        return _taps(need, thing) and _said(asked, has)
    if asked.diameter is not None and not _same(asked.diameter, has.diameter):
        return False
    if asked.kind == "reamer" and (fit := _fit(asked.size)) and fit != _fit(has.size):
        return False
    if asked.kind in _ANGLED and None not in (asked.point_angle, has.point_angle):
        assert asked.point_angle is not None
        assert has.point_angle is not None
        if abs(asked.point_angle - has.point_angle) > 1e-6:
            return False
    if asked.flutes is not None and has.flutes is not None and has.flutes < asked.flutes - SAME:
        return False
    if asked.flutes is not None and has.flutes is None and asked.kind in ("end mill", "slot drill"):
        return False
    return _said(asked, has) and _extras(asked, has)


def _taps(need: Need, thing: Thing) -> bool:
    thread, other = need.thread, thing.thread
    if (
        thread is None
        or other is None
        or not (_same(thread.major, other.major) and _same(thread.pitch, other.pitch))
    ):
        return False
    return set(need.styles) <= set(thing.styles) or not thing.styles


def _said(asked: Cutter, has: Cutter) -> bool:
    """Teeth and material, where the job writes them; a drill's two lips need not be written."""
    if asked.teeth is not None and has.teeth is not None and asked.teeth != has.teeth:
        return False
    said = next((MATERIALS[part] for part in _parts(asked) if part in MATERIALS), None)
    return said is None or said == has.material


def _parts(cutter: Cutter) -> list[str]:
    return [part.strip().casefold() for part in _SPLIT.split(cutter.text)]


def _fit(size: str) -> str:
    match = _FIT.search(size.strip())
    return match["fit"] if match and match["fit"].casefold() != "mm" else ""


def _extras(asked: Cutter, has: Cutter) -> bool:
    """The tip of an edge finder, the pilot of a counterbore: the same where both are written."""
    one, other = _within(asked), _within(has)
    return one is None or other is None or abs(one - other) <= SAME


def _within(cutter: Cutter) -> float | None:
    for part in cutter.extra:
        if match := _WITHIN.search(part):
            try:
                return read(match["size"], "length", "mm")
            except QuantityError:
                return None
    return None


# --- what is said ---


def short(thing: Thing) -> str:
    """A thing in few words, with its place: `drill 5.0 mm (drawer 3)`."""
    return f"{thing.what.split(', ')[0]} ({thing.place})"


def asked_words(need: Need) -> str:
    """What is asked, without place and without what belongs to the step, not to the tool."""
    if need.cutter is None:
        return need.words
    kept = [
        part.strip()
        for part in _SPLIT.split(need.words)
        if part.strip() not in (need.cutter.place, *STATES) and not _OF_THE_STEP.search(part)
    ]
    return ", ".join(kept)


def of_the_step(cutter: Cutter) -> tuple[str, ...]:
    """What a cutter's line says of how it is held for this step: `45 mm out`, `in a collet`."""
    parts = (part.strip() for part in _SPLIT.split(cutter.text))
    return tuple(part for part in parts if _OF_THE_STEP.search(part) and part != cutter.place)


def nearest(need: Need, things: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """The nearest that is there: of drills the next below and above, of others those of nearest size."""
    there = [thing for thing in things if thing.here and thing.name == need.name]
    if need.cutter is not None and need.cutter.kind == "tap":
        thread = need.thread
        return tuple(
            thing for thing in there if thread and thing.thread and _same(thing.thread.major, thread.major)
        )[:NEAREST]
    wanted = need.size if need.cutter is None else need.cutter.diameter
    sized = [(thing, size) for thing in there if (size := _size(thing)) is not None]
    if wanted is None or not sized:
        return tuple(there[:NEAREST])
    if need.cutter is not None and need.cutter.kind == "drill":
        below = max(
            (pair for pair in sized if pair[1] < wanted - SAME), key=lambda pair: pair[1], default=None
        )
        above = min(
            (pair for pair in sized if pair[1] > wanted + SAME), key=lambda pair: pair[1], default=None
        )
        equal = next((pair for pair in sized if abs(pair[1] - wanted) <= SAME), None)
        return tuple(pair[0] for pair in (equal, below, above) if pair is not None)[:3]
    sized.sort(key=lambda pair: abs(pair[1] - wanted))
    return tuple(pair[0] for pair in sized[:NEAREST])


def _size(thing: Thing) -> float | None:
    return thing.cutter.diameter if thing.cutter is not None else thing.size


def _listed(things: tuple[Thing, ...], asked: str) -> str:
    """Things in few words, and in all where few would be those that are asked for."""
    same = asked.split(", ", maxsplit=1)[0].casefold()
    return " and ".join(
        f"{thing.what} ({thing.place})" if thing.what.split(", ")[0].casefold() == same else short(thing)
        for thing in things
    )


def _lacking(need: Need, cabinet: Cabinet, things: tuple[Thing, ...]) -> Look:
    near = nearest(need, things)
    what = asked_words(need)
    sentence = f"The cabinet has no {what}"
    if need.section == "holders" and (
        chuck := next((thing for thing in things if thing.name == need.name), None)
    ):
        size = f"{trimmed((chuck.high or 0.0) * 1e3, 2)} mm"
        sentence, near = (
            f"The {need.name} ({chuck.place}) opens to {size}: it does not take {_tool(need)}",
            (chuck,),
        )
    elif near:
        sentence += f"; nearest {'are' if len(near) > 1 else 'is'} {_listed(near, what)}"
    if (other := _in_place(need, cabinet)) and other not in near:
        sentence += f"; in {need.place} lies {other.what}"
    return Look(need=need, status=NEAR if near else LACKS, near=near, sentence=f"{sentence}.")


def _tool(need: Need) -> str:
    return need.cutter.text.split(", ")[0] if need.cutter is not None else need.words


def _away(need: Need, thing: Thing, others: tuple[Thing, ...]) -> Look:
    """It belongs there and is not: where it is, and whether another one is in its place."""
    sentence = f"{_begin(short(thing))} is not there now: {thing.away}"
    if others:
        sentence += f"; another one lies in {others[0].place}"
    return Look(need=need, status=OUT, thing=thing, near=others[:NEAREST], sentence=f"{sentence}.")


def _elsewhere(need: Need, cabinet: Cabinet, thing: Thing) -> Look:
    sentence = f"{_begin(asked_words(need))} lies in {thing.place}, not in {need.place}"
    if other := _in_place(need, cabinet):
        sentence += f", where {other.what} lies"
    return Look(need=need, status=ELSEWHERE, thing=thing, sentence=f"{sentence}.")


def _in_place(need: Need, cabinet: Cabinet) -> Thing | None:
    """What lies in the numbered place that the job names."""
    asked = parted(need.place)
    if not asked[1]:
        return None
    return next((thing for thing in cabinet.things if parted(thing.place) == asked), None)


def _begin(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}"
