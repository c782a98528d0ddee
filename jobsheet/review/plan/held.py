"""What holds the work at a step, as facts: rules ask these, never what words say of it."""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.holdings.all_holdings import roles_of
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.holdings.kinds.straps import Fields as Straps
from jobsheet.holdings.kinds.straps import stops_at
from jobsheet.model.job import Operation, SetUp
from jobsheet.operations.manners import done
from jobsheet.operations.registry import roles

#: What stands under work that a drill may run into.
BACKED = ("backing", "backing plate")


def fact(set_up: SetUp, name: str) -> Any:
    """A fact of the holding, by the name of its field; None where it is not
    said, or is none of this kind's.
    """
    return getattr(set_up.holding, name, None)


def size(set_up: SetUp, name: str) -> float | None:
    """A size of the holding [m], or None."""
    found = fact(set_up, name)
    return float(found.value) if found is not None else None


def holding_roles(set_up: SetUp) -> HoldingRoles:
    """What the holding is, whatever its kind is called."""
    return roles_of(set_up.holding)


def on_straps(set_up: SetUp) -> bool:
    """Whether straps press it down, and where they stand is asked."""
    return holding_roles(set_up).straps


def backed(set_up: SetUp) -> bool:
    """Whether something that may be drilled into lies under the whole of it."""
    plays = holding_roles(set_up)
    on_wood = plays.drills_only and fact(set_up, "support") == "wood"
    return fact(set_up, "rests_on") in BACKED or plays.screwed or on_wood


def supported(set_up: SetUp) -> bool:
    """Whether something stands behind tall work or a thin wall."""
    return fact(set_up, "supported_by") is not None or holding_roles(set_up).upright


def stopped(set_up: SetUp) -> bool:
    """Whether a stop, or dowels in its plate, take what pushes the work sideways."""
    held = set_up.holding
    return bool(stops_at(held)) if isinstance(held, Straps) else bool(fact(set_up, "dowels"))


def does(operation: Operation, *deeds: str) -> bool:
    """Whether a step does one of these beside cutting."""
    return any(one in deeds for one in roles(operation).does)


def how(operation: Operation, *manners: str) -> bool:
    """Whether a cut is done in one of these manners."""
    return done(operation.fields, *manners)


class Changed(Struct, frozen=True):
    """What came off before a step, and what holds since, beside what the set-up says."""

    off: frozenset[str] = frozenset()
    on: frozenset[str] = frozenset()


def changed_by(operation: Operation) -> Changed:
    """What one step takes off and what goes on holding; nothing where it does not
    change the holding, or does not say.
    """
    if not does(operation, "change holding"):
        return Changed()
    fields = operation.fields
    off, on = getattr(fields, "removes", None), getattr(fields, "stays", None)
    return Changed(frozenset(off.items if off else ()), frozenset(on.items if on else ()))


def changed_before(set_up: SetUp, key: str) -> Changed:
    """What came off, and what holds since, before the step of that key."""
    off: frozenset[str] = frozenset()
    on: frozenset[str] = frozenset()
    for operation in set_up.operations:
        if operation.key == key:
            break
        changed = changed_by(operation)
        off, on = (off | changed.off) - changed.on, (on | changed.on) - changed.off
    return Changed(off, on)
