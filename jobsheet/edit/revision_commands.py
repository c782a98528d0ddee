"""The next revision of a plan: its number counts on, what changed stands as typed; the
drawing's own revision is another thing.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.edit.difference import changes
from jobsheet.errors import CommandError
from jobsheet.model.job import Job, Revision

#: So much of what changed is proposed [characters]: it has to be read in the block on the cover.
LONGEST = 240
#: What is written down of the first plan.
FIRST = "first plan"


class AddRevision(Struct, frozen=True):
    """Write down the next revision of the plan."""

    changed: str
    who: str
    when: str
    #: Revisions that are written down with it: the first plan, where it left the desk without a number.
    before: tuple[Revision, ...] = ()
    label: str = "new revision of the plan"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job; raises CommandError where nothing is said to have changed."""
        if not self.changed.strip():
            raise CommandError("Say what changed: that is what somebody asks who has the old sheet in hand.")
        job = replace(job, revisions=(*job.revisions, *self.before))
        revision = Revision(
            number=next_number(job),
            changed=self.changed.strip(),
            who=self.who.strip(),
            when=self.when,
            drawing=job.part.revision,
        )
        return replace(job, revisions=(*job.revisions, revision))


class BringBack(Struct, frozen=True):
    """The plan as an earlier one has it, under the next number; revisions go on, they are
    not brought back. `called` names it.
    """

    plan: Job
    called: str
    who: str
    when: str
    before: tuple[Revision, ...] = ()
    label: str = "an earlier plan brought back"
    merge_key: str = ""

    def apply(self, job: Job) -> Job:
        """The next job."""
        old = replace(self.plan, revisions=job.revisions)
        return AddRevision(
            changed=f"as {self.called}", who=self.who, when=self.when, before=self.before
        ).apply(old)


def first_plan(job: Job, when: str) -> Revision:
    """The first revision of a plan that left the desk without a number, written
    down once a second one comes after it.
    """
    return Revision(number=1, changed=FIRST, who=job.planned_by, when=when, drawing=job.part.revision)


def revised_by(job: Job) -> str:
    """Who is proposed for the next revision: whoever wrote the last one, else who planned it."""
    return job.revisions[-1].who if job.revisions else job.planned_by


def next_number(job: Job) -> int:
    """The number of the next revision."""
    return max((revision.number for revision in job.revisions), default=0) + 1


def proposed(saved: Job | None, job: Job) -> str:
    """What changed since the plan was saved, in words; `first plan` where there is no revision yet."""
    lines = changes(replace(saved, revisions=job.revisions), job, most=None) if saved is not None else ()
    if not lines:
        return "" if job.revisions else FIRST
    said = ""
    for count, line in enumerate(lines):
        longer = f"{said}; {line}" if said else line
        if len(longer) > LONGEST:
            more = len(lines) - count
            return (
                f"{said}; and {more} more" if said else f"{line[: LONGEST - 12].rstrip()} and {more - 1} more"
            )
        said = longer
    return said
