"""Spotting: a short cone that shows a drill where to begin, and leaves the chamfer of its hole.

It is asked for by its diameter at the surface or by its depth; whichever is typed, the sheet says both.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.cutting.speed import cone_depth, cone_diameter
from jobsheet.errors import CalcError, JobsheetError
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Places, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Sweep
from jobsheet.operations import reads as reading
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_DRILLED
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common, hole_words
from jobsheet.operations.shared import hole_work as drilling
from jobsheet.operations.shared.bite import bite_of
from jobsheet.operations.shared.tally import Tally

#: A spot drill whose point is not written (common practice).
_USUAL_POINT = common.radians(90)


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    at: Places
    within: Quantity | None = None
    to: Quantity | None = None
    depth: Quantity | None = None
    feed: Quantity | None = None
    spindle: Quantity | None = None
    cutting_speed: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Spots",
        (
            Entry(name="cutter", title="Spot drill", asks="cutter", choices=("spot drill",)),
            drilling.PLACES,
            drilling.WITHIN,
            Entry(
                name="to", title="Diameter at the surface", asks="length", low="0.2 mm", high="50 mm", optional=True,
                hint="hole with its chamfer; or write the depth",
            ),
            Entry(
                name="depth", title="Depth to the tip", asks="length", low="0.05 mm", high="50 mm", optional=True,
                hint="instead of the diameter",
            ),
        ),
    ),
    Group("Speed and feed", (drilling.FEED, common.SPINDLE, common.CUTTING_SPEED)),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_DRILLED, common.WHAT, common.NOTE)),
)  # fmt: skip


def spot_of(fields: Fields) -> tuple[float, float]:
    """Diameter at the surface and depth of the tip [m], whichever of them was typed."""
    whole, angle = drilling.diameter_of(fields.cutter), fields.cutter.point_angle or _USUAL_POINT
    if fields.to is not None and fields.depth is not None:
        raise CalcError(
            "depth", f"“{fields.depth.text}”", "left empty where the diameter at the surface is written"
        )
    if fields.to is not None:
        if fields.to.value > whole * (1 + 1e-9):
            raise CalcError(
                "diameter at the surface",
                f"“{fields.to.text}”",
                f"at most the spot drill, {fields.cutter.size}",
            )
        return fields.to.value, cone_depth(diameter=fields.to.value, point_angle=angle)
    if fields.depth is not None:
        return min(whole, cone_diameter(depth=fields.depth.value, point_angle=angle)), fields.depth.value
    raise CalcError("spot", "without a size", "given its diameter at the surface, such as 8 mm, or its depth")


def _straight(fields: Fields) -> float:
    """How far a spot drill goes in beyond its cone [m]: nought as it should be."""
    diameter, depth = spot_of(fields)
    cone = cone_depth(diameter=diameter, point_angle=fields.cutter.point_angle or _USUAL_POINT)
    return max(0.0, depth - cone) if depth > cone * (1 + 1e-9) else 0.0


def figures(fields: Fields, setting: Setting) -> Figures:
    """A drill of the diameter at the surface, with its web; push at the lever; seconds."""
    tally = Tally(setting.units)
    diameter, depth = spot_of(fields)
    tally.show("effective_diameter", diameter)
    if _straight(fields):
        tally.caveat("The spot drill goes in beyond its cone: write a smaller depth.")
    if setting.pilot is not None:
        tally.caveat("A hole stands at these places already: to break its edge choose a countersink step.")
    bite = bite_of(fields.cutter, diameter, drilling.feed_of(fields), setting.pilot)
    drilling.cut(tally, setting, fields, bite, depth, common.start_speed(setting, fields.cutter, "drill"))
    return tally.done()


def _words(fields: Fields) -> str:
    count = hole_words.holes_words(len(fields.at))
    if fields.to is not None:
        return f"Spot {count} to ⌀{hole_words.bare(fields.to)}"
    return f"Spot {count} {fields.depth.text} deep" if fields.depth else f"Spot {count}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    size = f"to ⌀{hole_words.bare(fields.to)}" if fields.to is not None else ""
    deep = f"{fields.depth.text} deep" if fields.depth is not None and fields.to is None else ""
    return hole_words.shorter("Spot", len(fields.at), size, deep)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: how many, to what diameter and how deep."""
    return (drilling.cone_row(fields, reckoned, setting, _words(fields)),)


def dials(_fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Spindle, seconds to the depth, quill stop."""
    return drilling.cone_dials(reckoned, setting)


def sweep(fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Cones; a spot is no pilot for what follows, so the kind leaves no holes."""
    try:
        diameter, _ = spot_of(fields)
    except JobsheetError:
        return ()
    angle = fields.cutter.point_angle or _USUAL_POINT
    return drilling.shapes(fields.at, diameter, _straight(fields), angle)


#: A new spot, to be changed.
EXAMPLE = {"cutter": "spot drill 10 mm, 90°", "at": "10 mm, 10 mm", "to": "6 mm", "feed": "0.05 mm"}


KIND = Kind(
    name="spot-drill", title="Spot drill", icon="spot-drill", fields=Fields, form=FORM, figures=figures, rows=rows,
    dials=dials, sweep=sweep, words=_words, says=_says, example=EXAMPLE, word="spot-drill", groups=("drilling",),
    roles=Roles(hole="spot", speed="drill", feed="drill", process="spot"),
    reads=reading.CUT | {"pilot"},
    also=("centre", "mark"),
)  # fmt: skip
