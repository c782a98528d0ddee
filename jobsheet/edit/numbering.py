"""The keys and numbers that new steps get: keys that no step had, numbers between those of their neighbours."""

from __future__ import annotations

from collections.abc import Iterable

from jobsheet.model.job import Job, Operation, SetUp


def new_key(job: Job, kind: str) -> str:
    """A key that no operation of the job has: the kind and a count."""
    keys = {operation.key for _, operation in job.operations()}
    return next(f"{kind}-{n}" for n in range(1, len(keys) + 2) if f"{kind}-{n}" not in keys)


def new_set_up_key(job: Job) -> str:
    """A key that no set-up of the job has."""
    keys = {set_up.key for set_up in job.set_ups}
    return next(f"set-up-{n}" for n in range(1, len(keys) + 2) if f"set-up-{n}" not in keys)


def numbers_for(job: Job, set_up: SetUp, index: int, count: int = 1) -> tuple[int, ...]:
    """Numbers for steps put in at this place of a set-up: the next tens at the end, between two neighbours else."""
    before: list[int] = []
    for other in job.set_ups:
        if other.key == set_up.key:
            before += numbers_of(set_up.operations[:index])
            break
        before += numbers_of(other.operations)
    everything = [operation.number for _, operation in job.operations()]
    return numbers_between(before, everything, count)


def numbers_of(operations: Iterable[Operation]) -> list[int]:
    """The numbers of some steps."""
    return [operation.number for operation in operations]


def numbers_between(before: list[int], everything: list[int], count: int) -> tuple[int, ...]:
    """So many numbers behind those before: evenly between two neighbours, fives first; the next tens at the end.

    Where too few are left between the neighbours, the nearest free ones above are taken; the order is
    that of the rows, and `Renumber` mends the numbers.
    """
    taken = set(everything)
    low = before[-1] if before else 0
    earlier = set(before)
    higher = [number for number in everything if number > low and number not in earlier]
    if not higher:
        return _above((low // 10 + 1) * 10, 10, taken, count)
    free = [number for number in range(low + 1, min(higher)) if number not in taken]
    fives = [number for number in free if number % 5 == 0]
    pool = fives if len(fives) >= count else free
    if len(pool) < count:
        return _above(low + 1, 1, taken, count)
    if count == 1:
        middle = (low + min(higher)) / 2
        return (min(pool, key=lambda number: abs(number - middle)),)
    stride = (len(pool) + 1) / (count + 1)
    return tuple(pool[int((place + 1) * stride) - 1] for place in range(count))


def _above(first: int, by: int, taken: set[int], count: int) -> tuple[int, ...]:
    """The nearest free numbers from one on."""
    found: list[int] = []
    while len(found) < count:
        if first not in taken:
            found.append(first)
        first += by
    return tuple(found)


def in_words(numbers: Iterable[int]) -> str:
    """Steps by their numbers: `step 30`, `steps 30, 40 and 50`; many are counted."""
    said = [str(number) for number in numbers]
    if len(said) > MOST:
        return f"{len(said)} steps"
    *first, last = said or [""]
    return f"steps {', '.join(first)} and {last}" if first else f"step {last}"


#: More steps than this are counted, not named.
MOST = 4
