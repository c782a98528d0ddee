"""How a dial is said on paper: turns, line, how far off, from which side."""

from __future__ import annotations

from jobsheet.model.job import SetUp
from jobsheet.model.machine import Handle, Machine
from jobsheet.units.show import MINUS, plain


def in_words(numbers: tuple[int, ...]) -> str:
    """`point 2`, `points 1–4`, `points 1, 3, 4`."""
    if not numbers:
        return ""
    return f"point{'s' if len(numbers) > 1 else ''} {in_runs_of(numbers)}"


def in_runs_of(numbers: tuple[int, ...]) -> str:
    """`1–4`, `1, 3, 4`."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    words = [f"{run[0]}–{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs]
    return ", ".join(words)


def error_text(error: float, units: str) -> str:
    """How far the line is from the place: `+0.008 mm`; nothing where it is on it."""
    factor, decimals, unit = (1 / 0.0254, 4, "in") if units == "in" else (1e3, 3, "mm")
    text = plain(error * factor, decimals)
    if not float(text.replace(MINUS, "-")):
        return ""
    return f"{'+' if error > 0 else ''}{text} {unit}"


def ways(set_up: SetUp) -> tuple[str, str]:
    """Which way the table goes so that X and Y count up: against the way they count on the work."""
    x = "left" if set_up.zero.x_counts == "right" else "right"
    y = "towards you" if set_up.zero.y_counts == "away" else "away from you"
    return x, y


def approach(set_up: SetUp) -> str:
    """How a point is come to: which way the table goes to count up, and what to do after going too far."""
    x, y = ways(set_up)
    return f"X: table to your {x}. Y: table {y}. If you overshoot, go back half a turn and come up again."


def backlash(card: Machine) -> str:
    """The backlash of both handles, for the head of the positions; empty where the card has none."""
    parts = [
        f"{handle.name.upper()} {_length(handle.backlash, handle)}"
        for handle in (card.handle("x"), card.handle("y"))
        if handle is not None and handle.backlash
    ]
    return f"backlash {', '.join(parts)}" if parts else ""


def _length(value: float, handle: Handle) -> str:
    return f"{plain(value / 0.0254, 3)} in" if handle.dial == "in" else f"{plain(value * 1e3, 2)} mm"
