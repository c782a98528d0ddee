"""Texts that cannot be read: which of them a step's figures hang on."""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.holdings.all_holdings import kind_of
from jobsheet.model.job import Job

#: What the figures of every step hang on, by its owner; the rest of the header are words.
_JOB = {"job": {"material", "machine", "fluid", "units"}}
#: Of the stock all that is said but its words.
_WORDS = {"note", "condition"}


def hangs_on(job: Job, key: str) -> Callable[[str, str], bool]:
    """Whether the figures of a step hang on a field, asked by its owner and its name."""
    set_up = next((set_up for set_up in job.set_ups for step in set_up.operations if step.key == key), None)
    kind = kind_of(set_up.holding) if set_up is not None else None
    holding = f"holding:{set_up.key}" if set_up is not None else ""
    reckons = {"kind", *(kind.reckons if kind is not None else ())}

    def asked(owner: str, name: str) -> bool:
        if owner == key:
            return True
        if owner == "job:stock":
            return name not in _WORDS
        return name in _JOB.get(owner, ()) or (owner == holding and name in reckons)

    return asked
