"""What small parts of the reckoning answer over a whole range of questions: kept as the pictures of the pages are.

A reading that is kept proves nothing of right or wrong, that is for the tests of each part: it says that
something reads otherwise now. After a change that is meant, look through what changed in `parts.yaml`, then
`python -m tests.reckoning.kept_parts` writes it anew. Whole plans (`kept_readings.py`) come upon few of the ways
through these; here each is asked on both sides of where its answer changes.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path

from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import CommandError, JobsheetError, QuantityError
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.model.trials import Trial
from jobsheet.model.what_ran import Entry
from jobsheet.paths import resources, sample_jobs
from jobsheet.reckoning.adviser import layer_lines
from jobsheet.reckoning.cabinet import cabinet_look as looked
from jobsheet.reckoning.cabinet import cabinet_needs as needs
from jobsheet.reckoning.known_capacity import snapshot_of
from jobsheet.reckoning.ladder import ladder_sizes
from jobsheet.reckoning.ladder.ladders import plan, trial_of
from jobsheet.reckoning.ladder.usual_cut import in_sizes
from jobsheet.reckoning.minutes import by_kind, minutes_of
from jobsheet.reckoning.paces import Timed, paces, timed_of
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.run_words import day_words, read_day
from jobsheet.reckoning.worked_anew import anew
from jobsheet.storage.cabinet_file import cabinet_from_text
from jobsheet.storage.records.proof_log import records_from
from tests.kept_sections import write
from tests.later import on_day
from tests.reckoning import kept_asks
from tests.reckoning.kept_asks import TODAY, Lines
from tests.reckoning.kept_readings import start
from tests.review.test_rules import edited
from tests.told import told

FILE = Path(__file__).parent / "parts.yaml"
MACHINES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")
SHARES = (1e-4, 0.02, 0.1, 0.45, 0.8, 1.7, 50.0)
#: Ladders as a person begins them: cutter, metal, kind of cut, and what else is said.
LADDERS: dict[str, dict] = {
    "side": {"cutter": "end mill 12 mm, 4 teeth, 30 mm out", "material": "S235", "kind": "side", "texts": {"width": "6 mm"}},
    "side in inches": {"cutter": "end mill 1/2 in, 4 teeth, 1-1/4 in out", "material": "S235", "kind": "side", "units": "in", "texts": {"width": "1/4 in"}},
    "side wider": {"cutter": "end mill 10 mm, 4 teeth, 25 mm out", "material": "EN AW-6082", "kind": "side", "grow": "width", "texts": {"depth": "5 mm"}},
    "slot in inches": {"cutter": "end mill 3/8 in, 2 teeth, 1 in out", "material": "EN AW-6082", "kind": "slot", "units": "in"},
    "face": {"cutter": "face mill 50 mm, 4 teeth, carbide, marked 12000 rpm", "material": "S235", "kind": "face"},
    "face in inches": {"cutter": "face mill 32 mm, 3 teeth, carbide, marked 12000 rpm", "material": "EN AW-6082", "kind": "face", "units": "in"},
    "drill": {"cutter": "drill 6 mm", "material": "S235", "kind": "drill"},
    "drill in inches": {"cutter": "drill 1/4 in", "material": "EN AW-6082", "kind": "drill", "units": "in"},
    "tap": {"cutter": "tap M6, plug", "material": "S235", "kind": "tap"},
}  # fmt: skip
CABINET = cabinet_from_text(
    """format: 1
cutters:
  - {what: "end mill 12 mm, 4 teeth, HSS", place: drawer 1 no. 1}
  - {what: "end mill 12 mm, 4 teeth, HSS, flutes 50 mm", place: drawer 1 no. 2, out: at the grinder}
  - {what: "end mill 16 mm, 4 teeth, HSS, flutes 32 mm", place: drawer 1 no. 4}
  - {what: "end mill 1/2 in, 2 teeth, carbide", place: drawer 1 no. 3}
  - {what: "slot drill 8 mm, 2 teeth, HSS", place: drawer 1 no. 5}
  - {what: "chamfer mill 12 mm, 90°, 4 teeth", place: drawer 1 no. 6}
  - {what: "face mill 50 mm, 4 teeth, carbide", place: drawer 2 no. 7}
