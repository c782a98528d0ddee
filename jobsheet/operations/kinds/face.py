"""Facing: taking a layer off the face that is up, in passes side by side.

The cut is reckoned from one edge: the mean chip is that of an edge cut as wide as the widest pass.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import aimed, common
from jobsheet.operations.shared import flat_work as flat
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    depth: Quantity
    layer: Quantity | None = None
    width: Quantity | None = None
    feed_per_tooth: Quantity | None = None
    feed: Quantity | None = None
    along: str = "x"
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Cut",
        (
            Entry(
                name="cutter",
                title="Cutter",
                asks="cutter",
                choices=("face mill", "end mill", "slot drill"),
            ),
            Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="200 mm"),
            milling.LAYER,
            Entry(
                name="width",
                title="Width of a pass",
                asks="length",
                low="0.1 mm",
                high="500 mm",
                optional=True,
                hint="leave empty: as wide as the cutter may",
            ),
        ),
    ),
    *flat.FORM,
)

#: A face cut takes 60-75 % of the cutter where nothing is asked (common practice, cutting-data section 3.3).
USUAL_WIDTH = 0.6


def passes(fields: Fields, setting: Setting) -> tuple[tuple[float, ...], float]:
    """Widths of the passes side by side and the length of each [m], approach and overrun in it.

    The length is that of the work plus one diameter (makers' form, cutting-data section 1.10).
    """
    diameter = milling.diameter_of(fields.cutter)
    length, total = flat.length_and_width(fields, setting)
    width = min(fields.width.value if fields.width else diameter * USUAL_WIDTH, total)
    count = max(1, math.ceil(total / width - 1e-9))
    widths = [width] * (count - 1) + [total - width * (count - 1)]
    return tuple(widths), length + diameter


def figures(fields: Fields, setting: Setting) -> Figures:
    """The widest pass, counted from one edge; times over all passes and layers."""
    tally = Tally(setting.units)
    widths, length = passes(fields, setting)
    widest = max(widths)
    layers = milling.layers_of(fields.depth.value, fields.layer)
    start, end = milling.edge_arc(widest, milling.diameter_of(fields.cutter))
    cut = milling.Cut(
        cutter=fields.cutter, depth=fields.depth.value / layers, width=widest, tooth=0.0, start=start, end=end
    )
    _, feed, _ = milling.run(tally, cut, setting, milling.asked_of(fields))
    return flat.times(
        tally, fields, setting, feed=feed, length=length, width=widest, side_by_side=len(widths)
    )


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how much comes off, in how many passes."""
    widths, length = passes(fields, setting)
    unique = " and ".join(common.millimetres(width, setting.units)[0] for width in dict.fromkeys(widths))
    long, _ = common.millimetres(length, setting.units)
    count = common.times(len(widths), "one pass", "passes")
    passes_words = f"{count} {unique} wide, {long} long"
    return flat.rows(fields, reckoned, setting, verb="Face", passes=passes_words)


def _words(fields: Fields) -> str:
    return f"Face {fields.depth.text} off"


def _says(fields: Fields, aim: Aim) -> tuple[str, ...]:
    return aimed.top(fields, aim)


#: A new facing cut, to be changed.
EXAMPLE = {
    "cutter": "face mill 50 mm, 4 teeth, carbide",
    "depth": "0.5 mm",
    "feed_per_tooth": "0.05 mm",
    "along": "x",
}


KIND = Kind(
    name="face",
    title="Face",
    icon="face",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=flat.dials,
    sweep=flat.sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="face",
    groups=("milling",),
    roles=Roles(mills="flat", speed="mill", process="face"),
    takes_off=flat.takes_off,
    reads=flat.READS,
    also=("mill the top", "shell mill"),
)
