"""Forms of every kind, what is understood of typed texts, and what is offered next: kept as the pictures
of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each part: it says that
something reads otherwise now. After a change that is meant, look through what changed in `readings.yaml`, then
`python -m tests.operations.kept_readings` writes it anew.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import QuantityError
from jobsheet.operations import place_rows as rows
from jobsheet.operations.choosing import filled, likely, order_of_work
from jobsheet.operations.choosing.found import kinds_found
from jobsheet.operations.choosing.standing_here import Here
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim
from jobsheet.operations.names import FIGURES, show, si_unit
from jobsheet.operations.pasted_places import is_list, pasted
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import kinds
from jobsheet.paths import resources, sample_jobs
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.job_file import read_job
from tests.kept_sections import write
from tests.told import told, whole

FILE = Path(__file__).parent / "readings.yaml"
Lines = Iterator[str]
AIM = Aim(
    up="top", near="front", far="rear", left="left", right="right", extent=(0.1, 0.06, 0.02), units="mm"
)
#: Texts as people type them, and as they slip: any of them into a field of every sort.
TYPED = (
    "", "5", "5 mm", "1/4", "1/4 in", "0", "-3", "1e9", "0.0001", "through", "12, 8", "12, 8; 30, 8", "12", "12, 8, 3", "0.5 in, 8",
    "circle of 6 on 40 around 50, 30", "circle of 6 on 40 around 50, 30, first at 15", "circle on 40 around 50, 30 at 0, 90, 200.5", "circle of 1 on 40 around 50, 30",
    "row of 4 from 10, 10, step 5", "row of 4 from 10, 10, step 5 at 30", "row of 3 from 10, 10 to 40, 25", "row of 3 from 1 in, 0 to 2 in, 0.5 in", "row of 3 from 10, 10 to 10, 10",
    "grid of 3 x 2 from 10, 10, step 20 × 15", "grid of 0 x 2 from 10, 10, step 20 × 15", "grid of 15 x 15 from 0, 0, step 1 × 1", "row of 200 from 0, 0, step 1",
    "circle of 201 on 40 around 50, 30", "row of 2 from 0, 0, step 0", "circle of 4 on 0 around 50, 30", "circle on 40 around 50, 30 at 0, 0", "circle on R20 around 50, 30 at 10, 370",
    "circle of six", "row of 3 from 10, 10, step 1/2 in", "circle of 5 on 2 in around 50, 30, first at 12.5°", "circle on 40 around 50, 30 at 15",
    "40 ±0.03", "40 +0.02/-0.01", "16 H7",
    "16 h6", "40 ±50", "16 Q7", "80 max", "6.5 ±0.1, calliper", "40 ±0.03, micrometer", "M6", "M8x1", "5/16-18 UNC", "1/4-20", "M0", "#7", "H", "Z",
    "yes", "no", "maybe", "7", "3.5", "drill 5 mm", "end mill 12 mm, 4 teeth, 30 mm out", "face mill 50 mm", "drill", "end mil 12 mm",
    "560 rpm", "10 m/s", "0.08 mm", "square 0.03; finish 1.6; gauge micrometer", "square 0.03; square 0.02", "finish", "round 5", "square x",
    "deburr", "deburr, clean", "debur", "deburr; deburr", "A", "top, front", "top raw; bottom sawn", "front", "frnt", "S235", "S23", "x" * 2001,
    "two\nlines", "a\x07b", "½", "2½ mm", "3,5", "5 furlongs", "about 5",
)  # fmt: skip
#: So many texts are told that are refused with the same sentence.
ALIKE = 2


@cache
def cabinet():
    """What the demonstration's workshop has."""
    return cabinet_from_text(
        (resources() / "cabinets" / "harrowmoss.yaml").read_text("utf-8"), "cabinet.yaml"
    )


