"""Remarks set aside for a job with a reason, and brought back: edits like any other."""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.model.job import Dismissed, Job


class Dismiss(Struct, frozen=True):
    """Set a remark aside for this job, with a reason; the same remark again takes the new reason."""

    rule: str
    about: str
    reason: str
    initials: str = ""
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "set a remark aside"

    def apply(self, job: Job) -> Job:
        """The next job."""
        if not self.reason.strip():
            raise CommandError("Write why this remark is set aside: the reason is printed with the plan.")
        dismissed = Dismissed(
            rule=self.rule, about=self.about, reason=self.reason.strip(), initials=self.initials.strip()
        )
        rest = tuple(old for old in job.dismissed if (old.rule, old.about) != (self.rule, self.about))
        return replace(job, dismissed=(*rest, dismissed))


class BringBack(Struct, frozen=True):
    """Take remarks that were set aside back into the review: one of them, or all where no rule is named."""

    rule: str = ""
    about: str = ""
    merge_key: str = ""

    @property
    def label(self) -> str:
        """What Undo calls it."""
        return "bring remarks back"

    def apply(self, job: Job) -> Job:
        """The next job."""
        if not self.rule:
            return replace(job, dismissed=()) if job.dismissed else job
        rest = tuple(old for old in job.dismissed if (old.rule, old.about) != (self.rule, self.about))
        return job if len(rest) == len(job.dismissed) else replace(job, dismissed=rest)
