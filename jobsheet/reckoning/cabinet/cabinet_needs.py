"""What a job asks of the cabinet: cutters of its steps, and what its words ask for with a size.

Of words only what can be read is taken: parallels by their thickness, gauges and measuring tools by their
size, wrenches by their length. A plain word (`file`, `parallels`) is looked for too, but nothing is said
where it is not found: nobody lists everything that lies on a bench.
"""

from __future__ import annotations

import re
from typing import Any

from msgspec import Struct

from jobsheet.catalog.tools.cabinet_lines import gauge_named, gauge_sizes, tap_styles
from jobsheet.errors import QuantityError
from jobsheet.model.identity import while_it_lives
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.quantity import Cutter, Quantity, Thread
from jobsheet.units.grammar import read
from jobsheet.units.lazily import pattern

_PARALLELS = pattern(
    r"(?P<count>\btwo\b|\bthree\b|\bfour\b|\b\d+\s+(?=\d))?\s*(?P<size>[\d.,/]+(?:\s*(?:mm|in|\"))?)\s+parallels?\b",
    re.IGNORECASE,
)

#: The same the other way round, as a cabinet is asked for them: `parallels 6 mm thick`.
_THICK = pattern(
    r"\s*(?:the |two |four |a pair of )?parallels\s+(?P<size>[\d.,/]+(?:\s*(?:mm|in|\"))?)(?:\s+thick)?",
    re.IGNORECASE,
)
_WRENCH = pattern(r"^(?:the |a )?(?P<name>.*?wrench)\s+(?P<size>\d.*)$", re.IGNORECASE)
#: What parts the things of a list.
_BETWEEN = pattern(r"(,\s+|;\s*|\s+and\s+)")
#: A size or a range without a unit, and a fit that may stand behind it.
_BARE = pattern(r"(\d[\d.,/ ]*(?:\s*(?:-|–|to)\s*\d[\d.,/ ]*)?)(\s+[A-Za-z]{1,2}\d{1,2})?")


class Need(Struct, frozen=True, kw_only=True):
    """One thing that a job asks for.

    `section` is where a cabinet has such a thing, `words` how the job names it. Sizes in metres, as in
    `model.cabinet.Thing`. `plain` is a word without a size. `cut` is the thread that a tap has to cut.
    """

    section: str
    words: str
    name: str = ""
    place: str = ""
    cutter: Cutter | None = None
    thread: Thread | None = None
    styles: tuple[str, ...] = ()
    size: float | None = None
    low: float | None = None
    high: float | None = None
    plain: bool = False
    operations: tuple[str, ...] = ()
    set_up: str = ""


def needs_of(job: Job) -> tuple[Need, ...]:
    """All that a job asks for, in cutting order; the same thing once, with all of its steps."""
    found: dict[tuple[Any, ...], Need] = {}
    for set_up in job.set_ups:
        for need in _parallels(set_up, job.units):
            _join(found, need, set_up=set_up.key)
        for operation in set_up.operations:
            for need in step_asks(operation, job.units):
                _join(found, need, operation.key)
    for need in words_ask(job.also_fetch, job.units):
        _join(found, need)
    return tuple(found.values())


def _parallels(set_up: SetUp, units: str) -> tuple[Need, ...]:
    """The pair under the work, where its thickness is said."""
    wide = getattr(set_up.holding, "parallel_width", None)
    if wide is None:
        return ()
    words = f"parallels {_with_unit(wide.text, units)} thick"
    return (Need(section="parallels", words=words, name="parallels", size=wide.value),)


def _join(found: dict[tuple[Any, ...], Need], need: Need, *operations: str, set_up: str = "") -> None:
    from msgspec.structs import replace

    key = (need.section, need.words.casefold(), need.styles, need.thread)
    known = found.get(key)
    if known is None:
        found[key] = replace(need, operations=operations, set_up=set_up)
    elif operations and operations[0] not in known.operations:
        found[key] = replace(known, operations=(*known.operations, *operations))


@while_it_lives
def _asked(operation: Operation) -> dict[str, tuple[Need, ...]]:
    """Remembered with the operation: what it asks by the units of its job."""
    return {units: _step_asks(operation, units) for units in ("mm", "in")}


