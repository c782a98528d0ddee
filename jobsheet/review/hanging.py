"""What hangs on a change of part, stock, metal or machine: the steps to be looked at in
a plan that was made from another.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.model.job import Job, Operation
from jobsheet.model.stock import ALONG
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.plan.solid_facts import facts_of

#: Fields that a person typed for a metal and a machine, where they are not left to the adviser.
_CUT = ("spindle", "cutting_speed", "feed_per_tooth", "feed_per_edge", "feed", "layer", "peck", "cut")
#: Fields of places and sizes, by the size of the stock that they hang on.
_PLACES = ("at", "ends", "path", "centre", "edges")


class Hangs(Struct, frozen=True, kw_only=True):
    """What to look at: the key of a step or set-up (empty: the whole job),
    its number, and all the reasons.
    """

    key: str
    number: int
    why: str


def hangs_on(old: Job, new: Job) -> tuple[Hangs, ...]:
    """What is to be looked at in `new`, which was made from `old`: in cutting order, the whole job first.

    What the review says of the new plan and did not say of the old one; limits that are beyond or
    tight and were not; what was typed for another metal or machine; places and depths that stand
    as they were typed for other stock.
    """
    try:
        before = Reckoner(learns=True).reckon(old)
    except JobsheetError:
        before = None  # its machine or metal is not here: there is nothing to compare with
    try:
        after = Reckoner(learns=True).reckon(new)
    except JobsheetError as error:
        return (Hangs(key="", number=0, why=str(error)),)
    hanging = [*_of_job(old, new), *_of_review(before, after)]
    for _, operation in new.operations():
        hanging += [
            Hangs(key=operation.key, number=operation.number, why=why)
            for why in _of_step(old, new, operation, before, after)
        ]
    place = {"": 0}
    for set_up in new.set_ups:
        place[set_up.key] = len(place)
        for operation in set_up.operations:
            place[operation.key] = len(place)
    whys: dict[str, list[str]] = {}
    for one in sorted(hanging, key=lambda one: place.get(one.key, 0)):
        whys.setdefault(one.key, []).append(one.why.rstrip("."))
    numbers = {operation.key: operation.number for _, operation in new.operations()}
    return tuple(
        Hangs(key=key, number=numbers.get(key, 0), why=". ".join(dict.fromkeys(words)) + ".")
        for key, words in whys.items()
    )


def _of_job(old: Job, new: Job) -> Iterator[Hangs]:
    sizes = [name for name in ALONG if getattr(old.stock, name).value != getattr(new.stock, name).value]
    if sizes and new.finished:
        was = " × ".join(getattr(old.stock, name).text for name in ALONG)
        yield Hangs(
            key="", number=0, why=f"What the part shall be still says the sizes of the old one, made of {was}"
        )
    if new.why or new.note:
        yield Hangs(
            key="", number=0, why="The words on the order and the note of the job are those of the old part"
        )


def _of_review(before: Reckoned | None, after: Reckoned) -> Iterator[Hangs]:
    """Remarks that are new."""
    known = set() if before is None else {(one.rule, one.message) for one in _open(before)}
    numbers = {operation.key: operation.number for _, operation in after.job.operations()}
    for one in _open(after):
        if (one.rule, one.message) not in known:
            key = one.operations[0] if one.operations else one.set_up
            yield Hangs(key=key, number=numbers.get(key, 0), why=one.message)


def _open(reckoned: Reckoned) -> tuple[Any, ...]:
    return tuple(reviewed(reckoned.job, reckoned, facts_of(reckoned.job, reckoned)).open)


def _of_step(
    old: Job, new: Job, operation: Operation, before: Reckoned | None, after: Reckoned
) -> Iterator[str]:
    outcome = after.operations[operation.key]
    was = before.operations.get(operation.key) if before is not None else None
    if outcome.problem and (was is None or not was.problem):
        yield outcome.problem
    known = {limit.name: limit.verdict for limit in was.limits} if was is not None else {}
    for limit in outcome.limits:
        # What is beyond the review says itself.
        if limit.verdict == "tight" and known.get(limit.name) not in ("beyond", "tight"):
            yield (
                f"{limit.title}, {limit.verdict}: {limit.sentence}"
                if limit.sentence
                else f"{limit.title}: {limit.verdict}"
            )
    # An edge finder turns as fast in any metal.
    if (
        roles(operation).process
        and (words := _typed(operation, _CUT))
        and (old.material, old.machine) != (new.material, new.machine)
    ):
        what = old.material if old.material != new.material else "the other machine"
        yield f"Typed for {what}: {words}"
    flat = any(getattr(old.stock, name).value != getattr(new.stock, name).value for name in ALONG[:2])
    if flat and (words := _typed(operation, _PLACES)):
        yield f"Stands where it was typed for the other stock: {words}"
    if old.stock.height.value != new.stock.height.value and (words := _deep(operation)):
        yield f"As deep as it was typed for the other height: {words}"


def _typed(operation: Operation, names: tuple[str, ...]) -> str:
    """The fields that were typed, with their titles: `spindle 560 rpm, feed per tooth 0.05`."""
    parts = []
    for entry in kind_of(operation.kind).entries:
        text = getattr(getattr(operation.fields, entry.name, None), "text", "")
        if entry.name in names and text:
            parts.append(f"{entry.title[:1].lower()}{entry.title[1:]} {text}")
    return ", ".join(parts)


def _deep(operation: Operation) -> str:
    depth = getattr(operation.fields, "depth", None)
    return depth.text if depth is not None and not getattr(depth, "through", False) else ""
