"""Ladders of test cuts of every sort, rung for rung, and the sizes they choose among: kept as the pictures of the pages are.

After a change that is meant, look through what changed in `ladders.yaml`, then `python -m tests.reckoning.kept_ladders`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import product
from pathlib import Path

from msgspec.structs import replace

from jobsheet.model.trials import Trial
from jobsheet.paths import resources
from jobsheet.reckoning.ladder import ladder_cuts as cuts
from jobsheet.reckoning.ladder.ladder_expected import words_of
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.storage.records.proof_log import records_from
from tests.kept_sections import write
from tests.later import on_day
from tests.reckoning.kept_asks import TODAY, Lines
from tests.reckoning.kept_parts import LADDERS
from tests.told import told

FILE = Path(__file__).parent / "ladders.yaml"
#: What is asked beside the ladders of `kept_parts`: widths, taps in a head, drills in hard metal.
MORE: dict[str, dict] = {
    "side, widths in inches": {"cutter": "end mill 1/2 in, 4 teeth, 1-1/4 in out", "material": "1018", "kind": "side", "units": "in", "grow": "width", "texts": {"depth": "0.5 in"}},
    "side, widths of a deep cut": {"cutter": "end mill 16 mm, 4 teeth, 45 mm out", "material": "C45", "kind": "side", "grow": "width", "texts": {"depth": "20 mm"}},
    "side, widths of a light cut": {"cutter": "end mill 6 mm, 3 teeth, 15 mm out", "material": "EN AW-6082", "kind": "side", "grow": "width", "texts": {"depth": "0.5 mm"}},
    "face, widths": {"cutter": "face mill 50 mm, 4 teeth, carbide, marked 12000 rpm", "material": "EN AW-6082", "kind": "face", "grow": "width"},
    "face with a feed": {"cutter": "end mill 20 mm, 4 teeth, 45 mm out", "material": "S235", "kind": "face", "texts": {"feed": "100 mm/min", "spindle": "500 rpm"}},
    "drill, any": {"cutter": "drill", "material": "C45", "kind": "drill"},
    "drill, any in inches": {"cutter": "drill", "material": "EN AW-6082", "kind": "drill", "units": "in"},
    "drill, large": {"cutter": "drill 20 mm, drawer 3, cobalt", "material": "S235", "kind": "drill", "texts": {"feed": "0.1 mm"}},
    "tap, any": {"cutter": "tap", "material": "S235", "kind": "tap"},
    "tap in inches": {"cutter": "tap 3/8-16, plug", "material": "EN AW-6082", "kind": "tap", "units": "in"},
    "tap in a head": {"cutter": "tap M10, spiral point, in a tapping head", "material": "S235", "kind": "tap"},
}  # fmt: skip
ALL = {**LADDERS, **MORE}
#: How it is asked: what was cut before, and how far it may go.
WAYS: dict[str, dict] = {
    "as it is": {},
    "finer": {"finer": True},
    "bold": {"chance": 0.3, "growth": 1.6},
    "careful": {"chance": 0.05, "most": 3},
    "up to": {"up_to": {"chatter": 0.5, "spindle-torque": 0.3}},
}
SETTLED = (0.0, 0.012e-3, 0.05e-3, 0.1e-3, 0.26e-3, 0.51e-3, 0.99e-3, 1e-3, 1.27e-3, 2.54e-3, 3.33e-3, 9.9e-3)


def _trials(machine: str, end: str) -> tuple[Trial, ...]:
    """The demonstration's log, of which every fourth cut ended otherwise; none where it has none."""
    path = resources() / "proof" / f"{machine}.txt"
    found = records_from(path.read_bytes())[0] if end and path.exists() else ()
    return tuple(replace(one, outcome=end) if place % 4 == 3 else one for place, one in enumerate(found))


def ladder(name: str, machine: str) -> Lines:
    """A ladder in the ways that are asked of it."""
    for way, end in _ways(name, machine):
        found = plan(machine, date=TODAY, trials=_trials(machine, end), **ALL[name], **WAYS[way])
        yield f"{way} {end}: {found.refused} {found.ends} {found.words} {told((found.title, found.grows, found.texts))}"
        if found.expected is not None:
            yield f"  expected {told(found.expected)} {words_of(found.expected)}"
        for rung in found.rungs:
            yield f"  {rung.size}: {told([(one.limit, one.share) for one in rung.asked])} {told(list(rung.texts))}"


def _ways(name: str, machine: str) -> Iterator[tuple[str, str]]:
    """Each quick to answer: what is dear is asked of one ladder of a kind."""
    if machine == "knee-mill-k-2":
        yield from (("bold", ""), ("up to", "")) if name in LADDERS else (("as it is", ""), ("careful", ""))
    elif name in AFTER_A_LOG:
        yield from (("as it is", "stalled"), ("finer", "noisy"))
    elif name in MORE and not name.startswith("drill"):
        yield "as it is", ""


#: Asked with a log of their machine.
AFTER_A_LOG = ("side, widths of a deep cut", "drill in inches", "tap in inches")


def sizes(units: str) -> Lines:
    """Sizes as a hand sets them: the roundest that still grows."""
    for value, last in product(SETTLED, (0.0, 0.05e-3, 0.9e-3, 1e-3)):
        found = [cuts.settled(value, units, last, finest=finest) for finest in (False, True)]
        yield f"{value * 1e3:.6g} mm after {last * 1e3:.6g}: {told(found)} {[cuts.size_text(one, units) for one in found]}"


def sections() -> dict[str, Callable[[], Lines]]:
    """All that is asked, by its heading."""
    found: dict[str, Callable[[], Lines]] = {
        f"sizes {units}": lambda u=units: sizes(u) for units in ("mm", "in")
    }
    for name in ALL:
        hole = ALL[name]["kind"] in ("drill", "tap")
        for machine in ("bench-mill-b-2", "knee-mill-k-2") if hole else ("bench-mill-b-1", "knee-mill-k-2"):
            found[f"ladder {name} {machine}"] = lambda n=name, m=machine: _told(n, m)
    return found


def _told(name: str, machine: str) -> Lines:
    with on_day(TODAY):
        yield from list(ladder(name, machine))


if __name__ == "__main__":
    write(FILE, sections())
