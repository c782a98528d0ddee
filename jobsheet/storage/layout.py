"""The fields of the job's header and of a set-up: what the file, the forms and the sheet call them."""

from __future__ import annotations

from jobsheet.model.job import AS_RECOMMENDED
from jobsheet.model.stock import FACES
from jobsheet.operations.entry import Entry

FLUID_IS = ("water-based", "mineral oil", "cutting oil", "paste")
FLUIDS = ("dry", "brushed", "dripped", "flood", "mist")

PART = (
    Entry(name="number", title="Part number", asks="text", optional=True, hint="as on the drawing"),
    Entry(name="name", title="Part name", asks="text", optional=True),
    Entry(name="revision", title="Revision", asks="text", optional=True),
    Entry(name="drawing", title="Drawing", asks="text", optional=True),
    Entry(
        name="later",
        title="Later processes",
        asks="text",
        optional=True,
        hint="such as hardened, ground",
    ),
    Entry(
        name="allowance",
        title="Left on for them",
        asks="length",
        low="0 mm",
        high="10 mm",
        optional=True,
        hint="0 where nothing is left on",
    ),
    Entry(
        name="general_limits",
        title="General limits",
        asks="text",
        optional=True,
        hint="such as ISO 2768-m, ±0.1",
    ),
    Entry(name="quantity", title="How many now", asks="count", low="1", high="100000", optional=True),
)
JOB = (
    Entry(name="units", title="Units", asks="choice", choices=("mm", "in")),
    Entry(name="workshop", title="Workshop", asks="text", optional=True),
    Entry(name="planned_by", title="Planned by", asks="text", optional=True),
    Entry(name="planned_on", title="Planned on", asks="text", optional=True),
    Entry(
        name="material", title="Material", asks="material", hint="by its trade or standard name, such as S235"
    ),
    Entry(name="machine", title="Machine", asks="machine", hint="the name of its card"),
    Entry(name="card_hash", title="Planned for card", asks="text", optional=True),
    Entry(name="fluid", title="Cutting fluid", asks="choice", choices=FLUIDS, optional=True),
    Entry(name="fluid_is", title="The fluid is", asks="choice", choices=FLUID_IS, optional=True),
    Entry(name="trainee", title="For a trainee", asks="flag", optional=True),
    Entry(name="also_fetch", title="Also on the bench", asks="text", optional=True, lines=2),
    Entry(name="why", title="Why this order", asks="text", optional=True, lines=4),
    Entry(name="note", title="Note", asks="text", optional=True, lines=2),
)
ZERO = (
    Entry(name="named", title="Zero at", asks="text", optional=True, hint="the datums, such as A and B"),
    Entry(name="x_from", title="X from", asks="choice", choices=("left", "right"), optional=True),
    Entry(
        name="y_from",
        title="Y from",
        asks="choice",
        choices=("front", "rear"),
        optional=True,
        hint="front is where you stand",
    ),
    Entry(
        name="x_counts", title="X counts up to the", asks="choice", choices=("right", "left"), optional=True
    ),
    Entry(name="y_counts", title="Y counts up", asks="choice", choices=("away", "towards"), optional=True),
    Entry(name="found", title="Found with", asks="text", optional=True),
    Entry(
        name="stands_on",
        title="Stands on",
        asks="choice",
        choices=("edges", "a bore", "the middle", "another hole"),
        optional=True,
        hint="empty: on two edges",
    ),
)
#: Beside its number and its kind.
STEP = (
    Entry(name="empty", title="What is left empty", asks="choice", choices=(AS_RECOMMENDED,), optional=True),
)
DISMISSED = (
    Entry(name="rule", title="Remark", asks="text"),
    Entry(name="about", title="About the step or set-up", asks="text", optional=True),
    Entry(name="reason", title="Reason", asks="text"),
    Entry(name="initials", title="Initials", asks="text", optional=True),
)
REVISION = (
    Entry(name="number", title="Plan revision", asks="count", low="1", high="9999"),
    Entry(name="changed", title="What changed", asks="text", optional=True),
    Entry(name="who", title="Who", asks="text", optional=True),
    Entry(name="when", title="When", asks="text", optional=True),
    Entry(name="drawing", title="Drawing revision then", asks="text", optional=True),
)
PHOTOGRAPH = (
    Entry(name="content", title="Content", asks="text", hint="the SHA-256 of its bytes"),
    Entry(name="shows", title="What it shows", asks="text", optional=True),
    Entry(name="about", title="Of the step or set-up", asks="text", optional=True),
)
SET_UP = (
    Entry(name="title", title="Set-up", asks="text", optional=True),
    Entry(name="up", title="Face up", asks="choice", choices=FACES, optional=True),
    Entry(name="operator", title="Face to you", asks="choice", choices=FACES, optional=True),
    Entry(name="fixed_jaw", title="Face on the fixed jaw", asks="choice", choices=FACES, optional=True),
    Entry(name="minutes", title="Minutes to set up", asks="time", low="0 min", high="10 h", optional=True),
    Entry(name="note", title="Set-up note", asks="text", optional=True),
)
