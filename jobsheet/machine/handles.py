"""Handles and dials: the pace of a feed, and a distance as turns and lines."""

from __future__ import annotations

from math import ceil, floor

from msgspec import Struct

from jobsheet.model.machine import Handle
from jobsheet.units.show import plain, trimmed
from jobsheet.units.table import INCH


class Reading(Struct, frozen=True):
    """A distance on a dial: whole turns, what the dial shows, the line to stop at.

    `dial` is the exact dial value and `error` how far the line lies from it (both [m]: where the line
    is, minus where it should be). `turns` and `line` belong together: a line that falls on the next
    whole turn is line 0 of that turn.
    """

    turns: int
    dial: float
    line: int
    line_turns: int
    error: float


def reading(handle: Handle, distance: float) -> Reading:
    """The dial reading for a distance from zero, arriving from the low side.

    The lines are counted from every whole turn anew, so that a dial whose lines do not come out even in a
    turn (62.5 of them in 1/16 in) is read right too.

    Parameters
    ----------
    distance : float
        From the zero, in the direction that counts up [m]; below zero the turns are below zero too
    """
    whole = floor(distance / handle.travel + 1e-9)
    rest = max(0.0, distance - whole * handle.travel)
    turns, line = whole, min(round(rest / handle.line), last_line(handle))
    if abs(handle.travel - rest) < abs(line * handle.line - rest) - 1e-12:
        turns, line = whole + 1, 0
    return Reading(whole, rest, line, turns, turns * handle.travel + line * handle.line - distance)


def last_line(handle: Handle) -> int:
    """The highest line of a dial: the one before its nought comes round again."""
    return ceil(handle.travel / handle.line - 1e-6) - 1


def dial_text(handle: Handle, found: Reading) -> str:
    """As it is read at the machine: `5 + 1.50` on a metric dial, `7 + .1748` on an inch one.

    The whole number is of turns. A metric dial shows as many decimals as its lines need, an inch
    dial a tenth of a thou.
    """
    if handle.dial == "in":
        value = found.dial / INCH
        text = f"{value:.4f}"
        return f"{found.turns} + {text.removeprefix('0')}"
    return f"{found.turns} + {found.dial * 1e3:.2f}"


def scale_text(handle: Handle) -> str:
    """What one turn and one line are, for the head of a table of readings."""
    if handle.dial == "in":
        return f"{inches(handle.travel)} in a turn, lines of {inches(handle.line)} in"
    return f"{handle.travel * 1e3:g} mm a turn, lines of {handle.line * 1e3:g} mm"


def inches(value: float) -> str:
    """Three decimals, and more where a lead or a line needs them: `0.100`, `0.0625`, `0.0005`."""
    text = trimmed(value / INCH, 6)
    return plain(value / INCH, 3) if len(text.partition(".")[2]) < 3 else text