@cache
def jobs():
    """The sample jobs and one of each kind."""
    homes = (sample_jobs(), FILE.parent / "jobs")
    return {path.stem: read_job(path) for home in homes for path in sorted(home.glob("*.yaml"))}


def form(name: str) -> Lines:
    """The form of a kind, and what a blank one is."""
    kind = kind_of(name)
    for group in kind.form:
        for entry in group.entries:
            yield f"{group.title}: {whole(entry)} wants {entry.wanted('mm')}"
    for units in ("mm", "in"):
        fields = kind.blank(units)
        yield f"blank {told(fields)} {told((kind.plays(fields), kind.looks_at(fields)))}"
        yield f"leaves {told((kind.holes(fields), kind.takes_off(fields), kind.outline(fields)))}"
        yield f"says {told((kind.title_of(fields), kind.row_words(fields, AIM)))}"
    yield f"word {told((kind.word, kind.groups, kind.also, kind.icon))} in {order_of_work.group_of(name)}"


def typed(asks: str) -> Lines:
    """What becomes of each text in a field of that sort."""
    entry = _sorts()[asks][0]
    told_already: Counter[str] = Counter()
    for text in TYPED:
        metric, inch = (_understood(entry, text, units) for units in ("mm", "in"))
        refused = metric.replace(text, "…").rpartition(" at ")[0]
        told_already[refused] += 1
        if refused and told_already[refused] > ALIKE:
            continue
        yield f"{text[:60]!r}: {metric}"
        if inch != metric:
            yield f"{text[:60]!r} in inches: {inch}"


def _understood(entry: Entry, text: str, units: str) -> str:
    try:
        value = entry.read(text, units)
    except QuantityError as error:
        return f"{str(error)[:300]} at {error.start}-{error.end}"
    said = (entry.text(value)[:80], entry.understood(value, units), entry.with_unit(text[:60], units))
    return f"{told(_plain(value))[:400]} {told(said)}"


def _plain(value: object) -> object:
    """A quantity by its number too, places by their points."""
    if (points := getattr(value, "points", None)) is not None:
        return [(place.x.value, place.y.value) for place in points]
    number = getattr(value, "value", None)
    return (value, number) if number is not None else value


@cache
def _sorts() -> dict[str, list[Entry]]:
    found: dict[str, list[Entry]] = {}
    for name in kinds():
        for entry in kind_of(name).entries:
            found.setdefault(entry.asks, []).append(entry)
    return found


def names(units: str) -> Lines:
    """How each figure is shown, a small one and a large one."""
    for name in FIGURES:
        yield f"{name}: {show(name, 0.0123456, units)}, {show(name, 1234.5678, units)} {si_unit(name)}"


def following(name: str) -> Lines:
    """What is offered behind each step of a job, and what stands there."""
    job = jobs()[name]
    for set_up in job.set_ups:
        for index in range(len(set_up.operations) + 1):
            here = Here(set_up=set_up, index=index, units=job.units, cabinet=cabinet())
            yield f"{set_up.key} {index}: {told((here.role, here.hole, here.thread, here.holes_in_words))}"
            for one in likely.likely_next(here):
                yield f"  {told(one)}"
            same = (likely.same_holes(kind, here) for kind in ("drill", "tap", "ream"))
            yield f"  same holes: {told(list(same))}"


def searched(units: str) -> Lines:
    """What is found for words that are typed."""
    for words in (
        "", "drill", "dr", "mill", "tap m6", "m8", "5/16-18", "6.8", "drill 6.8", "1/4", "1/4 in", "ream 16", "12 mm", "side 12", "face 50", "deburr", "b",
        "hole", "keyway 8", "slot 10", "spot", "zzz", "tap 6", "m6 drill", "m6x1", "saw", "pocket 10",
    ):  # fmt: skip
        for which in (None, cabinet()):
            for one in kinds_found(words, units, which, "75 %" if which else ""):
                yield f"{words!r}: {told(one)}"


