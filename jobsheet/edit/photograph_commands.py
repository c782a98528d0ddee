"""Edits of the photographs of a job: put one to a set-up, take one out; their
files are kept by `storage/photos`.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CommandError
from jobsheet.model.job import Job, Photograph


class AddPhotograph(Struct, frozen=True):
    """Put a photograph to a set-up (its key) or to the whole job, behind those that are there."""

    photograph: Photograph
    label: str = "add a photograph"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job; raises CommandError where the very same one is there already."""
        same = (self.photograph.content, self.photograph.about)
        if any((photograph.content, photograph.about) == same for photograph in job.photographs):
            raise CommandError("This photograph is there already.")
        return replace(job, photographs=(*job.photographs, self.photograph))


class TakeOutPhotograph(Struct, frozen=True):
    """Take out a photograph of a job; its file stays, so that undo has it again."""

    photograph: Photograph
    label: str = "take out a photograph"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job; raises CommandError where it is not there any more."""
        if self.photograph not in job.photographs:
            raise CommandError("This photograph is not there any more.")
        return replace(
            job,
            photographs=tuple(photograph for photograph in job.photographs if photograph != self.photograph),
        )


def without_owner(job: Job, key: str) -> Job:
    """The job without the photographs of a set-up that is taken out of it."""
    left = tuple(photograph for photograph in job.photographs if photograph.about != key)
    return job if left == job.photographs else replace(job, photographs=left)
