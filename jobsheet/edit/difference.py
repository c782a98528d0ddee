"""What an edit would change, in words: the preview of a fix before it is pressed."""

from __future__ import annotations

from jobsheet.edit.other_differences import other_changes
from jobsheet.holdings.all_holdings import entries_of
from jobsheet.model.held_work import Holding
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.operations.entry import Entry
from jobsheet.operations.registry import kind as kind_of
from jobsheet.stock.all_shapes import entries_of as stock_entries
from jobsheet.storage import layout

#: More lines than this are counted, not said.
MOST = 6


def changes(before: Job, after: Job, most: int | None = MOST) -> tuple[str, ...]:
    """Each change in one line, in cutting order: steps added, taken out and moved, then
    fields; all of them where `most` is None.
    """
    if before is after:
        return ()
    lines = [*_steps(before, after), *_fields(before, after), *other_changes(before, after)]
    if most is not None and len(lines) > most:
        lines = [*lines[:most], f"and {len(lines) - most} more"]
    return tuple(lines)


def _steps(before: Job, after: Job) -> list[str]:
    old = {operation.key: (set_up, operation) for set_up, operation in before.operations()}
    new = {operation.key: (set_up, operation) for set_up, operation in after.operations()}
    lines = [f"adds step {_title(operation)}" for key, (_, operation) in new.items() if key not in old]
    lines += [f"takes out step {_title(operation)}" for key, (_, operation) in old.items() if key not in new]
    order = [key for key in old if key in new]
    now = [key for key in new if key in old]
    if order != now:
        for key in _movers(order, now):
            place = now.index(key)
            before_it = now[place - 1] if place else ""
            behind = (
                f"after {_title((old.get(before_it) or new[before_it])[1])}" if place else "to the beginning"
            )
            lines.append(f"moves {_title(old[key][1])} {behind}")  # by the numbers that are still read
    if len(before.set_ups) != len(after.set_ups):
        lines.append(f"{len(before.set_ups)} set-ups become {len(after.set_ups)}")
    return lines


def _movers(order: list[str], now: list[str]) -> list[str]:
    """The fewest keys that have to move to come from one order to the other: all
    but the longest run that stays.
    """
    place = {key: index for index, key in enumerate(now)}
    runs: list[list[str]] = []
    for key in order:
        earlier = [run for run in runs if place[run[-1]] < place[key]]
        best: list[str] = max(earlier, key=_long) if earlier else []
        runs.append([*best, key])
    longest: list[str] = max(runs, key=_long) if runs else []
    stays = set(longest)
    return [key for key in now if key not in stays]


def _long(run: list[str]) -> int:
    return len(run)


def _fields(before: Job, after: Job) -> list[str]:
    lines: list[str] = []
    lines += _changed(layout.JOB, before, after, "")
    lines += _changed(layout.PART, before.part, after.part, "")
    lines += _changed(_sizes_of(before, after), before.stock, after.stock, "stock")
    known = {set_up.key: set_up for set_up in before.set_ups}
    for set_up in after.set_ups:
        if (was := known.get(set_up.key)) is not None and was is not set_up:
            lines += _of_set_up(was, set_up)
    old_steps = {operation.key: operation for _, operation in before.operations()}
    for _, operation in after.operations():
        earlier = old_steps.get(operation.key)
        if earlier is not None and earlier.kind == operation.kind and earlier.fields is not operation.fields:
            entries = kind_of(operation.kind).entries
            lines += _changed(entries, earlier.fields, operation.fields, f"step {operation.number}")
    return lines


def _sizes_of(before: Job, after: Job) -> tuple[Entry, ...]:
    """What either stock asks, each field once."""
    found = {entry.name: entry for job in (before, after) for entry in stock_entries(job.stock)}
    return tuple(found.values())


def _of_set_up(was: SetUp, now: SetUp) -> list[str]:
    where = f"set-up {now.number}"
    return [
        *_changed(layout.SET_UP, was, now, where),
        *_of_holding(was.holding, now.holding, where),
        *_changed(layout.ZERO, was.zero, now.zero, where),
    ]


def _of_holding(was: Holding, now: Holding, where: str) -> list[str]:
    """Its kind, what it says otherwise or anew, then what another kind does not ask and is lost."""
    lines = []
    if was.kind != now.kind:
        lines.append(f"{where}, held by: {was.kind or '–'} → {now.kind or '–'}")
    before = {entry.name: entry for entry in entries_of(was)[1:]}
    for entry in entries_of(now)[1:]:
        one = getattr(was, entry.name, None) if entry.name in before else None
        other = getattr(now, entry.name)
        if (one or None) != (other or None):
            old = before[entry.name].text(one) if entry.name in before else ""
            lines.append(f"{where}, {entry.title.lower()}: {old or '–'} → {entry.text(other) or '–'}")
    asked = {entry.name for entry in entries_of(now)}
    lost = [entry for name, entry in before.items() if name not in asked and entry.text(getattr(was, name))]
    return lines + [
        f"{where}, {entry.title.lower()}: {entry.text(getattr(was, entry.name))} → –" for entry in lost
    ]


def _changed(entries: tuple[Entry, ...], old: object, new: object, where: str) -> list[str]:
    lines = []
    for entry in entries:
        one, other = getattr(old, entry.name), getattr(new, entry.name)
        if one != other:
            head = f"{where}, {entry.title.lower()}" if where else entry.title
            lines.append(f"{head}: {entry.text(one) or '–'} → {entry.text(other) or '–'}")
    return lines


def _title(operation: Operation) -> str:
    return f"{operation.number} {kind_of(operation.kind).title_of(operation.fields)}"
