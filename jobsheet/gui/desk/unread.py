"""Texts that cannot be read: which of them a step's figures hang on."""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.model.job import Job

#: What the figures of every step hang on, by its owner; the rest of the header are words.
_JOB = {"job": {"material", "machine", "fluid", "units"}, "job:stock": {"length", "width", "height"}}
#: All that is said of the holding of the set-up that a step stands in, but its words.
_WORDS = {"note"}


def hangs_on(job: Job, key: str) -> Callable[[str, str], bool]:
    """Whether the figures of a step hang on a field, asked by its owner and its name."""
    set_up = next((one.key for one in job.set_ups for step in one.operations if step.key == key), "")

    def asked(owner: str, name: str) -> bool:
        if owner == key:
            return True
        return name in _JOB.get(owner, ()) or (owner == f"holding:{set_up}" and name not in _WORDS)

    return asked
