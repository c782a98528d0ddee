"""Fly cutting: one tooth over the middle of the face, a fine finish and a hammering load.

The cut is centred: the tooth enters and leaves at both sides of the work. Between two passes of the
tooth nothing cuts, so the peak of the torque is several times its mean.
"""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.errors import CalcError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import aimed
from jobsheet.operations.shared import flat_work as flat
from jobsheet.operations.shared import milling_work as milling
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    depth: Quantity
    layer: Quantity | None = None
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
                title="Fly cutter",
                asks="cutter",
                choices=("fly cutter",),
                hint="its swing, such as fly cutter 60 mm, carbide",
            ),
            Entry(name="depth", title="Depth", asks="length", low="0.01 mm", high="20 mm"),
            milling.LAYER,
        ),
    ),
    *flat.FORM,
)


def _width(fields: Fields, setting: Setting) -> float:
    """The work across the feed [m]; the swing must reach over it."""
    _, width = flat.length_and_width(fields, setting)
    diameter = milling.diameter_of(fields.cutter)
    if width >= diameter:
        raise CalcError(
            "fly cutter",
            f"{diameter * 1e3:.4g} mm across",
            f"wider than the work, {width * 1e3:.4g} mm: it cuts once over the whole face",
        )
    return width


def figures(fields: Fields, setting: Setting) -> Figures:
    """A centred cut over the whole width; mean and peak beside each other."""
    tally = Tally(setting.units)
    diameter, width = milling.diameter_of(fields.cutter), _width(fields, setting)
    layers = milling.layers_of(fields.depth.value, fields.layer)
    half = math.asin(width / diameter)
    cut = milling.Cut(
        cutter=fields.cutter,
        depth=fields.depth.value / layers,
        width=width,
        tooth=0.0,
        start=math.pi / 2 - half,
        end=math.pi / 2 + half,
    )
    _, feed, forces = milling.run(tally, cut, setting, milling.asked_of(fields))
    if not forces.always_in_cut:
        tally.caveat("The tooth cuts air between two cuts: belts and keys feel the peak, not the mean.")
    length = flat.length_and_width(fields, setting)[0] + diameter
    return flat.times(tally, fields, setting, feed=feed, length=length, width=width, side_by_side=1)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how much comes off the whole face."""
    return flat.rows(fields, reckoned, setting, verb="Fly-cut", passes=milling.passes_words(reckoned))


def _words(fields: Fields) -> str:
    return f"Fly-cut {fields.depth.text} off"


def _says(fields: Fields, aim: Aim) -> tuple[str, ...]:
    return aimed.top(fields, aim, "fly-cut")


#: A new fly cut, to be changed.
EXAMPLE = {
    "cutter": "fly cutter 80 mm, carbide",
    "depth": "0.2 mm",
    "feed_per_tooth": "0.1 mm",
    "along": "x",
}


KIND = Kind(
    name="fly-cut",
    title="Fly cut",
    icon="fly-cut",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=flat.dials,
    sweep=flat.sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="fly-cut",
    groups=("milling",),
    roles=Roles(mills="flat", speed="mill", process="fly cut"),
    takes_off=flat.takes_off,
    reads=flat.READS,
    also=("face",),
)
