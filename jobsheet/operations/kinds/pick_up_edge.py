"""Finding an edge with an edge finder: what half its tip is on the dials, and at what speed it turns."""

from __future__ import annotations

import re

from msgspec import Struct

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.errors import CalcError, QuantityError
from jobsheet.machine.handles import dial_text, reading
from jobsheet.machine.spindle import choose
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Quantity, Several, Tolerances
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Sweep
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Aim, Dial, Group, Kind
from jobsheet.operations.manners import HOW_FOUND
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared.tally import Tally
from jobsheet.units.grammar import read


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    cutter: Cutter
    edges: str
    tip: Quantity | None = None
    inside: Quantity | None = None
    spindle: Quantity | None = None
    minutes: Quantity | None = None
    measure: Measured | None = None
    tolerances: Tolerances | None = None
    how: Several | None = None
    what: str = ""
    note: str = ""


FORM = (
    Group(
        "Edges",
        (
            Entry(
                name="cutter",
                title="Edge finder",
                asks="cutter",
                choices=("edge finder",),
                hint="such as edge finder, 10 mm tip, drawer 6 no. 2",
            ),
            Entry(name="edges", title="Edges", asks="text", hint="such as A and B"),
            Entry(
                name="tip",
                title="Tip",
                asks="length",
                low="0.5 mm",
                high="50 mm",
                optional=True,
                hint="leave empty: as written of the finder",
            ),
            Entry(
                name="inside",
                title="Zero inside the edge by",
                asks="length",
                low="0.01 mm",
                high="200 mm",
                optional=True,
                hint="where the edge is still to be cut; else empty",
            ),
            common.SPINDLE,
            Entry(name="minutes", title="Minutes", asks="time", low="0 min", high="24 h", optional=True),
        ),
    ),
    Group("Check and words", (common.MEASURE, common.TOLERANCES, HOW_FOUND, common.WHAT, common.NOTE)),
)

#: An edge finder with a tip that jumps out runs at some 600-1200 rpm (common practice).
USUAL_SPEED = 900 / 60


def tip_of(fields: Fields) -> float:
    """The diameter of the tip [m]: typed, or as the finder's line says (`10 mm tip`)."""
    if fields.tip is not None:
        return fields.tip.value
    for part in fields.cutter.extra:
        match = re.match(r"^(.+?)\s+tip$|^tip\s+(.+)$", part, re.IGNORECASE)
        if match:
            try:
                return read(match[1] or match[2], "length")
            except QuantityError as error:
                raise CalcError("tip", f"“{part}”", "written with its size, such as 10 mm tip") from error
    if fields.cutter.diameter is not None:
        return fields.cutter.diameter
    raise CalcError("tip", f"“{fields.cutter.text}”", "written with its tip, such as edge finder, 10 mm tip")


def figures(fields: Fields, setting: Setting) -> Figures:
    """Half the tip, the speed, the minutes."""
    tally = Tally(setting.units)
    tally.show("half_tip", tip_of(fields) / 2)
    if fields.inside is not None:
        tally.show("wind_on", tip_of(fields) / 2 + fields.inside.value)
    asked = fields.spindle.value if fields.spindle else None
    choice = choose(setting.machine, USUAL_SPEED, 0.0, asked)
    if choice.why == "not on this machine" and asked is not None:
        tally.missing_speed(asked)
    tally.show("spindle_speed", choice.at.speed)
    if fields.minutes is not None:
        tally.show("bench_minutes", fields.minutes.value)
    return tally.done()


def _half(reckoned: Figures, setting: Setting, axis: str) -> str:
    """What is wound on from the edge as it is read on that dial: half the tip,
    and how far inside the zero lies.
    """
    handle = setting.machine.handle(axis)
    name = "wind_on" if reckoned.get("wind_on") else "half_tip"
    way = reckoned.number(name)
    return dial_text(handle, reading(handle, way)) if handle is not None else reckoned.shown(name)


def rows(fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Row, ...]:
    """One line: which edges, and half the tip to wind on before the dials are set to 0."""
    half = _half(reckoned, setting, "x")
    if fields.inside is not None:
        more = " ".join(common.millimetres(fields.inside.value, setting.units))
        way = f"half the tip and {more} more is {reckoned.shown('wind_on')}"
    else:
        way = f"half the tip is {reckoned.shown('half_tip')}"
    dialled = f"{way} = {half}: "
    note = f"{dialled}lift, wind it on, then zero; look again"
    return (
        Row(
            do=fields.what or f"Find {fields.edges}; set both dials to 0",
            note="; ".join(part for part in (note, fields.note) if part),
            cutter=fields.cutter.place or short_name(fields.cutter),
            spindle=f"{reckoned.number('spindle_speed') * 60:.0f}",
            measure=fields.measure.said if fields.measure else "",
            readings=(dialled,),
        ),
    )


def dials(_fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """The speed, and half the tip on both dials."""
    speed = reckoned.number("spindle_speed")
    name = "From the edge" if reckoned.get("wind_on") else "Half the tip"
    return (
        common.spindle_dial(setting, reckoned.shown("spindle_speed"), speed, "edge finder"),
        Dial(
            f"{name} on X",
            _half(reckoned, setting, "x"),
            "",
            reckoned.shown("wind_on", reckoned.shown("half_tip")),
        ),
        Dial(f"{name} on Y", _half(reckoned, setting, "y"), "", "lift before winding"),
    )


def sweep(_fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Nothing is cut."""
    return ()


def _words(fields: Fields) -> str:
    return f"Find {fields.edges}"


def _says(fields: Fields, _aim: Aim) -> tuple[str, ...]:
    return _words(fields), "Find the edges" if " and " in fields.edges else "Find the edge"


#: A new edge to find, to be changed.
EXAMPLE = {"cutter": "edge finder, 10 mm tip", "edges": "the left and the front edge", "minutes": "5 min"}


KIND = Kind(
    name="pick-up-edge",
    title="Find an edge",
    icon="find-edge",
    fields=Fields,
    form=FORM,
    figures=figures,
    rows=rows,
    dials=dials,
    sweep=sweep,
    words=_words,
    says=_says,
    example=EXAMPLE,
    word="pick-up-edge",
    groups=("finding",),
    roles=Roles(beside="find", does=("find zero",)),
    reads=frozenset({"machine", "units"}),
    also=("zero", "datum", "pick up"),
)
