"""The kinds of holding by name; a kind is imported when a job first asks for it.
The list is the folder's own.
"""

from __future__ import annotations

import importlib
from functools import cache
from pathlib import Path
from typing import Any

from jobsheet.errors import NoSuchEntry
from jobsheet.holdings.holding_kind import HoldingKind
from jobsheet.holdings.holding_roles import HoldingRoles
from jobsheet.model.held_work import NOTHING, Holding
from jobsheet.operations.entry import Entry
from jobsheet.units.grammar import nearest

_KINDS = Path(__file__).parent / "kinds"
#: What a choice in the window calls a set-up that nothing holds.
NONE = "nothing yet"


@cache
def holdings() -> tuple[str, ...]:
    """The names of all kinds, without importing any: `angle plate`, `vice`, ..."""
    return tuple(sorted(path.stem.replace("_", " ") for path in _KINDS.glob("[!_]*.py")))


@cache
def holding_kind(name: str) -> HoldingKind[Any]:
    """The kind of that name.

    Raises
    ------
    NoSuchEntry
        With the nearest name that there is.
    """
    wanted = name.strip().casefold().replace("-", " ").replace("_", " ")
    wanted = {"vise": "vice"}.get(wanted, wanted)
    if wanted not in holdings():
        near = nearest(wanted, holdings())
        hint = f"Did you mean {near}?" if near else f"Known are {', '.join(holdings())}."
        raise NoSuchEntry(f"There is no way of holding called “{name}”. {hint}")
    found: HoldingKind[Any] = importlib.import_module(
        f"jobsheet.holdings.kinds.{wanted.replace(' ', '_')}"
    ).KIND
    return found


def kind_of(holding: Holding) -> HoldingKind[Any] | None:
    """The kind of a holding; None where nothing holds the work."""
    return holding_kind(holding.kind) if holding.kind else None


def entries_of(holding: Holding) -> tuple[Entry, ...]:
    """The fields of a holding in the order of its form: its kind first."""
    kind = kind_of(holding)
    return (kind_entry(), *(kind.entries if kind is not None else (NOTE,)))


def asked_of(holding: Holding) -> tuple[Entry, ...]:
    """The same without what makes no sense beside what is said: what the form asks."""
    kind = kind_of(holding)
    return (kind_entry(), *kind.asked(holding)) if kind is not None else entries_of(holding)


@cache
def kind_entry() -> Entry:
    """The field that chooses the kind."""
    return Entry(
        name="kind",
        title="Held by",
        asks="choice",
        choices=(NONE, *holdings()),
        optional=True,
        hint="vice, straps, ...",
    )


NOTE = Entry(name="note", title="Holding note", asks="text", optional=True)


def roles_of(holding: Holding) -> HoldingRoles:
    """What a holding is to those that do not know its kind."""
    kind = kind_of(holding)
    return kind.plays(holding) if kind is not None else HoldingRoles(holds=False)


def words_of(holding: Holding) -> str:
    """A holding in a few words; nothing where there is none."""
    kind = kind_of(holding)
    return kind.words(holding) if kind is not None else ""


def rests_of(holding: Holding) -> str:
    """What the work rests on, in a few words."""
    kind = kind_of(holding)
    return kind.rests(holding) if kind is not None else ""


def changed_to(holding: Holding, name: str, units: str) -> Holding:
    """The holding as another kind: facts that both kinds ask stay, all others are left out.

    Raises
    ------
    NoSuchEntry
        If there is no such kind.
    """
    if name in ("", NONE):
        return Holding(note=holding.note) if holding.note else NOTHING
    kind = holding_kind(name)
    if kind.name == holding.kind:
        return holding
    before = kind_of(holding)
    asked = {entry.name: entry for entry in before.entries} if before is not None else {"note": NOTE}
    values: dict[str, Any] = {}
    for entry in kind.entries:
        other = asked.get(entry.name)
        if other is not None and other.asks == entry.asks and other.choices == entry.choices:
            values[entry.name] = getattr(holding, entry.name)
        elif entry.name in kind.example:
            values[entry.name] = entry.read(kind.example[entry.name], units)
    changed: Holding = kind.fields(**values)
    return changed


#: What stays the same when the work is laid another way: the thing that holds
#: it, not how the work sits in it.
_OF_THE_THING = ("vice", "jaws", "base", "tighten", "bolt", "angle")


def held_alike(holding: Holding) -> Holding:
    """The same kind with the same thing, for work that is laid another way: where it sits is asked anew."""
    kind = kind_of(holding)
    if kind is None:
        return NOTHING
    same: Holding = kind.fields(
        **{name: getattr(holding, name) for name in kind.fields.__struct_fields__ if name in _OF_THE_THING}
    )
    return same


def unsaid_of(holding: Holding) -> tuple[Entry, ...]:
    """The facts of a holding that should still be said; its kind alone where nothing holds the work."""
    kind = kind_of(holding)
    return kind.unsaid(holding) if kind is not None else (kind_entry(),)