def fills(name: str) -> Lines:
    """What a size or a thread puts into a form."""
    kind = kind_of(name)
    for size in ("5", "6.8", "12", "16", "1/4", "50", "0.0001", "999", "x"):
        yield f"size {size}: {told([filled.with_size(kind, size, 'mm', which) for which in (None, cabinet())])}"
    for thread in ("M6", "M8x1", "1/4-20", "M3", "x"):
        yield f"thread {thread}: {told([filled.with_thread(kind, thread, 'mm', which) for which in (None, cabinet())])}"


def in_cabinet(line: str) -> Lines:
    """Which thing of the cabinet a line is."""
    yield told(filled.in_cabinet(cabinet(), read_cutter(line, "mm")))


PLACES = (
    "12, 8", "12, 8; 30, 8", "12,8", "circle of 6 on 40 around 50, 30", "5, 5; circle of 3 on 40 around 50, 30; 7, 7", "12", ";", "", "x, y",
    "row of 3 from 10, 10, step 5; 1, 2", "12 | 8", "1, 2; 1, 2",
)  # fmt: skip
PASTED = (
    "12, 8", "12 8\n30 8", "12\t8", "12,5\t8,5", "12;8", "12,8", "1,2,3", "a, b", "12 mm 8 mm", "12, 8;\n\n30, 9;", "1 2 3", "1/4 1/2", "12  8",
)  # fmt: skip


def place_list(text: str) -> Lines:
    """A list of places taken apart into rows, and changed by hand."""
    pieces = rows.pieces_of(text, "mm")
    yield f"rows: {told(rows.rows_of(pieces))}"
    yield f"text: {rows.text_of(pieces)!r}"
    points, problem = rows.meaning(text, "mm")
    yield f"means {told([(place.x.value, place.y.value) for place in points])} {problem}"
    for row in range(min(len(rows.rows_of(pieces)), 4)):
        for what, made in (
            ("cell", lambda row=row: rows.with_cell(pieces, row, "y", "99")),
            ("out", lambda row=row: rows.taken_out(pieces, row)),
            ("in", lambda row=row: rows.inserted(pieces, row)),
            ("down", lambda row=row: rows.moved(pieces, row, 1)),
            ("up", lambda row=row: rows.moved(pieces, row, -1)),
            ("opened", lambda row=row: rows.opened(pieces, row)),
            ("written out", lambda row=row: rows.written_out(pieces, rows.rows_of(pieces), row)),
        ):
            new, *said = made()
            yield f"{what} {row}: {rows.text_of(new)!r} {told(said)} same {rows.same(pieces, new)}"


def paste(text: str) -> Lines:
    """What is pasted into a list."""
    for units in ("mm", "in"):
        yield f"{units}: {is_list(text)} {told(pasted(text, units))}"


def sections() -> dict[str, Callable[[], Lines]]:
    """All that is read, by its heading."""
    found: dict[str, Callable[[], Lines]] = {}
    for name in kinds():
        found[f"form {name}"] = lambda name=name: form(name)
        found[f"fills {name}"] = lambda name=name: fills(name)
    for asks in _sorts():
        found[f"typed {asks}"] = lambda asks=asks: typed(asks)
    for units in ("mm", "in"):
        found[f"names {units}"] = lambda units=units: names(units)
        found[f"searched {units}"] = lambda units=units: searched(units)
    for name in jobs():
        found[f"following {name}"] = lambda name=name: following(name)
    for text in PLACES:
        found[f"places {text!r}"] = lambda text=text: place_list(text)
    for text in PASTED:
        found[f"pasted {text!r}"] = lambda text=text: paste(text)
    for line in (
        "drill 6.8",
        "end mill 12 mm, 4 teeth",
        "tap M6, plug",
        "drill 99 mm",
        "face mill 50 mm, 4 teeth",
    ):
        found[f"in the cabinet {line}"] = lambda line=line: in_cabinet(line)
    return found


if __name__ == "__main__":
    write(FILE, sections())
