"""Checking that the head stands square to the table: an indicator swept round, and what its reading means."""

from __future__ import annotations

import math

from msgspec import Struct

from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Measured, Quantity, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Sweep
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    swing: Quantity
    allowed: Quantity
    found: Quantity | None = None
    cutter_width: Quantity | None = None
    minutes: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Sweep",
        (
            Entry(
                name="swing",
                title="Swing of the indicator",
                asks="length",
                low="20 mm",
                high="2 m",
                hint="diameter of the circle it sweeps",
            ),
            Entry(
                name="allowed",
                title="Allowed over the swing",
                asks="length",
                low="0.001 mm",
                high="5 mm",
            ),
            Entry(
                name="found",
                title="Found",
                asks="length",
                low="0 mm",
                high="20 mm",
                optional=True,
                hint="largest difference read",
            ),
            Entry(
                name="cutter_width",
                title="Widest cut after it",
                asks="length",
                low="1 mm",
                high="500 mm",
                optional=True,
                hint="says how hollow a face that wide comes out",
            ),
            Entry(name="minutes", title="Minutes", asks="time", low="0 min", high="24 h", optional=True),
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, common.WHAT, common.NOTE)),
)


def hollow(width: float, tilt: float) -> float:
    """How hollow a face comes out when a tilted cutter of that width goes over it [m].

    The edge of a disc tilted about the feed's cross axis dips by half its width times the sine of the
    tilt below its middle: z = (width / 2) sin(tilt) (geometry, for a cutter as wide as the face).
    """
    return width / 2 * math.sin(tilt)


def figures(fields: Fields, setting: Setting) -> Figures:
    """The tilt that was found, and how hollow a face it makes."""
    tally = Tally(setting.units)
    reading = fields.found if fields.found is not None else fields.allowed
    tilt = math.atan2(reading.value, fields.swing.value)
    tally.show("tilt", tilt)
    if fields.cutter_width is not None:
        tally.show("hollow", hollow(fields.cutter_width.value, tilt))
    if fields.found is not None and fields.found.value > fields.allowed.value:
        tally.caveat("More than allowed: tram the head before cutting.")
    if fields.minutes is not None:
        tally.show("bench_minutes", fields.minutes.value)
    return tally.done()


def _words(fields: Fields) -> str:
    return f"Check the head: within {fields.allowed.text} over {fields.swing.text}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return _words(fields), f"Check the head: within {fields.allowed.text}", "Check the head"


def rows(fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Row, ...]:
    """One line: what is allowed, what was found."""
    parts = [f"found {fields.found.text}" if fields.found else "", *reckoned.caveats, fields.note]
    return (
        Row(
            do=fields.what or _words(fields),
            note=", ".join(part for part in parts if part),
            cutter="indicator",
            power_off=True,
            measure=fields.measure.said if fields.measure else "",
        ),
    )


def dials(fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Dial, ...]:
    """Spindle in neutral, the reading allowed."""
    return (
        Dial("Spindle", "power off", "", "turned by hand"),
        Dial("Reading at most", fields.allowed.text, "", f"over {fields.swing.text}"),
        Dial("Tilt", reckoned.shown("tilt"), "", reckoned.shown("hollow")),
    )


def sweep(_fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Nothing is cut."""
    return ()


#: A new check, to be changed.
EXAMPLE = {"swing": "150 mm", "allowed": "0.02 mm", "minutes": "10 min"}


KIND = Kind(
    name="tram-check",
    title="Check the tram",
    icon="tram-check",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="tram-check",
    groups=("finding",),
    roles=Roles(beside="tram", does=("check head",)),
    reads=frozenset({"units"}),
    also=("square the head",),
)
