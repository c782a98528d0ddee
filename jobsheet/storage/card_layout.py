"""The fields of a machine card for its editor: what each asks, and how it is found out at the machine.

A test holds this and the reader of `storage/machine_file.py` together.
"""

from __future__ import annotations

from typing import Any

from jobsheet.operations.entry import Entry
from jobsheet.storage.paper_layout import Ask, Heading, Inner, Layout, Rows

_REST = "Switch off and isolate first: hands go near the spindle."


def _ask(name: str, title: str, asks: str = "text", hint: str = "", **more: Any) -> Ask:
    """A field that may be left empty, unless `need` says that it may not."""
    how, marked, need = more.pop("how", ""), more.pop("marked", False), more.pop("need", False)
    return Ask(Entry(name=name, title=title, asks=asks, hint=hint, optional=not need, **more), how, marked)


MACHINE = (
    _ask("title", "Name of the machine", hint="as the workshop calls it", need=True),
    _ask("kind", "Kind", hint="such as light bench mill", need=True),
    _ask("card date", "Card of", hint="the day it was last looked through"),
    _ask("column", "Column", hint="round column: zero is lost when the head is moved"),
    _ask("stand", "Stands on", "choice", choices=("bench", "stand", "floor")),
    _ask("mass", "Mass", "mass", "from its plate or manual"),
    _ask("noise", "Noise while cutting", "sound", "a sound meter where your head is"),
    _ask("invented", "Invented", "flag", "yes only for a made-up machine"),
    _ask("note", "Note", lines=2),
    _ask("assumed", "Still assumed", hint="what has not been measured yet"),
)
STEPS = Rows(
    name="steps",
    title="Steps",
    one="speed",
    shown=("speed", "position", "measured"),
    parts=(
        _ask("speed", "Marked speed", "spindle speed", "as on the chart", need=True),
        _ask("position", "Set by", hint="such as belts 2"),
        _ask("measured", "By tachometer", "spindle speed", "guards in place, no cutter"),
    ),
    how="One for each position of belt or lever. Leave the list empty for a speed that is turned up and down.",
)
RANGES = Rows(
    name="ranges",
    title="Ranges of speed",
    one="range",
    shown=("name", "lowest", "highest", "efficiency", "cap"),
    start=(("name", ""), ("efficiency", "0.80, guessed")),
    flow=False,
    parts=(
        _ask("name", "Name", hint="such as back gear"),
        _ask(
            "efficiency", "Efficiency", "share", "0.81 two belts, 0.75 back gear, 0.80 gears",
            how="usual for such a drive; only test cuts tell", marked=True, need=True,
        ),
        _ask(
            "cap", "Torque the drive slips at", "torque", "belt or gear; empty if not known", marked=True,
            how="if a cut ever makes it slip: the torque of that cut",
        ),
        _ask("base speed", "Full power from", "spindle speed", "electronic drives only"),
        _ask("lowest", "Lowest", "spindle speed", "if it has no steps"),
        _ask("highest", "Highest", "spindle speed", "if it has no steps"),
        STEPS,
    ),
)  # fmt: skip
SPINDLE = Inner(
    name="spindle",
    title="Drive",
    parts=(
        _ask("drive", "Drive", hint="such as induction, single phase, two belts", need=True),
        _ask(
            "speed change", "Speed is changed by", "choice", need=True,
            choices=("step belt", "gears", "variable belt", "electronic"),
        ),
        _ask(
            "power", "Power", "power", "what the motor gives out, from its plate", marked=True, need=True,
            how="read the motor's plate; of a plate that gives only what goes in, take 0.65",
        ),
        _ask(
            "short peak", "For seconds, times", "share", "1.8 single phase, 2.2 three phase, 1.3 electronic",
            need=True,
        ),
        _ask("reverses", "Can run backwards", "flag"),
        _ask("slips", "Slips or trips when stalled", "flag", "before a tap breaks"),
        RANGES,
    ),
)  # fmt: skip
HANDLES = Rows(
    name="handles",
    title="Handles",
    one="handle",
    shown=("name", "a turn", "a line", "backlash"),
    parts=(
        _ask("name", "Moves", hint="x, y, head, knee or quill", need=True),
        _ask("dial", "Dial in", "choice", choices=("mm", "in"), need=True),
        _ask("a turn", "Advance a turn", "length", "ten turns by rule, divided by ten", need=True),
        _ask("a line", "One line of the dial", "length", "a turn divided by its lines", need=True),
        _ask("backlash", "Backlash", "length", "by indicator: from push to pull"),
        _ask("crank radius", "Radius of the handle", "length", "centre to grip"),
        _ask(
            "screw efficiency", "Efficiency of its screw", "share", "0.3 plain screw", marked=True,
            how="usual for such a screw; 0.2 worn and dry, 0.4 with a thrust bearing",
        ),
        _ask("counts up", "Counts up", hint="such as table to the left"),
    ),
)  # fmt: skip
LEVER = Inner(
    name="quill lever",
    title="Quill lever",
    how=_REST,
    parts=(
        _ask("length", "Length of the lever", "length", "centre to grip", need=True),
        _ask(
            "travel a turn", "Quill travel a turn", "length", "a quarter turn by rule, times four", need=True
        ),
        _ask("spring", "Return spring", "force", "what holds the quill halfway down", need=True),
    ),
)
TRAVEL = Inner(
    name="travel",
    title="Travel",
    parts=tuple(
        _ask(name, title, "length")
        for name, title in (("x", "x, left and right"), ("y", "y, in and out"), ("head", "Head"), ("knee", "Knee"), ("quill", "Quill"))
    ),
)  # fmt: skip
DAYLIGHT = Inner(
    name="daylight",
    title="Spindle nose to table",
    parts=(_ask("least", "Least", "length", need=True), _ask("greatest", "Greatest", "length", need=True)),
)
TABLE = Inner(
    name="table",
    title="Table",
    parts=(
        _ask("length", "Length", "length"),
        _ask("width", "Width", "length"),
        _ask("load", "May carry", "mass", "from the manual"),
        _ask("slots", "Slots", hint="such as 3 slots 10 mm"),
    ),
)
VICES = Rows(
    name="vices",
    title="Vices",
    one="vice",
    shown=("name", "jaw width", "opening"),
    parts=(
        _ask("name", "Name", hint="such as 80 mm vice", need=True),
        _ask("jaw width", "Jaw width", "length", need=True),
        _ask("jaw depth", "Jaw depth", "length", need=True),
        _ask("opening", "Opens to", "length"),
        _ask("bed height", "Bed above the table", "length"),
        _ask("mass", "Mass", "mass"),
        _ask("screw lead", "Screw, a turn", "length", "ten turns, divided by ten"),
        _ask("usual torque", "Tightened to", "torque", "100 N at 150 mm is 15 N·m"),
        _ask(
            "screw efficiency", "Efficiency of its screw", "share", "0.18 plain, 0.30 thrust bearing",
            marked=True, how="usual for such a screw; 0.13 dry, 0.30 with a thrust bearing",
        ),
    ),
)  # fmt: skip

