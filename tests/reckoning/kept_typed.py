"""Numbers as the reckoning types them, what a ladder begins with, look-ups in a cabinet, words of answers: kept as
the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each part: it says that
something reads otherwise now. After a change that is meant, look through what changed in `typed.yaml`, then
`python -m tests.reckoning.kept_typed` writes it anew.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path

from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import JobsheetError
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import kind as kind_of
from jobsheet.paths import sample_jobs
from jobsheet.reckoning.adviser.milling_cut import feed_text, part_text
from jobsheet.reckoning.answers.inverse import Answer, length_shown, speeds_for
from jobsheet.reckoning.answers.largest import Largest
from jobsheet.reckoning.answers.mends import _tooth_text
from jobsheet.reckoning.answers.what_next import Answered, Shown, what_next
from jobsheet.reckoning.cabinet.cabinet_look import look_up, nearest
from jobsheet.reckoning.cabinet.cabinet_needs import cutter_need, words_ask
from jobsheet.reckoning.ladder.ladder_cuts import drills, milling_texts, settled, size_text
from jobsheet.reckoning.ladder.ladder_sizes import two_figures
from jobsheet.reckoning.ladder.usual_cut import InSizes
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.run_words import number_of
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.job_file import job_from_text
from tests.kept_sections import write
from tests.reckoning.cabinet_asked import CABINET
from tests.told import told

FILE = Path(__file__).parent / "typed.yaml"
Lines = Iterator[str]
#: Lengths [m], around whole steps too.
LENGTHS = (
    0.0, 1e-6, 4.9e-6, 1e-5, 2.54e-5, 5e-5, 9.99e-5, 1e-4, 1.27e-4, 2e-4, 2.54e-4, 3.3e-4, 4.99e-4, 5e-4, 5.08e-4, 9.6e-4, 1e-3, 1.05e-3, 1.999e-3, 2e-3, 2.5e-3,
    6.35e-3, 7.77e-3, 0.01, 0.0127, 0.019, 0.02, 0.0254, 0.05, 0.1234567, 0.3,
)  # fmt: skip
MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")
#: What else a cabinet may hold: one thing twice, things away, gauges that stand beside each other.
MORE = cabinet_from_text(
    """format: 1
cutters:
  - {what: "end mill 10 mm, 2 teeth, HSS", place: drawer 1 no. 1, out: lent}
  - {what: "end mill 10 mm, 4 teeth, carbide, flutes 22 mm", place: drawer 1 no. 2}
drills:
  - {what: "drills 3 mm to 13 mm by 0.5 mm", place: drawer 3, missing: 6.5 mm}
  - {what: "spot drill 10 mm, 120°", place: drawer 3 no. 1}
taps:
  - {what: "taps M6x0.75, bottoming", place: drawer 5}
reamers:
  - {what: "reamer 12 mm H7, 6 edges", place: drawer 6 no. 1}
  - {what: "reamer 12 mm G6, 6 edges", place: drawer 6 no. 2}
holders:
  - {what: "drill chuck 3 mm to 10 mm", place: shelf 3}
parallels:
  - {what: "parallels 10 x 30 x 150 mm", place: shelf 1}
gauges:
  - {what: "micrometer 0 mm to 25 mm", place: shelf 2}
  - {what: "micrometer 25 mm to 50 mm", place: shelf 2, out: lent}
  - {what: "micrometer 50 mm to 75 mm", place: shelf 2}
  - {what: "calliper 0 mm to 150 mm", place: shelf 2}
  - {what: "depth gauge 0 mm to 100 mm", place: shelf 2}
  - {what: "plug gauge 12 mm H7", place: shelf 2}
wrenches:
  - {what: "tap wrench 180 mm", place: drawer 5, out: lent}
  - {what: "tap wrench 280 mm", place: drawer 5}
