"""What a drill would ask from the solid, or after another hole than the one that stands there."""

from __future__ import annotations

from typing import Any

from msgspec.structs import replace

from jobsheet.model.figure import Limit
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.operations import written
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.by_value import reckon_operation

#: Limits that a smaller hole before a drill can ease.
EASED = ("quill-push", "spindle-torque")


def drilled(operation: Operation, setting: Setting, hole: float | None) -> tuple[Any, tuple[Limit, ...]]:
    """Figures and limits of a drilling step in a hole of that diameter [m], or from the solid for None."""
    fields = operation.fields
    as_drill = kind_of(written.DRILL).fields(
        cutter=fields.cutter, at=fields.at, depth=fields.depth, peck=fields.peck, feed=fields.feed, spindle=fields.spindle,
        cutting_speed=fields.cutting_speed,
    )  # fmt: skip
    figures, limits, _, _, _ = reckon_operation(written.DRILL, as_drill, replace(setting, pilot=hole))
    return figures, limits


def push_from_solid(operation: Operation, setting: Setting) -> float | None:
    """The push at the quill lever that a drill would ask from the solid [N], or None."""
    figures, _ = drilled(operation, setting, None)
    return figures.value("lever_push") if figures is not None else None


def eased(operation: Operation, setting: Setting, hole: float, *, enough: bool = True) -> tuple[Limit, ...]:
    """The limits that are near from the solid and are not with a hole of that diameter [m] before it.

    Without `enough` also those that the hand or the machine could not give, and now can at a strain.
    """
    _, solid = drilled(operation, setting, None)
    near = [limit for limit in solid if limit.name in EASED and limit.verdict in ("tight", "beyond")]
    if not near:
        return ()
    _, piloted = drilled(operation, setting, hole)
    after = {limit.name: limit.verdict for limit in piloted}
    good = ("expected", "cut before")
    return tuple(
        limit
        for limit in near
        if after.get(limit.name) in good
        or (not enough and limit.verdict == "beyond" and after.get(limit.name) == "tight")
    )
