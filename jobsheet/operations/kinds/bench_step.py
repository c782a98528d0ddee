"""A step by hand: it says what it does (`operations/deeds.py`), with what, and what was found.
Nothing is reckoned but its minutes.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.catalog.tools.cutters import short_name
from jobsheet.catalog.tools.measuring import INSTRUMENTS, OLDER
from jobsheet.machine.spindle import choose
from jobsheet.model.figure import Figures
from jobsheet.model.quantity import Cutter, Measured, Quantity, Several
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Sweep
from jobsheet.operations import deeds
from jobsheet.operations.deeds import said
from jobsheet.operations.entry import Entry
from jobsheet.operations.kind import Dial, Group, Kind
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared import common
from jobsheet.operations.shared.tally import Tally


class Fields(Struct, frozen=True, kw_only=True):
    """What is typed and stored."""

    does: Several | None = None
    what: str = ""
    with_what: str = ""
    zero_on: Several | None = None
    instrument: str | None = None
    removes: Several | None = None
    stays: Several | None = None
    one_at_a_time: bool | None = None
    screws: int | None = None
    cutter: Cutter | None = None
    spindle: Quantity | None = None
    minutes: Quantity | None = None
    measure: Measured | None = None
    note: str = ""


FORM = (
    Group(
        "Step",
        (
            Entry(
                name="does", title="It does", asks="several", choices=deeds.DEEDS, optional=True,
                hint="such as measure, deburr; rules go by this",
            ),
            Entry(
                name="what", title="Your wording", asks="text", optional=True, lines=2, hint="leave empty for the usual words"
            ),
            Entry(name="with_what", title="With", asks="text", optional=True, hint="such as file, soft hammer"),
            Entry(
                name="cutter", title="In the spindle", asks="cutter", optional=True,
                hint="such as edge finder, 10 mm tip, drawer 6 no. 2",
            ),
            common.SPINDLE,
            Entry(name="minutes", title="Minutes", asks="time", low="0 min", high="24 h", optional=True),
        ),
    ),
    Group(
        "Zero, holding",
        (
            Entry(
                name="zero_on", title="Zero found on", asks="several", choices=deeds.FACES, optional=True,
                hint="faces of the drawing, such as left, front",
            ),
            Entry(name="removes", title="Comes off", asks="several", choices=deeds.HELD_BY, optional=True),
            Entry(name="stays", title="Goes on holding", asks="several", choices=deeds.HELD_BY, optional=True),
            Entry(name="one_at_a_time", title="One at a time", asks="flag", optional=True),
            Entry(name="screws", title="Screws in the loose piece", asks="count", low="0", high="100", optional=True),
        ),
    ),
    Group(
        "Check and words",
        (
            common.MEASURE,
            Entry(name="instrument", title="Measured with", asks="choice", choices=INSTRUMENTS, older=tuple(OLDER.items()), optional=True),
            common.NOTE,
        ),
    ),
)  # fmt: skip


def figures(fields: Fields, setting: Setting) -> Figures:
    """The minutes, and the speed where something turns."""
    tally = Tally(setting.units)
    if fields.spindle is not None:
        asked = fields.spindle.value
        choice = choose(setting.machine, asked, 0.0, asked)
        if choice.why == "not on this machine":
            tally.missing_speed(asked)
        tally.show("spindle_speed", choice.at.speed)
    if fields.minutes is not None:
        tally.show("bench_minutes", fields.minutes.value)
    return tally.done()


def rows(fields: Fields, reckoned: Figures, _setting: Setting) -> tuple[Row, ...]:
    """One line, in the person's own words."""
    place = (fields.cutter.place or short_name(fields.cutter)) if fields.cutter else fields.with_what
    speed = reckoned.value("spindle_speed")
    return (
        Row(
            do=fields.what or _words(fields),
            note=fields.note,
            cutter=place,
            spindle=f"{speed * 60:.0f}" if speed else "",
            power_off=speed is None,
            measure=fields.measure.said if fields.measure else "",
        ),
    )


def dials(_fields: Fields, reckoned: Figures, setting: Setting) -> tuple[Dial, ...]:
    """Only the spindle, where something turns."""
    speed = reckoned.value("spindle_speed")
    if speed is None:
        return (Dial("Spindle", "stopped"),)
    return (common.spindle_dial(setting, reckoned.shown("spindle_speed"), speed, "edge finder"),)


def sweep(_fields: Fields, _setting: Setting) -> tuple[Sweep, ...]:
    """Nothing that a picture could show."""
    return ()


def _words(fields: Fields) -> str:
    return fields.what or said(fields.does.items if fields.does else ()) or "Bench step"


def _roles(fields: Fields) -> Roles:
    return Roles(beside="bench", does=fields.does.items if fields.does else ())


#: A new step, to be worded.
EXAMPLE = {"does": "deburr", "with_what": "file"}


KIND = Kind(
    name="bench-step", title="Bench step", icon="bench-step", fields=Fields, form=FORM, figures=figures, rows=rows,
    dials=dials, sweep=sweep, words=_words, example=EXAMPLE, word="bench-step", groups=("bench",),
    roles=_roles,
    reads=frozenset({"machine", "units"}),
    also=("deburr", "file", "measure", "clean", "clamp", "hold", "mark out"),
)  # fmt: skip
