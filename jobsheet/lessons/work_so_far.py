"""The work after the steps that a learner has placed, as it would stand if they were done in that
order; what comes out is no answer.
"""

from __future__ import annotations

from collections.abc import Sequence

from msgspec.structs import replace

from jobsheet.model.job import Job


def placed_so_far(job: Job, set_up: str, keys: Sequence[str]) -> Job:
    """The job up to that set-up, which has these of its steps alone, in this order."""
    at = next(place for place, other in enumerate(job.set_ups) if other.key == set_up)
    known = {operation.key: operation for operation in job.set_ups[at].operations}
    here = replace(job.set_ups[at], operations=tuple(known[key] for key in keys if key in known))
    return replace(job, set_ups=(*job.set_ups[:at], here))
