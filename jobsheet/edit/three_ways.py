"""Two people changed one plan: what only one of them changed is taken by itself, what both
did otherwise is chosen step by step.

A plan is taken apart into items (a field of the header, the stock, a set-up, a step …) that are compared
three ways, with the plan that both began from. A step is one item: its depth and its feed belong
together, and nobody wants half of each.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import UNSET, Struct
from msgspec.structs import asdict, replace

from jobsheet.edit.difference import changes
from jobsheet.edit.laid_together import Places, laid_together
from jobsheet.model.job import Job, Operation, Revision, SetUp
from jobsheet.operations.registry import kind as kind_of
from jobsheet.storage import layout

Item = tuple[str, ...]
MINE, THEIRS = "mine", "theirs"
#: Fields of a job that are items of their own kind, or follow another item.
_APART = (
    "part",
    "stock",
    "datums",
    "dismissed",
    "revisions",
    "photographs",
    "set_ups",
    "machine",
    "card_hash",
    "units",
)
_ORDER: Item = ("order",)
_UNITS: Item = ("whole",)


class Choice(Struct, frozen=True, kw_only=True):
    """Something that both changed, each otherwise: what it is, and what each of them made of it, in words."""

    item: Item
    what: str
    mine: tuple[str, ...]
    theirs: tuple[str, ...]


class Both(Struct, frozen=True, kw_only=True):
    """The three plans, what is to be chosen, and what came in by itself from the other person, in words."""

    base: Job | None
    mine: Job
    theirs: Job
    choices: tuple[Choice, ...]
    brought: tuple[str, ...]

    def taken(self, chosen: Mapping[Item, str]) -> Job:
        """The plan that holds both. What is not named in `chosen` is the own one's (`MINE`)."""
        return _put_together(self.base, self.mine, self.theirs, chosen)


class TakeBoth(Struct, frozen=True):
    """What two people made of one plan, as one edit."""

    both: Both
    chosen: tuple[tuple[Item, str], ...] = ()
    label: str = "what somebody else saved put together with this"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job; the plan on the desk is the own one, whatever it was when it was compared."""
        return _put_together(self.both.base, job, self.both.theirs, dict(self.chosen))


def compared(base: Job | None, mine: Job, theirs: Job) -> Both:
    """What two people made of one plan.

    Parameters
    ----------
    base : Job or None
        The plan that both began from; where it is not known, everything that differs is to be chosen
    mine, theirs : Job
        The plan on the desk, and the one that stands in the file
    """
    theirs = _keys_of_their_own(base, mine, theirs)
    choices = tuple(
        Choice(item=item, what=_called(item, mine, theirs), mine=_words(item, base, mine), theirs=_words(item, base, theirs))
        for item in _clashes(base, mine, theirs)
    )  # fmt: skip
    both = Both(base=base, mine=mine, theirs=theirs, choices=choices, brought=())
    without = both.taken({})
    return replace(both, brought=changes(replace(mine, revisions=without.revisions), without, most=None))


# --- a plan as items ---


def _items(job: Job | None) -> dict[Item, Any]:
    """Everything that is compared by itself. A step's number is none of it: numbers follow the order."""
    if job is None:
        return {}
    items: dict[Item, Any] = {
        ("job", name): value for name, value in asdict(job).items() if name not in _APART
    }
    items[("machine",)] = (job.machine, job.card_hash)
    items |= {("part", name): value for name, value in asdict(job.part).items()}
    items[("stock",)] = job.stock
    items |= {("datum", name): face for name, face in job.datums}
    items |= {("set aside", dismissed.rule, dismissed.about): dismissed for dismissed in job.dismissed}
    items |= {
        ("photograph", photograph.content, photograph.about): photograph for photograph in job.photographs
    }
    items |= {("set-up", set_up.key): replace(set_up, operations=(), number=0) for set_up in job.set_ups}
    items |= {("step", operation.key): replace(operation, number=0) for _, operation in job.operations()}
    return items