def step_asks(operation: Operation, units: str) -> tuple[Need, ...]:
    """What one step asks for."""
    return _asked(operation)[units]


def _step_asks(operation: Operation, units: str) -> tuple[Need, ...]:
    fields = operation.fields
    needs: list[Need] = []
    cutter = getattr(fields, "cutter", None)
    if isinstance(cutter, Cutter):
        needs.append(cutter_need(cutter, getattr(fields, "thread", None), getattr(fields, "taps", "")))
        if cutter.holder:
            needs.append(Need(section="holders", words=cutter.holder, name=cutter.holder, cutter=cutter))
    wrench = getattr(fields, "wrench", None)
    if isinstance(wrench, Quantity):
        words = f"tap wrench {_with_unit(wrench.text, units)}"
        needs.append(Need(section="wrenches", words=words, name="tap wrench", size=wrench.value))
    # A list of things to fetch; what a step is called is a sentence, and asks for nothing.
    needs.extend(words_ask(getattr(fields, "with_what", "") or "", units))
    return tuple(needs)


def cutter_need(cutter: Cutter, thread: Thread | None = None, taps: str = "") -> Need:
    """What a cutter's line asks for; of taps the styles that are used."""
    from jobsheet.catalog.tools.cabinet_lines import SECTION_OF
    from jobsheet.catalog.tools.threads import read_thread

    own = None
    if cutter.kind == "tap":
        own = read_thread(cutter.size) if cutter.size else thread
    return Need(
        section=SECTION_OF[cutter.kind], words=cutter.text, name=cutter.kind, place=cutter.place, cutter=cutter,
        thread=own, styles=tap_styles(cutter.style) or (tap_styles(taps) if cutter.kind == "tap" else ()),
    )  # fmt: skip


def words_ask(text: str, units: str) -> tuple[Need, ...]:
    """What a list in words asks for, part by part."""
    found: list[Need] = []
    for piece in _BETWEEN.split(text)[::2]:
        part = piece.strip().rstrip(".")
        if part:
            found.extend(_word_asks(part, units))
    return tuple(found)


def _word_asks(part: str, units: str) -> list[Need]:
    if match := _PARALLELS.search(part) or _THICK.fullmatch(part):
        try:
            thick = read(match["size"], "length", units)
        except QuantityError:
            return []
        words = f"parallels {_with_unit(match['size'], units)} thick"
        return [Need(section="parallels", words=words, name="parallels", size=thick)]
    if named := gauge_named(part):
        name, size = named
        if name == "thread gauge" or not re.match(r"\d", size):
            return [Need(section="gauges", words=part, name=name, plain=True)]
        low, high = gauge_sizes(size, units)
        return [
            Need(
                section="gauges", words=part, name=name, low=low, high=high, plain=low is None or high is None
            )
        ]
    if match := _WRENCH.match(part):
        try:
            long = read(match["size"], "length", units)
        except QuantityError:
            return []
        return [Need(section="wrenches", words=part, name=match["name"].casefold(), size=long)]
    return [Need(section="bench", words=part, name=part.casefold(), plain=True)]


def sizes_with_units(text: str, units: str) -> str:
    """The same list with its unit behind every size that `words_ask` reads from it without one, so that it asks
    for the same where a bare number means something else.
    """
    return "".join(
        _sized(piece, units) if place % 2 == 0 else piece for place, piece in enumerate(_BETWEEN.split(text))
    )


def _sized(piece: str, units: str) -> str:
    part = piece.rstrip(". ")
    if match := _PARALLELS.search(part) or _THICK.fullmatch(part) or _WRENCH.match(part):
        begin, end = match.span("size")
    elif named := gauge_named(part):
        begin, end = len(part) - len(named[1]), len(part)
    else:
        return piece
    if (bare := _BARE.fullmatch(part[begin:end].rstrip())) is None:
        return piece
    return f"{part[:begin]}{bare[1].rstrip()} {units}{bare[2] or ''}{piece[end:]}"


def _with_unit(text: str, units: str) -> str:
    """A size as typed, with the unit that a bare number has here."""
    return f"{text.strip()} {units}" if re.fullmatch(r"[\d.,/ ]+", text.strip()) else text.strip()