""",
    "cabinet.yaml",
)
TOOLS = (
    "end mill 10 mm, 2 teeth, HSS", "end mill 10 mm, 4 teeth", "end mill 10 mm, 4 teeth, flutes 25 mm", "end mill 12 mm, 4 teeth, in a collet", "drill 6.5 mm",
    "drill 6.5 mm, in a drill chuck", "drill 12.5 mm, in a drill chuck", "drill 13 mm, in a drill chuck", "drill 13.5 mm, in a drill chuck", "drill 2 mm, in a drill chuck",
    "reamer 12 mm H7", "reamer 12 mm", "reamer 12 mm H8", "reamer 16 mm", "spot drill 10 mm, 90°", "spot drill 10 mm, 120°", "spot drill 10 mm", "tap M6, plug",
    "tap M6x0.75", "tap M8x1", "counterbore 11 mm, pilot 6.6 mm", "face mill 50 mm, 4 teeth", "slot drill 99 mm", "drill",
)  # fmt: skip
FETCHED = (
    "micrometer 0 to 25 mm", "micrometer 25 to 50 mm", "micrometer 0 to 50 mm", "micrometer 0 to 75 mm", "micrometer 50 to 75 mm", "calliper 0 to 150 mm", "calliper",
    "depth gauge 0 to 80 mm", "plug gauge 16 mm H7", "plug gauge 12 mm H7", "plug gauge 12 mm H8", "plug gauge", "slot gauge 10.00/10.05 mm", "gauge 10.00/10.05 mm",
    "thread gauge M6", "thread gauge 60", "parallels 6 mm thick", "parallels 10 mm thick", "parallels", "tap wrench 180 mm", "tap wrench 280 mm", "tap wrench", "file", "rule",
    "snap gauge 12 mm h6", "micrometer 0.5 to 1 in",
)  # fmt: skip


def numbers(units: str) -> Lines:
    """A length as each part of the reckoning types it."""
    for length in LENGTHS:
        yield f"{length}: {told((length_shown(length, units), size_text(length, units), number_of(length, units)))}"
        if length:
            typed = [feed_text(length / 10, units, up=up) for up in (False, True)]
            teeth = [_tooth_text(length / 10, units, up=up) for up in (None, False, True)]
            yield f"  feed {told(typed)} tooth {told(teeth)}"
            yield f"  two figures {told([two_figures(length * k, down=down) for k in (1, 777, 3e4) for down in (False, True)])}"
            yield f"  settled {told([settled(length, units, last, finest=finest) for last in (0.0, length * 0.8, length * 0.97) for finest in (False, True)])}"
            yield f"  parts {told([part_text(length, count, units) for count in (1, 2, 3, 4, 7, 9)])}"
    yield f"none: {length_shown(None, units)!r}"


def _setting(machine: str, units: str, name: str = "hm-101-setting-block") -> Setting:
    text = (sample_jobs() / f"{name}.yaml").read_text("utf-8")
    lines = [f"machine: {machine}" if one.startswith("machine:") else one for one in text.split("\n")]
    job = job_from_text("\n".join(lines), "job.yaml")
    reckoned = Reckoner().reckon(job)
    found = next(one for one in reckoned.settings.values() if one is not None)
    return replace(found, units=units)


def cuts_of(machine: str) -> Lines:
    """What a ladder begins with on a machine, and the speeds that an answer tries."""
    for units in ("mm", "in"):
        setting = _setting(machine, units)
        for line in ("drill", "drill 6 mm", "drill 0.9 mm", "drill 1/4 in", "drill 6.01 mm, HSS, drawer 3"):
            found = drills(read_cutter(line, units), setting, {})
            yield f"{units} {line}: {len(found)} {told(found[:2])} {told(found[-1:])}"
        for line, way, grows in product(
            ("end mill 12 mm, 4 teeth", "face mill 50 mm, 4 teeth, carbide"),
            ("side", "slot", "face"),
            ("depth", "width"),
        ):
            yield f"{units} {line} {way} {grows}: {told(milling_texts(way, grows, read_cutter(line, units), setting, {}))}"
            yield f"  typed: {told(milling_texts(way, grows, read_cutter(line, units), setting, {'feed': '50', 'width': '3', 'depth': '1'}))}"
        for kind in ("face", "drill", "bench-step"):
            yield f"{units} speeds {kind}: {told(speeds_for(kind_of(kind).blank(units), kind, setting))}"


def _look(need, cabinet) -> str:
    found = look_up(need, cabinet)
    return f"{told(found)} nearest {told([one.what for one in nearest(need, cabinet.of(need.section))])}"


def looked_up(which: str) -> Lines:
    """Tools and gauges in one cabinet."""
    cabinet = {"asked": CABINET, "more": MORE}[which]
    placed = [
        f"{line}, {place}"
        for line in (TOOLS[0], TOOLS[1], TOOLS[14])
        for place in ("drawer 1 no. 1", "drawer 3 no. 1")
    ]
    for line in (*TOOLS, *placed):
        try:
            yield f"{line}: {_look(cutter_need(read_cutter(line, 'mm')), cabinet)}"
        except JobsheetError as error:
            yield f"{line}: {error}"
    for line, units in product(FETCHED, ("mm", "in")):
        if units == "in" and "mm" in line:
            continue
        for need in words_ask(line, units):
            yield f"{line} in {units}: {_look(need, cabinet)}"


def said() -> Lines:
    """What answers say of themselves."""
    for expected, tight, untried in product((None, 2e-3), (None, 3e-3), (None, 1e-3, 2.5e-3)):
        one = Answer(
            what="deepest",
            expected=expected,
            tight=tight,
            untried=untried,
            untried_shown="1 mm" if untried == 1e-3 else "",
        )
        yield f"{told((expected, tight, untried))}: {told((one.plan, one.plan_shown, one.untried_words, one.stops))}"
    for end in ("", "the list ends"):
        deepest = Answer(what="deepest", expected=1e-3, tight=None, end=end)
        yield f"end {end!r}: {deepest.stops!r} {Largest(what='drill', end=end).stops!r}"
    for middle, low, planned in product(("", "2.3 mm", "more than 5 mm"), ("", "2 mm"), ("", "1.75 mm")):
        yield InSizes(cut="end mill 12 mm", middle=middle, low=low, high="2.7 mm", planned=planned).words()
    rows = [
        Answered(name=f"cut {cuts} {ratio}", low="1 mm", high="3 mm", plan="1.5 mm", shown=Shown(process="side", cutter_kind="end mill", cuts=cuts, newest="2026-11-12" if cuts else "", ratio=ratio))
        for cuts, ratio in product((0, 1, 5), (0.0, 0.99, 1.0, 1.01, 1.4, 1.5, 1.6, 2.0, 2.5, 4.0, 9.0))
    ]  # fmt: skip
    yield f"all: {told(what_next(rows))}"
    for row in rows:
        yield f"{row.name}: {row.shown.words()} {told(what_next((row,)))}"


def sections() -> dict[str, Callable[[], Lines]]:
    """All that is read, by its heading."""
    return (
        {f"numbers {units}": lambda units=units: numbers(units) for units in ("mm", "in")}
        | {f"cuts {one}": lambda one=one: cuts_of(one) for one in MACHINES}
        | {f"cabinet {which}": lambda which=which: looked_up(which) for which in ("asked", "more")}
        | {"said": said}
    )


if __name__ == "__main__":
    write(FILE, sections())