def order_of(job: Job) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The keys of the set-ups with those of their steps, in cutting order."""
    return tuple((set_up.key, tuple(step.key for step in set_up.operations)) for set_up in job.set_ups)


def _order_among(job: Job, keys: set[str]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    return tuple(
        (set_up, tuple(key for key in steps if key in keys))
        for set_up, steps in order_of(job)
        if set_up in keys
    )


def _known(job: Job | None) -> set[str]:
    if job is None:
        return set()
    return {set_up.key for set_up in job.set_ups} | {operation.key for _, operation in job.operations()}


def _clashes(base: Job | None, mine: Job, theirs: Job) -> list[Item]:
    """What both changed, each otherwise: the steps in the order of the own plan, then what
    only the other has, then the order.
    """
    if mine.units != theirs.units:
        return [_UNITS]  # every bare number would mean something else: the one plan or the other
    was, one, other = _items(base), _items(mine), _items(theirs)
    clashes = [
        item
        for item in dict.fromkeys((*one, *other))
        if not (_at(one, item) == _at(other, item) or _at(was, item) in (_at(one, item), _at(other, item)))
    ]
    if _orders_clash(base, mine, theirs):
        clashes.append(_ORDER)
    return clashes


def _orders_clash(base: Job | None, mine: Job, theirs: Job) -> bool:
    one, other = _orders(base, mine, theirs)
    return one != other and (base is None or _orders(base, mine, theirs, base)[0] not in (one, other))


def _orders(base: Job | None, mine: Job, theirs: Job, *of: Job) -> tuple[Places, ...]:
    """The orders of the own plan and of the other, among the steps that all of
    them have; or of those that are named.
    """
    keys = _known(mine) & _known(theirs) & (_known(base) if base is not None else _known(mine))
    return tuple(_order_among(job, keys) for job in of or (mine, theirs))


def _keys_of_their_own(base: Job | None, mine: Job, theirs: Job) -> Job:
    """The other plan, where what both added under one key has a key of its own: two new
    steps are two, not one to choose from.
    """
    if base is None:
        return theirs  # what has one key is taken for one step
    before, here = _known(base), _known(mine)
    one, other = _items(mine), _items(theirs)
    taken = before | here | _known(theirs)
    renamed: dict[str, str] = {}
    for sort, key in [item for item in other if item[0] in ("step", "set-up")]:
        if key not in before and key in here and one.get((sort, key)) != other[(sort, key)]:
            renamed[key] = next(name for n in range(2, 10_000) if (name := f"{key}-{n}") not in taken)
            taken.add(renamed[key])
    if not renamed:
        return theirs

    def named(one: Any) -> Any:
        return replace(one, key=renamed.get(one.key, one.key))

    return replace(
        theirs,
        set_ups=tuple(
            replace(named(set_up), operations=tuple(named(step) for step in set_up.operations)) for set_up in theirs.set_ups
        ),
        dismissed=tuple(replace(dismissed, about=renamed.get(dismissed.about, dismissed.about)) for dismissed in theirs.dismissed),
        photographs=tuple(replace(photograph, about=renamed.get(photograph.about, photograph.about)) for photograph in theirs.photographs),
    )  # fmt: skip


# --- put together ---


def _put_together(base: Job | None, mine: Job, theirs: Job, chosen: Mapping[Item, str]) -> Job:
    if mine.units != theirs.units:
        whole = theirs if chosen.get(_UNITS) == THEIRS else mine
        return replace(whole, revisions=_revisions(base, mine, theirs))
    was, one, other = _items(base), _items(mine), _items(theirs)
    found = {item: _of_three(item, was, one, other, chosen) for item in dict.fromkeys((*one, *other, *was))}
    found = {item: value for item, value in found.items() if value is not UNSET}
    theirs_order = (
        chosen.get(_ORDER) == THEIRS
        if _orders_clash(base, mine, theirs)
        else base is not None and _orders(base, mine, theirs, mine) == _orders(base, mine, theirs, base)
    )
    first, second = (theirs, mine) if theirs_order else (mine, theirs)
    steps = {item[1]: value for item, value in found.items() if item[0] == "step"}
    facts = {
        set_up.key: replace(set_up, operations=(), number=0)
        for job in (second, first)
        for set_up in job.set_ups
    }
    facts |= {item[1]: value for item, value in found.items() if item[0] == "set-up"}
    kept = {item[1] for item in found if item[0] == "set-up"}
    places = laid_together(order_of(first), order_of(second), set(steps), kept)
    if not places:  # each took out what the other kept: a job keeps at least one set-up
        places = tuple((key, ()) for key, _ in order_of(first)[:1])
    numbers = _numbers(base, first, second)
    machine, card = found[("machine",)]
    return replace(
        mine,
        **{item[1]: value for item, value in found.items() if item[0] == "job"},
        part=replace(mine.part, **{item[1]: value for item, value in found.items() if item[0] == "part"}),
        machine=machine, card_hash=card, stock=found[("stock",)],
        datums=tuple((item[1], value) for item, value in found.items() if item[0] == "datum"),
        dismissed=_still_about(found, "set aside", steps, dict(places)),
        photographs=_still_about(found, "photograph", steps, dict(places)),
        revisions=_revisions(base, mine, theirs),
        set_ups=_numbered([(facts[key], [steps[step] for step in inside]) for key, inside in places], numbers),
    )  # fmt: skip


def _of_three(
    item: Item, was: dict[Item, Any], one: dict[Item, Any], other: dict[Item, Any], chosen: Mapping[Item, str]
) -> Any:
    """The value that counts of an item; UNSET where it is taken out."""
    mine, theirs = _at(one, item), _at(other, item)
    if mine == theirs or _at(was, item) == theirs:
        return mine
    if _at(was, item) == mine:
        return theirs
    return theirs if chosen.get(item) == THEIRS else mine


def _at(items: Mapping[Item, Any], item: Item) -> Any:
    """The value of an item; UNSET where the plan has no such thing."""
    return items.get(item, UNSET)


def _still_about(found: dict[Item, Any], sort: str, *there: Mapping[str, Any]) -> tuple[Any, ...]:
    """What is said of a step or set-up that is still there, or of the whole job."""
    ours = [value for item, value in found.items() if item[0] == sort]
    return tuple(one for one in ours if not one.about or any(one.about in keys for keys in there))


def _revisions(base: Job | None, mine: Job, theirs: Job) -> tuple[Revision, ...]:
    """Those in the file, then the own ones that are new, counted on: a number
    that is on paper keeps its plan.
    """
    revisions = list(theirs.revisions)
    known = {*theirs.revisions, *(base.revisions if base is not None else ())}
    for revision in mine.revisions:
        if revision in known:
            continue
        revisions.append(replace(revision, number=max((each.number for each in revisions), default=0) + 1))
    return tuple(revisions)


def _numbers(base: Job | None, first: Job, second: Job) -> dict[str, int]:
    """The number of each step: the one that was changed, where only one of the plans changed it."""
    was = {operation.key: operation.number for _, operation in base.operations()} if base is not None else {}
    numbers = {operation.key: operation.number for _, operation in second.operations()}
    for _, operation in first.operations():
        if operation.key not in numbers or operation.number != was.get(operation.key):
            numbers[operation.key] = operation.number
    return numbers


def _numbered(parts: list[tuple[SetUp, list[Operation]]], numbers: dict[str, int]) -> tuple[SetUp, ...]:
    """The set-ups with their steps; a number that is taken already gives way to the next one that is free."""
    taken: set[int] = set()
    wanted = {numbers[step.key] for _, steps in parts for step in steps}
    made = []
    for count, (set_up, steps) in enumerate(parts, 1):
        put = []
        for step in steps:
            number = numbers[step.key]
            if number in taken:
                number = next(n for n in range(number + 1, number + 100_000) if n not in taken | wanted)
            taken.add(number)
            put.append(replace(step, number=number))
        made.append(replace(set_up, number=count, operations=tuple(put)))
    return tuple(made)


# --- in words ---


def _called(item: Item, *jobs: Job) -> str:
    """What an item is, as a person calls it."""
    sort, key = item[0], item[-1]
    if sort == "step":
        operation = next(step for job in jobs for _, step in job.operations() if step.key == key)
        return f"step {operation.number} {kind_of(operation.kind).title_of(operation.fields)}"
    if sort == "set-up":
        number = next(set_up.number for job in jobs for set_up in job.set_ups if set_up.key == key)
        return f"set-up {number}"
    if sort in ("job", "part"):
        entries = {entry.name: entry.title for entry in (*layout.JOB, *layout.PART)}
        return {"finished": "the finished part"}.get(key, entries.get(key, key.replace("_", " ")).lower())
    if sort == "datum":
        return f"datum {key}"
    return {
        "machine": "the machine", "stock": "the stock", "set aside": "a remark that was set aside",
        "photograph": "a photograph", "order": "the order of the steps", "whole": "the whole plan, in other units",
    }[sort]  # fmt: skip


def _words(item: Item, base: Job | None, job: Job) -> tuple[str, ...]:
    """What one person made of an item, against the plan that both began from."""
    if item == _UNITS:
        return (f"in {job.units}",)
    value = _at(_items(job), item)
    if item == _ORDER:
        moved = changes(base, job, most=None) if base is not None else ()
        return tuple(line for line in moved if line.startswith("moves ")) or _in_order(job)
    if value is UNSET:
        return ("taken out",)
    if item[0] in ("step", "set-up"):
        return _of_step(item, base, job) or ("as it is now",)
    return (_plain(item, value),)


def _of_step(item: Item, base: Job | None, job: Job) -> tuple[str, ...]:
    """Its fields, each with what it was before; all of them where it was not there, or is of another kind."""
    key = item[1]
    if item[0] == "set-up":
        if base is None or key not in _known(base):
            return _facts_of(next(set_up for set_up in job.set_ups if set_up.key == key))
        lines = changes(_only_set_up(base, base, key), _only_set_up(base, job, key), most=None)
        return tuple(line.partition(", ")[2] or line for line in lines)
    _, now = job.find(key)
    old = (
        next((operation for _, operation in base.operations() if operation.key == key), None)
        if base is not None
        else None
    )
    kind = kind_of(now.kind)
    known = old is not None and old.kind == now.kind
    found = []
    for entry in kind.entries:
        text = entry.text(getattr(now.fields, entry.name))
        before = entry.text(getattr(old.fields, entry.name)) if known and old is not None else ""
        if text != before:
            found.append(
                f"{entry.title.lower()}: {before or '–'} → {text or '–'}"
                if known
                else f"{entry.title.lower()}: {text}"
            )
    if not known and old is not None and old.kind != now.kind:
        found.insert(0, f"becomes {kind.title_of(now.fields)}")
    if not found and old is not None and old.empty != now.empty:
        found.append(f"what is left empty: {now.empty or 'as before'}")
    return tuple(found)


def _facts_of(set_up: SetUp) -> tuple[str, ...]:
    """What a set-up says, where nothing is known that it was before."""
    said = [(entry.title.lower(), entry.text(getattr(set_up, entry.name))) for entry in layout.SET_UP]
    return (*(f"{title}: {text}" for title, text in said if text), f"held by: {set_up.holding.kind or '–'}")


def _only_set_up(base: Job, job: Job, key: str) -> Job:
    ours = tuple(replace(set_up, operations=()) for set_up in job.set_ups if set_up.key == key)
    return replace(base, set_ups=ours)


def _in_order(job: Job) -> tuple[str, ...]:
    return tuple(
        f"set-up {set_up.number}: {', '.join(str(step.number) for step in set_up.operations) or 'no step'}"
        for set_up in job.set_ups
    )


def _plain(item: Item, value: Any) -> str:
    """A value of the header, as it is typed or said."""
    entries = {entry.name: entry for entry in (*layout.JOB, *layout.PART)}
    sort, key = item[0], item[-1]
    if sort in ("job", "part") and (entry := entries.get(key)) is not None:
        return entry.text(value) or "–"
    if sort == "machine":
        return str(value[0])
    if sort == "set aside":
        return value.reason or "without a reason"
    if sort == "photograph":
        return value.shows or "without words"
    if sort == "datum":
        return str(value)
    return {"stock": "as changed here", "job": "as written here"}[sort]
