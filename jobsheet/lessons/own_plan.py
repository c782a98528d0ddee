"""The fifth level: the drawing in words and a blank sheet. Whatever the learner plans is marked by the
review, not by the trainer's own plan.
"""

from __future__ import annotations

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.lessons.order_exercise import NoExercise
from jobsheet.model.job import Job, Part, SetUp
from jobsheet.model.remark import Remark
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.plan.solid_facts import facts_of

#: Remarks with which a part would not be good, or somebody may be hurt.
STOPS = ("hazard", "scrap")


class OwnPlan(Struct, frozen=True, kw_only=True):
    """A plan as it was marked: what the review says, the worst first, and what could not be found out."""

    remarks: tuple[Remark, ...]
    steps: int
    not_checked: tuple[str, ...] = ()

    @property
    def faults(self) -> tuple[Remark, ...]:
        """What counts: a habit is said, never counted."""
        return tuple(one for one in self.remarks if one.severity != "habit")

    @property
    def right(self) -> bool:
        """Whether the review has nothing against it but habits, and could look at all of it."""
        return bool(self.steps) and not self.faults and not self.not_checked

    @property
    def good(self) -> bool:
        """Whether the part would be good."""
        return bool(self.steps) and not any(one.severity in STOPS for one in self.remarks)


def begun(job: Job) -> Job:
    """What the learner begins with: part, drawing in words, metal, stock and machine, and
    one set-up of which nothing is said.

    Raises
    ------
    NoExercise
        Where the job does not say what the part shall be: then nothing can be planned from it, nor missed.
    """
    if not job.finished:
        name = job.part.number or "This job"
        raise NoExercise(
            f"{name} does not say what the part shall be: write its finished sizes and features into the job, or ask another sort"
        )
    blank = SetUp(key="set-up-1", number=1)
    part = Part(
        number=job.part.number, name=job.part.name, drawing=job.part.drawing, revision=job.part.revision
    )
    return replace(
        job, part=part, planned_by="", planned_on="", also_fetch="", why="", note="", dismissed=(), revisions=(), photographs=(),
        set_ups=(blank,),
    )  # fmt: skip


def own_plan_marked(job: Job, answer: Job) -> OwnPlan:
    """The learner's plan against the drawing, metal, stock and machine of the exercise,
    whatever else it says of them itself.
    """
    asked = replace(
        answer, units=job.units, finished=job.finished, material=job.material, stock=job.stock, machine=job.machine,
        card_hash=job.card_hash, datums=job.datums, dismissed=(),
    )  # fmt: skip
    reckoned: Reckoned = Reckoner(learns=True).reckon(asked)
    read = reviewed(reckoned.job, reckoned, facts_of(reckoned.job, reckoned))
    problems = tuple(one.problem for one in reckoned.operations.values() if one.problem)
    return OwnPlan(
        remarks=tuple(read.open),
        steps=len(asked.operations()),
        not_checked=(*problems, *(f"{one.what} not checked: {one.why}" for one in read.not_checked)),
    )
