"""How a cut is done, as facts beside its sizes: rules ask these, whatever the step's own words are."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.row import Row
from jobsheet.operations.entry import Entry

MEASURED, TO_SIZE, HIGH_SIDE, TAKEN_UP, TILTED = (
    "measured in place",
    "to the measured size",
    "from the high side",
    "slack taken up",
    "head tilted",
)
#: The burr of the cut is taken off before the work goes on: no step of its own is needed for that.
BROKEN = "edges broken"
_ALL = (MEASURED, TO_SIZE, HIGH_SIDE, TAKEN_UP, TILTED, BROKEN)
SPRING, SLOWLY, RAMP, TABS, SKIN_LEFT = "spring pass", "slow entry", "by a ramp", "tabs left", "skin left"
TO_CENTRE = "cutter cuts to its centre"
BUSH, PLUGGED, ON_PURPOSE = "in a drill bush", "plugged", "meets it on purpose"
BY_HAND, FLOATING, NO_CHAMFER, TO_THE_TIP = "by hand", "floating holder", "no chamfer", "depth to the tip"
FROM_A_HOLE, OILED, DRY = "counted from another hole", "oiled", "dry on purpose"
INDICATOR, PAPER, STOP, BORE = "with an indicator", "with paper", "at a stop", "on a bore"

MILLING = (*_ALL, SPRING, SLOWLY, RAMP, TO_CENTRE, TABS, SKIN_LEFT)
HOLES = (*_ALL, BUSH, PLUGGED, ON_PURPOSE, TO_THE_TIP, FROM_A_HOLE, BY_HAND, FLOATING, NO_CHAMFER, OILED, DRY)
FINDING = (INDICATOR, PAPER, STOP, BORE)


def _how(choices: tuple[str, ...], hint: str) -> Entry:
    return Entry(
        name="how", title="How it is done", asks="several", choices=choices, optional=True, hint=hint
    )


HOW_MILLED = _how(MILLING, "such as measured in place, spring pass")
HOW_DRILLED = _how(HOLES, "such as measured in place, in a drill bush")
HOW_PLUNGED = _how((*HOLES, TO_CENTRE), "such as cutter cuts to its centre")
HOW_FOUND = _how(FINDING, "empty: on edges, with the edge finder")


def manners(fields: object) -> tuple[str, ...]:
    """All that is said of how a step is done."""
    how = getattr(fields, "how", None)
    return how.items if how is not None else ()


def done(fields: object, *how: str) -> bool:
    """Whether a step is done in one of these manners."""
    return any(manner in how for manner in manners(fields))


def with_manners(rows: tuple[Row, ...], fields: object) -> tuple[Row, ...]:
    """The rows of a step with how it is done under the first of them, where the
    person has no note of their own there.
    """
    said = ", ".join(manners(fields))
    if not said or not rows or bool(getattr(fields, "note", "")) or bool(getattr(fields, "what", "")):
        return rows
    first = rows[0]
    return (replace(first, note=f"{first.note}; {said}" if first.note else said), *rows[1:])


def with_manner(fields: object, *how: str) -> str:
    """The text of the field with these manners beside what is there."""
    return ", ".join(dict.fromkeys((*manners(fields), *how)))
