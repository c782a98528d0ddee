"""Asks whether the lines of the dials are fine enough for what is asked of them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from jobsheet.machine.card_words import reads_table
from jobsheet.machine.dial_readings import Stop, length, stop
from jobsheet.model.job import Operation, SetUp
from jobsheet.model.machine import Handle, Machine
from jobsheet.model.remark import Remark
from jobsheet.operations.manners import TO_SIZE
from jobsheet.operations.registry import roles
from jobsheet.operations.shared.common import depth_handle
from jobsheet.reckoning.answers.readings import wall_of
from jobsheet.review.plan.held import how
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import plain
from jobsheet.units.table import INCH

#: How much of a tolerance the choice of a line may take (common practice).
SHARE = 0.25
_SMALL = 1e-9


@rule("dial-line-within-tolerance", "A line that is near enough", "rework")
def dial_line_within_tolerance(view: View) -> Iterator[Remark]:
    """The nearest line of a dial may be off by a quarter of the tolerance: of what a place may be off, or of a size's width.

    A readout of the table has no lines, and what is cut to the measured size is not set by one.

    Because: What the line takes of the tolerance is gone before anything is cut, and backlash and spring come on top.
    Not so: a place within ±0.02 at 15 mm on lines of a thou: line 191 is 0.011 mm off
    So: the same place within ±0.1
    From: common practice
    """
    for set_up, operation, _ in view.steps():
        machine = view.reckoned.settings[operation.key].machine
        if reads_table(machine) or how(operation, TO_SIZE):
            continue
        for words, found, handle, allowed, tolerance in _asked(set_up, operation, machine):
            if abs(found.error) <= allowed + _SMALL:
                continue
            message = (
                f"{words} falls {_off(found.error, view.job.units)} off {found.line} of the {handle.name} dial, lines of"
                f" {length(handle, handle.line)}, and the tolerance is {tolerance}: set it between two lines, or measure it in"
            )
            yield remark(view, "dial-line-within-tolerance", message, operation.key, set_up=set_up.key)
            break


def _asked(
    set_up: SetUp, operation: Operation, machine: Machine
) -> Iterator[tuple[str, Stop, Handle, float, str]]:
    """Every reading that has a tolerance: its words, the stop, its handle, what the line may be off [m], the tolerance."""
    fields: Any = operation.fields
    within, size = getattr(fields, "within", None), getattr(fields, "measure", None)
    if within is not None:
        for place in fields.at:
            for axis in ("x", "y"):
                handle, wanted = machine.handle(axis), getattr(place, axis)
                if handle is not None:
                    text = f"{axis.upper()} {wanted.text}"
                    yield (
                        text,
                        stop(handle, wanted.value),
                        handle,
                        within.value * SHARE,
                        f"±{within.text.lstrip('±+ ')}",
                    )
    if size is None or size.high <= size.low:
        return
    allowed = (size.high - size.low) * SHARE
    wall = wall_of(set_up, operation, machine)
    if wall is not None and (handle := machine.handle(wall.handle)) is not None:
        yield (
            f"The wall's centre, {wall.handle.upper()} {wall.centre.drawing},",
            wall.centre,
            handle,
            allowed,
            size.said,
        )
    if roles(operation).mills == "flat" and (handle := depth_handle(machine)) is not None:
        depth = fields.depth
        yield f"The depth {depth.text}", stop(handle, depth.value), handle, allowed, size.said


def _off(error: float, units: str) -> str:
    return f"{plain(abs(error) / INCH, 4)} in" if units == "in" else f"{plain(abs(error) * 1e3, 3)} mm"
