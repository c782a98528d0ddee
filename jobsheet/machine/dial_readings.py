"""Dial readings in full: where to stop and how far that is off, from which side,
walls, passes, and where a turn is lost.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.errors import CalcError
from jobsheet.machine.handles import Reading, dial_text, inches, last_line, reading
from jobsheet.model.machine import Handle
from jobsheet.units.show import MINUS, plain, trimmed
from jobsheet.units.table import INCH

#: A line this near to a whole turn is where a turn is lost: say the turn with the dial (common practice).
NEAR_LINES = 2
#: And within this share of a turn it is nearly there (demo scenario section 7: 9 lines of 200).
NEAR_SHARE = 0.05
#: The backlash of a screw is taken up after so many times its backlash (common practice).
SLACK = 2.0


class Stop(Struct, frozen=True, kw_only=True):
    """Where a handle stops for a distance from its zero [m]: the reading, its words, and what to beware of.

    `dial` is the exact reading (`5 + 1.50`), `line` where to stop (`line 75`, or `6 turns, line 1` where that
    is on another turn), `error` where that line is, minus where it should be [m]. `drawing` is the size as
    the drawing has it.
    """

    distance: float
    reading: Reading
    dial: str
    line: str
    error: float
    drawing: str = ""
    warning: str = ""

    @property
    def place(self) -> float:
        """Where the line is, from the zero [m]."""
        return self.distance + self.error

    @property
    def on_lines(self) -> str:
        """Whole turns and the line to stop at, `13 + 168`: what a hand winds to."""
        return f"{_signed(self.reading.line_turns)} + {self.reading.line}"


class BackOff(Struct, frozen=True, kw_only=True):
    """How far to go back before coming up again [m]: `least` takes up the
    backlash, `distance` is easy to wind.
    """

    distance: float
    least: float
    words: str


def stop(handle: Handle, distance: float, drawing: str = "") -> Stop:
    """Where to stop for a distance from zero [m], arriving from the low side; below
    zero the turns are counted below it.
    """
    found = reading(handle, distance)
    return Stop(
        distance=distance, reading=found, dial=_dial(handle, found), line=_line(found), error=found.error,
        drawing=drawing, warning=turn_warning(handle, found),
    )  # fmt: skip


def position(handle: Handle, turns: int, dial: float) -> float:
    """Where a handle stands [m]: whole turns from zero and what the dial shows [m]."""
    return turns * handle.travel + dial


def _signed(turns: int) -> str:
    return f"{MINUS}{-turns}" if turns < 0 else str(turns)


def _dial(handle: Handle, found: Reading) -> str:
    """The exact reading as it is read at the machine; turns below zero with a real minus sign."""
    return f"{_signed(found.turns)} + {dial_text(handle, found).partition(' + ')[2]}"


def _line(found: Reading) -> str:
    """The line to stop at; with its turn where that is not the one of the reading."""
    if found.line_turns == found.turns:
        return f"line {found.line}"
    turns = f"{_signed(found.line_turns)} turn{'' if found.line_turns == 1 else 's'}"
    return f"{turns}, line {found.line}"


def lines_from_turn(handle: Handle, found: Reading) -> float:
    """How many lines it is from the line of a reading to the nearest whole turn."""
    lines = handle.travel / handle.line
    return min(float(found.line), lines - found.line)


def turn_warning(handle: Handle, found: Reading) -> str:
    """A word where a turn is easily lost; up from zero none has been wound that could be."""
    if found.line_turns == 0 and found.line <= last_line(handle) / 2:
        return ""
    away = lines_from_turn(handle, found)
    turn = found.line_turns if found.line <= last_line(handle) / 2 else found.line_turns + 1
    if away <= NEAR_LINES + 1e-9:
        where = "on" if away < 0.5 else "at"
        return f"{where} whole turn {_signed(turn)}: count the turns aloud, say them with the dial"
    if away * handle.line <= NEAR_SHARE * handle.travel * (1 + 1e-9):
        return f"nearly on whole turn {_signed(turn)}: an easy place to lose one"
    return ""


def back_off(handle: Handle) -> BackOff:
    """How far to go back past a place before coming up to it again: half a
    turn, at least twice the backlash.
    """
    least = SLACK * (handle.backlash or 0.0)
    half = handle.travel / 2
    distance = max(half, least)
    turns = distance / handle.travel
    words = "half a turn" if least <= half else f"{trimmed(turns, 2)} turns"
    return BackOff(distance=distance, least=least, words=words)


def approach_words(handle: Handle, *, reverses: bool = False) -> str:
    """How a place is come to, always from the low side; `reverses`: the last way of the screw was down."""
    off = back_off(handle)
    backlash = f", the backlash is {length(handle, handle.backlash)}" if handle.backlash else ""
    if reverses:
        return f"the screw reverses{backlash}: go back {off.words} past the place and come up to it"
    return f"come up to it{backlash}; if you overshoot, go back {off.words} and come up again"


def length(handle: Handle, value: float) -> str:
    """A length in the dial's own unit: `0.18 mm`, `0.015 in`."""
    return f"{inches(value)} in" if handle.dial == "in" else f"{trimmed(value * 1e3, 3)} mm"


# --- walls --------------------------------------------------------------------------------------------------


def centre_for_wall(wall: float, diameter: float, side: str) -> float:
    """Where the cutter's centre goes for a wall [m].

    Parameters
    ----------
    wall : float
        Where the wall is, from the zero [m]
    diameter : float
        Diameter of the cutter [m]
    side : str
        `low` where the wall bounds the cut on the side of small numbers, `high` on the other
    """
    return wall + diameter / 2 if _low(side) else wall - diameter / 2


def wall_at(centre: float, diameter: float, side: str) -> float:
    """Where the wall is that a cutter with its centre there makes [m]; the other way of `centre_for_wall`."""
    return centre - diameter / 2 if _low(side) else centre + diameter / 2


def _low(side: str) -> bool:
    if side not in ("low", "high"):
        raise CalcError("side", f"“{side}”", "low or high")
    return side == "low"


def walls_warning(handle: Handle, one: Stop, other: Stop) -> str:
    """A word where two walls of one feature lie less than a turn apart and yet on different turns."""
    first, second = sorted((one, other), key=lambda each: each.distance)
    turns = first.reading.line_turns, second.reading.line_turns
    if turns[0] == turns[1] or second.distance - first.distance >= handle.travel * (1 - 1e-9):
        return ""
    return f"its two walls fall on different turns, {_signed(turns[0])} and {_signed(turns[1])}: count them aloud"


# --- passes -------------------------------------------------------------------------------------------------


def running(
    handle: Handle, depths: tuple[float, ...], drawing: str = "", *, start: float = 0.0
) -> tuple[Stop, ...]:
    """The readings from the zero after each pass, for depths of single
    passes [m]: never one counted from another.

    `start` is where the handle stands before the first of them [m].
    """
    total, stops = start, list[Stop]()
    for depth in depths:
        total += depth
        stops.append(stop(handle, total, drawing if len(stops) == len(depths) - 1 else ""))
    return tuple(stops)


def error_text(error: float, units: str = "mm") -> str:
    """How far a line is off, in the drawing's units: `0`, `+0.008`, `−0.011`."""
    text = plain(error / INCH, 4) if units == "in" else plain(error * 1e3, 3)
    if not float(text.replace(MINUS, "-")):
        return "0"
    return text if text.startswith(MINUS) else f"+{text}"