drills:
  - {what: "drills 1 mm to 10 mm by 0.5 mm", place: drawer 3, missing: 7 mm}
  - {what: "drills A to Z", place: drawer 4}
  - {what: "spot drill 10 mm, 90°", place: drawer 3 no. 1}
taps:
  - {what: "taps M6, taper and plug", place: drawer 5}
  - {what: "taps M8x1, plug", place: drawer 5}
  - {what: "taps M8", place: drawer 5, out: lent}
reamers:
  - {what: "reamer 16 mm H7, 6 edges", place: drawer 6 no. 1}
  - {what: "reamer 10 mm, 6 edges", place: drawer 6 no. 4}
countersinks:
  - {what: "counterbore 11 mm, pilot 6.6 mm, 3 edges", place: drawer 6 no. 2}
  - {what: "countersink 16 mm, 90°, 3 edges", place: drawer 6 no. 3}
finders:
  - {what: "edge finder, 0.200 in tip", place: drawer 7 no. 1}
holders:
  - {what: "drill chuck 1 mm to 13 mm", place: shelf 3}
  - {what: "collet chuck, collets 6 mm, 10 mm", place: shelf 3, out: lent}
parallels:
  - {what: "parallels 6 x 20 x 100 mm", place: shelf 1}
  - {what: "parallels 10 x 30 x 100 mm", place: shelf 1, out: lent}
gauges:
  - {what: "micrometer 0 mm to 25 mm", place: shelf 2}
  - {what: "micrometer 25 mm to 50 mm", place: shelf 2}
  - {what: "micrometer 75 mm to 100 mm", place: shelf 2}
  - {what: "depth gauge 0 mm to 150 mm", place: shelf 2, out: at the inspection}
  - {what: "plug gauge 16 mm H7", place: shelf 2}
  - {what: "slot gauge 10.00/10.05 mm", place: shelf 2}
wrenches:
  - {what: "tap wrench 180 mm", place: drawer 5}
  - {what: "tap wrench 300 mm", place: drawer 5, out: lent}
bench:
  - {what: file, place: bench}
  - {what: "small square", place: bench, out: lent}
