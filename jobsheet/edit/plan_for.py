"""Planning a job for another machine as one edit."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.job import Job


class PlanFor(Struct, frozen=True):
    """Plan the job for the other machine: its card, and the nearest speeds that
    it has in place of those it has not.
    """

    other: Job
    title: str
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return f"plan for {self.title}"

    def apply(self, job: Job) -> Job:
        """The next job."""
        del job
        return self.other
