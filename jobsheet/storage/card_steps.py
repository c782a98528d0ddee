"""What to measure at a machine of which nothing is known, in the order in which it helps most.

It begins with a class, whose card can be used at once: everything in it counts as guessed or
assumed, with its source in the comments of `resources/machine-classes`. Each step then puts a
measured figure in place of an assumed one.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.catalog.reading.strict_yaml import read_file
from jobsheet.paths import resources
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.typed_paper import Paper, Path, text_at

ISOLATE = "Switch off and isolate the machine first, and follow its manual."


class Step(Struct, frozen=True, kw_only=True):
    """One thing to find out: how, what to mind, and the fields it fills.

    `fields` are places without the numbers of lists. `word` names it among what is still assumed; a step
    without one has figures that say themselves where they come from.
    """

    title: str
    how: str
    fields: tuple[Path, ...]
    mind: str = ""
    word: str = ""


STEPS = (
    Step(
        title="Name",
        how="What the workshop calls it. The card gets its file name from this; the rest of the class stands until you measure it.",
        fields=(("title",), ("card date",)),
    ),
    Step(
        title="Plate of the motor",
        how="Read the power that it gives out. If the plate gives only what it takes in, write 0.65 of that.",
        mind=ISOLATE,
        fields=(("spindle", "power"), ("spindle", "reverses"), ("spindle", "slips")),
    ),
    Step(
        title="Speeds",
        how="Write what the chart on the machine says. Then hold a tachometer to the bare spindle at each step, and write what it shows.",
        mind="Guards and covers in place, no cutter, no key in the spindle; change belts only when isolated and at rest.",
        word="speeds",
        fields=(
            ("spindle", "ranges", "steps", "speed"),
            ("spindle", "ranges", "steps", "measured"),
            ("spindle", "ranges", "lowest"),
            ("spindle", "ranges", "highest"),
        ),
    ),
    Step(
        title="Handles and dials",
        how="Wind ten turns and measure the way with a rule; a tenth of it is one turn. Divide that by the lines on the dial for one line.",
        mind=ISOLATE,
        word="handles",
        fields=(("handles", "dial"), ("handles", "a turn"), ("handles", "a line")),
    ),
    Step(
        title="Backlash",
        how="Indicator against the table. Wind one way until it moves, note the dial, wind back until it moves again: the difference.",
        mind=ISOLATE,
        word="backlash",
        fields=(("handles", "backlash"), ("handles", "crank radius")),
    ),
    Step(
        title="Quill lever",
        how="Rule from the centre of the shaft to the grip. Turn the lever by a quarter, measure how far the quill came, times four.",
        mind=ISOLATE + " No cutter in the spindle.",
        word="lever",
        fields=(("quill lever", "length"), ("quill lever", "travel a turn"), ("quill lever", "spring")),
    ),
    Step(
        title="Room",
        how="Rule from the spindle nose to the table, highest and lowest, and how far each slide goes.",
        mind=ISOLATE + " No cutter in the spindle.",
        word="room",
        fields=(
            ("daylight", "least"),
            ("daylight", "greatest"),
            ("travel", "x"),
            ("travel", "y"),
            ("travel", "head"),
            ("travel", "knee"),
            ("travel", "quill"),
        ),
    ),
    Step(
        title="Vice",
        how="Width and depth of the jaws, how far they open, how high the bed stands. The way of ten turns of the screw, divided by ten.",
        word="vice",
        fields=(
            ("vices", "jaw width"),
            ("vices", "jaw depth"),
            ("vices", "opening"),
            ("vices", "bed height"),
            ("vices", "screw lead"),
        ),
    ),
    Step(
        title="Stiffness",
        how="Indicator on the table against the spindle nose. Push 100 N with a spring balance: 100 divided by the reading; 20 µm is 5 N/µm.",
        mind=ISOLATE + " No cutter in the spindle.",
        fields=(("frame stiffness",), ("gib drag",)),
    ),
)


def classes() -> tuple[str, ...]:
    """The names of the classes that a card can begin with, lightest first."""
    return ("bench-mill", "mill-drill", "turret-and-knee-mill")


def begin(name: str) -> Paper:
    """The card of a class, which can be used as it is."""
    path = resources() / "machine-classes" / f"{name}.yaml"
    return paper_from_text(read_file(path), path.name)


def is_assumed(paper: Paper, word: str) -> bool:
    """Whether nobody has measured that yet."""
    return word in _words(paper)


def assumed_without(paper: Paper, word: str) -> str:
    """What the card says is still assumed, when this has been measured."""
    return "; ".join(other for other in _words(paper) if other != word)


def assumed_with(paper: Paper, word: str) -> str:
    """What the card says is still assumed, when this is too."""
    return "; ".join([*(other for other in _words(paper) if other != word), word])


def _words(paper: Paper) -> list[str]:
    return [one.strip() for one in text_at(paper, ("assumed",)).split(";") if one.strip()]