LAYOUT = Layout(
    headings=(
        Heading(title="Machine", parts=MACHINE),
        Heading(title="Spindle and drive", parts=(SPINDLE,), how=_REST),
        Heading(
            title="Spindle nose",
            parts=(_ask("taper", "Taper"), _ask("drawbar", "Drawbar"), _ask("largest drill", "Largest drill")),
        ),
        Heading(title="Handles and dials", parts=(HANDLES,)),
        Heading(title="Quill", parts=(_ask("quill", "Has a quill", "flag"), LEVER)),
        Heading(title="Room and table", parts=(TRAVEL, DAYLIGHT, TABLE)),
        Heading(title="Holding", parts=(_ask("vice", "Vice, in words"), VICES)),
        Heading(
            title="Frame",
            parts=(
                _ask("stiffness class", "Class", "choice", choices=("bench", "knee")),
                _ask(
                    "frame stiffness", "Frame", "stiffness", "100 N divided by what the indicator shows",
                    marked=True, how="push 100 N at the spindle nose, indicator on the table: 20 µm is 5 N/µm",
                ),
                _ask(
                    "gib drag", "Drag of the slides", "force", "300 N bench, 500 N knee", marked=True,
                    how="a spring balance on the handle, winding slowly without a cut",
                ),
                _ask("trammed", "Head trammed", hint="day, how true, over what"),
                _ask("readout", "Readout", hint="none, table or screw"),
                _ask("power feed", "Power feed"),
            ),
        ),
    )
)  # fmt: skip