""",
    "cabinet.yaml",
)
LINES = (
    "end mill 12 mm", "end mill 12 mm, 4 teeth", "end mill 12 mm, 3 teeth", "end mill 12 mm, carbide", "end mill 12 mm, 4 teeth, flutes 50 mm", "end mill 12 mm, flutes 20 mm",
    "end mill 16 mm, flutes 32 mm", "end mill 16 mm, flutes 33 mm", "end mill 16 mm, flutes 30 mm", "end mill 1/2 in", "end mill 12.7 mm, 2 teeth", "end mill 13 mm", "end mill",
    "end mill 12 mm, 4 teeth, drawer 1 no. 1", "end mill 12 mm, 4 teeth, drawer 1 no. 2", "end mill 12 mm, 4 teeth, drawer 1 no. 3", "end mill 12 mm, 4 teeth, drawer 9 no. 9",
    "end mill 12 mm, 4 teeth, 30 mm out, in a collet", "slot drill 8 mm, flutes 10 mm", "slot drill 8 mm, 2 teeth", "chamfer mill 12 mm, 90°", "chamfer mill 12 mm, 60°", "chamfer mill 12 mm",
    "spot drill 10 mm, 90°", "spot drill 10 mm, 120°", "spot drill 10 mm", "spot drill 8 mm", "drill 5 mm", "drill 7 mm", "drill 7.2 mm", "drill 0.5 mm", "drill 30 mm", "drill F", "drill 1/4 in",
    "drill 5 mm, drawer 3", "drill 5 mm, drawer 4", "drill", "tap M6, plug", "tap M6, taper", "tap M6, bottoming", "tap M6", "tap M8, plug", "tap M8x1, plug", "tap M8x1, taper", "tap M10",
    "tap M6, plug, carbide", "reamer 16 mm H7", "reamer 16 mm H8", "reamer 16 mm", "reamer 10 mm H7", "reamer 10 mm", "reamer 12 mm H7", "counterbore 11 mm, pilot 6.6 mm", "counterbore 11 mm, pilot 6.4 mm",
    "counterbore 11 mm", "counterbore 11 mm, pilot x", "countersink 16 mm, 90°", "countersink 16 mm, 82°", "countersink 20 mm, 90°", "edge finder, 0.200 in tip", "edge finder, 5.08 mm tip", "edge finder, 10 mm tip",
    "face mill 50 mm, 4 teeth, carbide", "face mill 50 mm, 4 teeth, HSS", "face mill 63 mm", "saw 80 mm", "fly cutter 60 mm",
)  # fmt: skip
WORDS = (
    "micrometer 0-25 mm", "micrometer 0-50 mm", "micrometer 25-50 mm", "micrometer 50-75 mm", "micrometer 0-100 mm", "micrometer 20-30 mm", "micrometer 75-100 mm", "micrometer", "micrometer 0-1",
    "depth gauge 0-150 mm", "depth gauge 0-200 mm", "depth gauge", "plug gauge 16 H7", "plug gauge 16 mm H7", "plug gauge 16 H8", "plug gauge 10 H7", "slot gauge 10.00/10.05 mm", "slot gauge 10.00/10.06 mm",
    "gauge 16 H7", "thread gauge M6", "thread gauge", "calliper 0-150 mm", "two 6 mm parallels", "parallels 6 mm thick", "parallels 6 thick", "parallels 10 mm thick", "parallels 7 mm thick", "parallels", "tap wrench 180 mm", "tap wrench 180",
    "tap wrench 300 mm", "tap wrench 200 mm", "tap wrench", "file", "files", "small square", "square", "rule 0-300 mm", "bore gauge 10-20 mm", "hammer", "file, small square; tap wrench 180 mm", "parallels x thick", "",
)  # fmt: skip
DAYS = (
    "today", "yesterday", "Today", "28 Nov", "28 November", "28. Nov.", "1 Dec", "2 Dec", "1 dec 2026", "2 dec 2026", "28 Nov 2025", "2026-11-28", "2026-12-01", "2026-12-02", "1 Jan", "31 Dec", "29 Feb", "29 Feb 2024",
    "0 Dec", "32 Jan", "5 foo", "tomorrow", "", "2026-13-01", "3  Mar", "1 ma", "1 may", "1 mar", "1 jul", "1 jun",
)  # fmt: skip


def cabinet(units: str) -> Lines:
    """What a cabinet has for a cutter's line, and for words."""
    for line in LINES:
        try:
            need = needs.cutter_need(read_cutter(line, units))
        except QuantityError as error:
            yield f"{line}: {error}"
            continue
        yield f"{line}: {told(_told_of(need))} {looked.asked_words(need)} {told(looked.of_the_step(need.cutter))}"
        if need.cutter is not None and need.cutter.kind in ("tap", "drill"):
            held = replace(need, section="holders", name="drill chuck", words="drill chuck")
            yield f"  in a chuck: {told(_told_of(held))}"
            yield f"  taper: {told(needs.cutter_need(need.cutter, None, 'taper, plug').styles)}"
    for words in WORDS:
        yield f"{words} is {needs.sizes_with_units(words, units)}"
        for need in needs.words_ask(words, units):
            yield f"  {told((need.section, need.name, need.size, need.low, need.high, need.plain))} {told(_told_of(need))}"
            for place in ("shelf 2", "shelf 9", "drawer 5 no. 1"):
                yield f"  in {place}: {told(_told_of(replace(need, place=place)))}"


