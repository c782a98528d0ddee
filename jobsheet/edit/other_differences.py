"""What differs between two plans beside steps and fields: datums, the finished part, kinds,
numbers, what was set aside, photographs.

Each prints or changes a figure, so that a plan which left the desk is another one with it.
"""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.job import Job, Operation
from jobsheet.operations.registry import kind as kind_of


def other_changes(before: Job, after: Job) -> list[str]:
    """Each in one line."""
    return [
        *_datums(before, after),
        *_finished(before, after),
        *_steps(before, after),
        *_aside(before, after),
        *_photographs(before, after),
    ]


def _datums(before: Job, after: Job) -> Iterator[str]:
    if before.datums == after.datums:
        return
    old, new = dict(before.datums), dict(after.datums)
    for letter in sorted({*old, *new}):
        if old.get(letter) != new.get(letter):
            yield f"datum {letter}: {old.get(letter, '–')} → {new.get(letter, '–')}"
    if old == new:
        yield f"datums in another order: {', '.join(new)}"


def _finished(before: Job, after: Job) -> Iterator[str]:
    old, new = before.finished, after.finished
    if old.sizes != new.sizes:
        yield f"finished sizes: {old.sizes or '–'} → {new.sizes or '–'}"
    if old.features == new.features:
        return
    if len(old.features) == len(new.features):
        for number, (was, now) in enumerate(zip(old.features, new.features, strict=True), 1):
            if was != now:
                yield f"finished part, line {number}: {was} → {now}"
        return
    gone, come = list(old.features), []
    for line in new.features:
        if line in gone:
            gone.remove(line)
        else:
            come.append(line)
    yield from (f"finished part without: {line}" for line in gone)
    yield from (f"finished part with: {line}" for line in come)
    if not gone and not come:
        yield "finished part: its lines in another order"


def _steps(before: Job, after: Job) -> Iterator[str]:
    old = {operation.key: (set_up.key, operation) for set_up, operation in before.operations()}
    numbers = {set_up.key: set_up.number for set_up in after.set_ups}
    anew = False
    for set_up, now in after.operations():
        if now.key not in old:
            continue
        lay, was = old[now.key]
        if was.kind != now.kind:
            yield f"step {now.number}: {_title(was)} → {_title(now)}"
        if was.empty != now.empty:
            yield f"step {now.number}, what is left empty: {was.empty or '–'} → {now.empty or '–'}"
        if lay != set_up.key and lay in numbers:
            yield f"step {now.number} goes to set-up {numbers[set_up.key]}"
        anew = anew or was.number != now.number
    if anew:
        yield "steps are numbered anew"
    known = [set_up.key for set_up in before.set_ups if set_up.key in numbers]
    if known != [set_up.key for set_up in after.set_ups if set_up.key in known]:
        yield "set-ups in another order"
    if any(set_up.number != numbers.get(set_up.key, set_up.number) for set_up in before.set_ups):
        yield "set-ups are numbered anew"


def _aside(before: Job, after: Job) -> Iterator[str]:
    from jobsheet.review.engine import title_of

    for dismissed in after.dismissed:
        if dismissed not in before.dismissed:
            yield f"sets aside: {title_of(dismissed.rule)}{f' ({dismissed.reason})' if dismissed.reason else ''}"
    for dismissed in before.dismissed:
        if dismissed not in after.dismissed:
            yield f"no longer set aside: {title_of(dismissed.rule)}"


def _photographs(before: Job, after: Job) -> Iterator[str]:
    for photograph in after.photographs:
        if photograph not in before.photographs:
            yield f"photograph put in: {photograph.shows or photograph.content[:8]}"
    for photograph in before.photographs:
        if photograph not in after.photographs:
            yield f"photograph taken out: {photograph.shows or photograph.content[:8]}"


def _title(operation: Operation) -> str:
    return kind_of(operation.kind).title_of(operation.fields)
