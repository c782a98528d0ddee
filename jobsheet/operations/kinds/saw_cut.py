"""Sawing at the bench: the bulk comes off cheaply; its minutes, and what must be left to mill."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Measured, Quantity, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Edge, Sweep
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    off: Quantity
    side: str = "right"
    area: Quantity | None = None
    thickness: Quantity | None = None
    leave: Quantity | None = None
    saw: str = "hand saw"
    minutes: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Cut",
        (
            Entry(name="off", title="Length sawn off", asks="length", low="0.5 mm", high="3 m"),
            Entry(
                name="side",
                title="Off the side",
                asks="choice",
                choices=("left", "right", "front", "rear"),
                optional=True,
            ),
            Entry(
                name="area",
                title="Width of the cut",
                asks="length",
                low="1 mm",
                high="3 m",
                optional=True,
                hint="leave empty: across the work",
            ),
            Entry(
                name="thickness",
                title="Height of the cut",
                asks="length",
                low="0.5 mm",
                high="1 m",
                optional=True,
                hint="leave empty: the height of the work",
            ),
            Entry(
                name="leave",
                title="Leave for milling",
                asks="length",
                low="0 mm",
                high="50 mm",
                optional=True,
                hint="a sawn face wants 1 mm or more",
            ),
            Entry(name="saw", title="With", asks="choice", choices=("hand saw", "power saw"), optional=True),
            Entry(
                name="minutes",
                title="Minutes",
                asks="time",
                low="0 min",
                high="24 h",
                optional=True,
                hint="leave empty: from the area",
            ),
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, common.WHAT, common.NOTE)),
)

#: Area of steel sawn in a second [m²/s]: 5 cm² a minute by hand, 20 by a small
#: power saw (common practice, no source).
RATES = {"hand saw": 5e-4 / 60, "power saw": 20e-4 / 60}


def figures(fields: Fields, setting: Setting) -> Figures:
    """Minutes from the area of the cut, unless they were typed; the metal that comes off."""
    tally = Tally(setting.units)
    across = setting.extent[1 if fields.side in ("left", "right") else 0]
    width = fields.area.value if fields.area else across
    height = fields.thickness.value if fields.thickness else setting.extent[2]
    area, volume = width * height, width * height * fields.off.value
    if setting.profile is not None:
        area = min(area, setting.profile.sawn(fields.side, fields.off.value, height))
        volume = min(volume, setting.profile.strip(fields.side, fields.off.value, height))
    minutes = fields.minutes.value if fields.minutes else area / RATES[fields.saw]
    tally.show("volume", volume)
    tally.show("bench_minutes", minutes)
    return tally.done()


def _words(fields: Fields) -> str:
    return f"Saw {fields.off.text} off the {fields.side} side"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return _words(fields), f"Saw {fields.off.text} off"


def rows(fields: Fields, _found: Figures, _setting: Setting) -> tuple[Row, ...]:
    """One line: how much, what is left for milling."""
    left = f"leave {fields.leave.text} for milling" if fields.leave else ""
    return (
        Row(
            do=fields.what or _words(fields),
            note=", ".join(part for part in (left, fields.note) if part),
            cutter=fields.saw,
            power_off=True,
            measure=fields.measure.said if fields.measure else "",
        ),
    )


def dials(_fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Dial, ...]:
    """At the bench: nothing to set but the time it takes."""
    return (Dial("At the bench", reckoned.shown("bench_minutes"), "", "saw, then break the edges"),)


def sweep(fields: Fields, setting: Setting) -> tuple[Sweep, ...]:
    """The end that is sawn off."""
    return (Edge(fields.side, fields.off.value, setting.extent[2]),)


#: A new saw cut, to be changed.
EXAMPLE = {"off": "10 mm", "side": "right", "leave": "1 mm", "saw": "hand saw"}


def _reads(fields: Fields) -> frozenset[str]:
    """What is sawn through is as wide and high as the work there."""
    across = "extent.y" if fields.side in ("left", "right") else "extent.x"
    return frozenset({"units", across, "extent.z", "profile"})


KIND = Kind(
    name="saw-cut",
    title="Saw",
    icon="saw-cut",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="saw-cut",
    groups=("bench",),
    roles=Roles(beside="saw", does=("saw",)),
    reads=_reads,
    also=("cut off",),
)