def _told_of(need: needs.Need) -> tuple:
    found = looked.look_up(need, CABINET)
    near = looked.nearest(need, CABINET.of(need.section))
    return (
        found.status,
        found.thing and found.thing.what,
        [one.what for one in found.near],
        found.sentence,
        [one.what for one in near],
    )


def figures_two() -> Lines:
    """Numbers to two figures."""
    for value in (
        0.0,
        -1.0,
        0.00123,
        0.0995,
        0.0996,
        0.1,
        0.347,
        0.999,
        1.0,
        1.05,
        2.25,
        2.3,
        9.94,
        9.96,
        10.0,
        10.4,
        99.4,
        99.6,
        347.0,
    ):
        yield f"{value}: {ladder_sizes.two_figures(value)} {ladder_sizes.two_figures(value, down=True)}"  # fmt: skip


def sizes(name: str) -> Lines:
    """Shares as sizes of a ladder's cuts, and what its trials come to in sizes."""
    for machine in MACHINES[1:] if LADDERS[name]["kind"] in ("drill", "tap") else MACHINES[::2]:
        ladder = plan(machine, date=TODAY, trials=(), **LADDERS[name])
        yield f"{machine}: {ladder.refused or len(ladder.rungs)}"
        for limit, share in product(("chatter", "spindle-torque"), SHARES):
            size = ladder_sizes.in_size(ladder, limit, share)
            yield f"{limit} {share}: {told(size)} {ladder_sizes.size_for(ladder, limit, share)}"
        for ends in (
            ("clean", "clean", "noisy"),
            ("clean", "stalled"),
            ("clean", "clean", "clean", "chatter"),
        ):
            trials = tuple(
                trial_of(ladder, rung, date=TODAY, outcome=end)
                for rung, end in zip(ladder.rungs, ends, strict=False)
            )
            yield from _taught(machine, trials, ladder)


def _taught(machine: str, trials: tuple[Trial, ...], ladder) -> Lines:
    known = snapshot_of(machine, trials, TODAY, Shop())
    for one in known.capacities if known is not None else ():
        found = in_sizes(one, trials)
        yield f"{one.limit} {one.process}: {told(found)} {found.words() if found else ''}"
        yield f"  {ladder_sizes.ended(one, ladder)}"
    yield f"anew {told([one.asked for one in anew(trials)])}"


def logged(machine: str, end: str, every: int) -> Lines:
    """What the demonstration's log teaches where some of its cuts ended otherwise."""
    text = (resources() / "proof" / f"{machine}.txt").read_bytes()
    trials = tuple(
        replace(one, outcome=end) if place % every == every - 1 else one
        for place, one in enumerate(records_from(text)[0])
    )
    yield from kept_asks.of_log({"machine": machine}, trials)


def _settings() -> Iterator[tuple[str, Setting]]:
    for machine, units in product(MACHINES, ("mm", "in")):
        job = edited(start("hm-101-setting-block"), [("job", "machine", machine), ("job", "units", units)])
        yield f"{machine} {units}", next(iter(Reckoner().reckon(job).settings.values()))


def layers() -> Lines:
    """Layers of a depth as they are typed: on a line of the dial."""
    for name, setting in _settings():
        yield f"{name}: {layer_lines.dial_units(setting)}"
        for total in (5e-6, 1e-5, 0.5e-3, 1e-3, 1.27e-3, 2.5e-3, 3.11e-3, 6.35e-3, 7.77e-3, 10e-3):
            texts = [
                (
                    layer_lines.layer_text(total, count, setting),
                    layer_lines.evenly(total, count, setting),
                    layer_lines.on_a_line(total / count, setting),
                    layer_lines.on_a_line(total / count, setting, up=True),
                )
                for count in (1, 2, 3, 5, 7, 24)
            ]
            yield f"{total * 1e3:.6g} mm: {told(texts)}"
        yield told([layer_lines.length_text(one, setting.units) for one in (1.23456789e-3, 1e-3, 25.4e-3)])


