"""Texts that cannot be read: which of them a step's figures hang on, and what the field is called."""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.model.job import Job
from jobsheet.operations import registry
from jobsheet.storage import layout

#: What the figures of every step hang on, by its owner; the rest of the header are words.
_JOB = {"job": {"material", "machine", "fluid", "units"}, "job:stock": {"length", "width", "height"}}
#: The same of the set-up that a step stands in.
_HOLDING = {"above_jaws", "tighten", "clamps", "bolt"}
_LAYOUTS = {
    "job": layout.JOB,
    "job:part": layout.PART,
    "job:stock": layout.STOCK,
    "setup": layout.SET_UP,
    "holding": layout.HOLDING,
    "zero": layout.ZERO,
}


def hangs_on(job: Job, key: str) -> Callable[[str, str], bool]:
    """Whether the figures of a step hang on a field, asked by its owner and its name."""
    set_up = next((one.key for one in job.set_ups for step in one.operations if step.key == key), "")

    def asked(owner: str, name: str) -> bool:
        if owner == key:
            return True
        return name in _JOB.get(owner, ()) or (owner == f"holding:{set_up}" and name in _HOLDING)

    return asked


def titled(job: Job, owner: str, name: str) -> str:
    """What a field is called where it stands."""
    entries = _LAYOUTS.get(owner) or _LAYOUTS.get(owner.partition(":")[0])
    if entries is None:
        _, operation = job.find(owner)
        entry = registry.kind(operation.kind).entry(name)
    else:
        entry = next((one for one in entries if one.name == name), None)
    return entry.title if entry else name
