"""Texts that cannot be read: which of them a step's figures hang on."""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.model.job import Job

#: What the figures of every step hang on, by its owner; the rest of the header are words.
_JOB = {"job": {"material", "machine", "fluid", "units"}}
#: All that is said of the stock and of the holding of the set-up that a step stands in, but its words.
_WORDS = {"note", "condition"}


def hangs_on(job: Job, key: str) -> Callable[[str, str], bool]:
    """Whether the figures of a step hang on a field, asked by its owner and its name."""
    set_up = next((one.key for one in job.set_ups for step in one.operations if step.key == key), "")

    def asked(owner: str, name: str) -> bool:
        if owner == key:
            return True
        if owner in ("job:stock", f"holding:{set_up}"):
            return name not in _WORDS
        return name in _JOB.get(owner, ())

    return asked
