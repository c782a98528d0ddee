"""From where the depth dial counts: each cutter is touched on the top once, and
its readings run on from there.

Whatever else goes into the spindle takes the cutter out: it is touched anew when it comes back.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.operations.registry import kind as kind_of


class Touch(Struct, frozen=True, kw_only=True):
    """What is in the spindle, at which step it was touched on the top, and what has come off since [m]."""

    cutter: str = ""
    step: int | None = None
    wound: float = 0.0

    def at(self, operation: Operation) -> Touch:
        """As an operation finds it: with another cutter the top is touched anew."""
        return self.with_cutter(in_spindle(operation), operation.number)

    def with_cutter(self, cutter: str, step: int) -> Touch:
        """As a step of that number finds it, with that cutter as it is written; empty where it needs none."""
        return self if not cutter or cutter == self.cutter else Touch(cutter=cutter, step=step)

    def after(self, operation: Operation) -> Touch:
        """As an operation leaves it."""
        return self.lowered(float(kind_of(operation.kind).takes_off(operation.fields)))

    def lowered(self, off: float) -> Touch:
        """When so much more has come off the top [m]."""
        return replace(self, wound=self.wound + off) if off else self


def in_spindle(operation: Operation) -> str:
    """The cutter of a step as it is written; empty where it needs none."""
    cutter = getattr(operation.fields, "cutter", None)
    return cutter.text if cutter is not None else ""
