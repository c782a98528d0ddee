"""The cuts a ladder chooses from: sizes that grow by what a dial can set, drills
that exist, taps with real tap drills.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping

from msgspec import Struct

from jobsheet.catalog.cuts.feeds import drill_feed
from jobsheet.catalog.tools.drill_sets import drill_set, drills_between
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import thread_table
from jobsheet.cutting.tapping import percent_of_thread
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.operations.names import show
from jobsheet.operations.shared.advice import table_feed_per_tooth
from jobsheet.operations.shared.common import millimetres
from jobsheet.units.table import INCH

#: Steps of a size, the roundest first (common practice: what a person likes to
#: set), in the units of the work.
_STEPS = {"mm": (0.5, 0.2, 0.1, 0.05), "in": (0.005, 0.002, 0.001)}
#: A rounder size may give away so much of what was allowed, and must still grow by so much (common practice).
_WORTH, _GROWS = 0.8, 1.08
#: Below these a cutter rubs more than it cuts (estimate), [m]: width and depth by units.
LEAST = {"mm": {"width": 0.25e-3, "depth": 0.1e-3}, "in": {"width": 0.010 * INCH, "depth": 0.005 * INCH}}
#: How far the depth of a ladder of widths is lightened for its first rungs (estimate: a quarter).
LIGHTEST = 0.25
#: A hole as it is tried: so many diameters deep (common practice).
HOLE_DEPTH = 2.0
#: Feed per tooth where the tables have none [m] (common practice).
USUAL_FEED = 0.03e-3
#: A thread with less height than this teaches nothing of use (common practice: 60 to 75 %).
LEAST_THREAD = 0.60
#: A test cut is so long [m]: enough to hear it (estimate), short enough to stop in.
TEST_LENGTH = {"mm": "80 mm", "in": "3 in"}


class Choice(Struct, frozen=True):
    """One cut to choose from: what to call it, its size [m] and the fields that it changes."""

    name: str
    size: float
    texts: tuple[tuple[str, str], ...]


def settled(value: float, units: str, last: float = 0.0, *, finest: bool = False) -> float:
    """The roundest size that is not above this one [m] and still grows on the
    last; or with the finest step.
    """
    unit = 1e-3 if units == "mm" else INCH
    steps = _STEPS[units]
    for step in steps[-1:] if finest else steps:
        size = math.floor(value / unit / step + 1e-6) * step * unit
        if size >= value * _WORTH and size >= last * _GROWS:
            return size
    return math.floor(value / unit / steps[-1] + 1e-6) * steps[-1] * unit


def size_text(value: float, units: str) -> str:
    """A length as it is typed: `0.7 mm`, `0.015 in`."""
    return " ".join(millimetres(value, units))


def milling_texts(
    process: str, grows: str, cutter: Cutter, setting: Setting, typed: Mapping[str, str]
) -> dict[str, str]:
    """The fields of a milling cut without what grows; what was typed stands as it is."""
    units, wide = setting.units, cutter.diameter or 0.0
    texts = {"cutter": cutter.text}
    if "feed" not in typed:
        feed = table_feed_per_tooth(cutter, setting, between_walls=process == "slot")
        texts["feed_per_tooth"] = show(
            "feed_per_tooth", feed.value if feed is not None else USUAL_FEED, units
        )
    half = size_text(wide / 2, units)
    if process == "face":
        texts |= {"along": "x", "depth": "0.5 mm" if units == "mm" else "0.02 in"}
        if grows == "width":
            texts["width"] = size_text(wide * 0.6, units)
    elif process == "side":
        texts |= {
            "side": "front",
            "width": half,
            "depth": half,
            "way": "conventional",
            "length": TEST_LENGTH[units],
        }
    else:
        ends = "10 mm, 25 mm; 70 mm, 25 mm" if units == "mm" else "0.4 in, 1 in; 2.8 in, 1 in"
        texts |= {"ends": ends, "depth": half}
    return {**texts, **typed}


def most(process: str, grows: str, cutter: Cutter) -> float:
    """How far a size may grow [m]: a width to the cutter, a depth to one and
    a half of it (common practice).
    """
    wide = cutter.diameter or 0.0
    return wide if grows == "width" else wide * (0.5 if process == "face" else 1.5)


def _round(value: float, units: str) -> float:
    """A depth that a quill stop can be set to: half millimetres, or 0.02 in."""
    step = 0.5e-3 if units == "mm" else 0.02 * INCH
    return max(round(value / step), 1) * step


def _like(cutter: Cutter, size: str) -> str:
    """The same line of a cutter with another size: what stands behind its first comma is kept."""
    _, comma, rest = cutter.text.partition(",")
    rest = ",".join(part for part in rest.split(",") if not re.match(r"\s*drawer\b", part))
    return f"{cutter.kind} {size}{comma if rest else ''}{rest}"


def drills(cutter: Cutter, setting: Setting, typed: Mapping[str, str]) -> tuple[Choice, ...]:
    """The drills of the set, up to the one that was written where there is a size."""
    units = setting.units
    cuts = []
    for size in drill_set("metric" if units == "mm" else "fractional"):
        if size.diameter < 1e-3 or (cutter.diameter and size.diameter > cutter.diameter * (1 + 1e-6)):
            continue
        if units == "mm" and round(size.diameter * 1e6) % 500:
            continue  # half millimetres: what a box of drills holds
        texts = {
            "cutter": _like(cutter, size.name),
            "at": _PLACE[units],
            "depth": size_text(_round(size.diameter * HOLE_DEPTH, units), units),
            "feed": show("feed_per_turn", drill_feed(size.diameter, setting.material).value, units),
        }
        cuts.append(Choice(size.name, size.diameter, tuple({**texts, **typed}.items())))
    return tuple(cuts)


_PLACE = {"mm": "10 mm, 10 mm", "in": "0.4 in, 0.4 in"}


def taps(cutter: Cutter, setting: Setting, typed: Mapping[str, str]) -> tuple[Choice, ...]:
    """Coarse threads of the system, each in its usual drill and in those up to the
    easier one: a larger hole asks less.
    """
    units = setting.units
    cuts = []
    for row in thread_table().values():
        if row.fine or row.name.startswith("M") != (units == "mm"):
            continue
        if units == "in" and not row.name.endswith("UNC"):
            continue
        if cutter.diameter and row.major > cutter.diameter * (1 + 1e-6):
            continue
        name = row.name.removesuffix(" UNC")
        short = name.partition("x")[0] if name.startswith("M") else name
        ends = [read_drill_size(text, units) for text in (row.drill, row.easier)]
        between = drills_between(min(ends), max(ends))
        holes = [(row.drill, ends[0])]
        holes += [
            (size.name, size.diameter)
            for size in between
            if size.diameter > ends[0] + 1e-6
            and size.set in (("metric",) if units == "mm" else ("number", "letter"))
            and percent_of_thread(major=row.major, hole=size.diameter, pitch=row.pitch) >= LEAST_THREAD
        ]
        for drill, diameter in holes:
            style = cutter.style or "plug"
            held = f", in a {cutter.holder}" if cutter.holder else ""
            texts = {
                "cutter": f"tap {short}, {style}{held}", "thread": name, "at": _PLACE[units],
                "depth": "through", "method": "under power", "hole": drill,
            }  # fmt: skip
            cuts.append(
                Choice(f"{short} in {_drill_words(drill)}", diameter, tuple({**texts, **typed}.items()))
            )
    return tuple(cuts)


def _drill_words(drill: str) -> str:
    """A drill as it is asked for: `No. 7`, `letter H`, `5 mm`, `5/16`."""
    if drill.startswith("#"):
        return f"No. {drill[1:]}"
    if len(drill) == 1 and drill.isalpha():
        return f"letter {drill}"
    # The table of metric threads has bare millimetres; the drills between have their unit.
    return f"{drill} mm" if drill.replace(".", "", 1).isdigit() else drill