def days() -> Lines:
    """Days as they are typed."""
    for today, text in product((TODAY, "2026-03-01", "2024-02-29"), DAYS):
        try:
            found = read_day(text, today)
            yield f"{today} {text!r}: {found}, {day_words(found)}, {day_words(found, year=True)}"
        except CommandError as error:
            yield f"{today} {text!r}: {error}"


def times(name: str) -> Lines:
    """The minutes of each set-up by kind of work."""
    job = start(name)
    found = Reckoner(Shop(tool_change_time=97.0, measuring_time=41.0)).reckon(job)
    for set_up in job.set_ups:
        whole = minutes_of(set_up, found)
        yield f"{set_up.key}: {told(by_kind(set_up, found))} {told((whole, whole.around, whole.whole))}"


#: Planned minutes of milling, holes and work by hand.
_WORK = (
    (20, 0, 5), (5, 30, 0), (0, 10, 15), (40, 20, 10), (8, 2, 30), (15, 15, 15), (60, 5, 1), (1, 45, 6), (0, 0, 12), (0, 0, 0), (10, 0, 0), (25, 8, 4),
)  # fmt: skip
_PLANNED = {
    "planned_set_up": 0.0,
    "planned_milling": 5.0,
    "planned_holes": 6.0,
    "planned_by_hand": 7.0,
    "cutting": 9.0,
}


def _timed(count: int, factors: tuple[float, ...], odd: float) -> Iterator[Timed]:
    for place in range(count):
        planned = [60.0 * one for one in _WORK[place % len(_WORK)]]
        really = sum(a * b for a, b in zip(planned, factors, strict=True)) * (odd if place % 2 else 1.0)
        yield Timed(
            date=TODAY, set_up=600.0 if place % 4 else 0.0, milling=planned[0], holes=planned[1], hand=planned[2],
            setting_up=None if place % 5 == 4 else 600.0 * (1.2 + 0.1 * (place % 3)), cutting=None if place % 7 == 6 else really,
        )  # fmt: skip


def paced() -> Lines:
    """By what the clock differs from the plan, of few runs and of many."""
    for factors in ((1.0, 1.0, 1.0), (1.5, 0.8, 2.0), (0.6, 1.9, 1.1), (3.0, 1.0, 0.5)):
        for count, odd in product((1, 4, 5, 6, 7, 9, 12, 24, 30), (1.0, 1.05, 1.4)):
            found = paces(_timed(count, factors, odd))
            yield f"{factors} {count} {odd}: {[one.words() for one in found]}"
    base = Entry(job="HM-1", plan="", revision=1, machine="", date=TODAY, about="minutes")
    for more in ({}, {"planned_set_up": 60.0}, _PLANNED, {"planned_set_up": 1.0, "about": "size"}):
        yield f"{more}: {told(timed_of(replace(base, **more)))}"


def sections() -> dict[str, Callable[[], Lines]]:
    """All that is asked, by its heading."""
    found: dict[str, Callable[[], Lines]] = {
        "two figures": figures_two,
        "layers": layers,
        "days": days,
        "paces": paced,
    }
    for units in ("mm", "in"):
        found[f"cabinet {units}"] = lambda units=units: cabinet(units)
    for name in LADDERS:
        found[f"sizes {name}"] = lambda name=name: sizes(name)
    for machine, (end, every) in product(
        MACHINES[:2], (("clean", 1), ("stalled", 4), ("noisy", 2), ("chatter", 3))
    ):
        found[f"log {machine} {end} {every}"] = lambda m=machine, e=end, n=every: logged(m, e, n)
    for path in sorted(sample_jobs().glob("*.yaml")):
        found[f"times {path.stem}"] = lambda name=path.stem: times(name)
    return {name: _on_its_day(said) for name, said in found.items()}


def _on_its_day(said: Callable[[], Lines]) -> Callable[[], Lines]:
    def lines() -> Lines:
        with on_day(TODAY):
            try:
                told_lines = list(said())
            except JobsheetError as error:
                told_lines = [f"refused: {error}"]
        return iter(told_lines)

    return lines


if __name__ == "__main__":
    write(FILE, sections())
