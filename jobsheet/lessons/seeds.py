"""Draws that are the same on every computer for ever: a stream of SHA-256, and an own shuffle.

The language's own hash is salted and its shuffle may change from one version to the next, so neither is used:
a key that is made anew next year must be the key of the sheet in the drawer.
"""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import sha256
from typing import TypeVar

from jobsheet.model.job import Job
from jobsheet.storage.job_writing import write_job

T = TypeVar("T")
#: Counts up where the same seed would give another exercise than before.
VERSION = "1"


class Draws:
    """A stream of numbers from what it is made of."""

    def __init__(self, *parts: str) -> None:
        self._seed = sha256("\x1f".join(parts).encode()).digest()
        self._count = 0

    def below(self, count: int) -> int:
        """A number from 0 to below `count`, each as likely: what would favour the low ones is drawn again."""
        span = 1 << 64
        while True:
            block = sha256(self._seed + self._count.to_bytes(8, "big")).digest()
            self._count += 1
            drawn = int.from_bytes(block[:8], "big")
            if drawn < span - span % count:
                return drawn % count

    def shuffled(self, some: Sequence[T]) -> list[T]:
        """All of them in any order (Fisher and Yates, from the end)."""
        out = list(some)
        for at in range(len(out) - 1, 0, -1):
            other = self.below(at + 1)
            out[at], out[other] = out[other], out[at]
        return out

    def chosen(self, some: Sequence[T]) -> T:
        """One of them."""
        return some[self.below(len(some))]


def plan_mark(job: Job) -> str:
    """Six signs that a key and a marking share as long as the plan was not changed:
    a changed plan is another exercise.
    """
    return sha256(write_job(job).encode()).hexdigest()[:6]


def draws_for(job: Job, kind: str, level: int, seed: int, sheet: int) -> Draws:
    """The stream of one sheet of a class: it hangs on the job as it is written, so
    that another plan is another exercise.
    """
    made = sha256(write_job(job).encode()).hexdigest()
    return Draws(made, VERSION, kind, str(level), str(seed), str(sheet))
