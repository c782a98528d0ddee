"""Plans that were printed or made: kept as their bytes were, in a folder beside the job
(`HM-103.plans/`), never written again.

A plan that left the desk is closed. What is changed after that becomes the next one, and the paper in
somebody's hand can still be found by its check code.
"""

from __future__ import annotations

import re
from pathlib import Path

from msgspec import Struct

from jobsheet.errors import CannotWrite, DocumentError, JobsheetError
from jobsheet.storage.check_code import check_code
from jobsheet.storage.disk import write_file
from jobsheet.storage.plan_mark import plan_mark

FOLDER = ".plans"
PRINTED, MADE = "printed", "made"
_NAME = re.compile(
    r"plan-(?P<number>\d{1,4})-(?P<date>\d{4}-\d\d-\d\d)-(?P<how>printed|made)-(?P<code>[0-9A-Z]{4}-[0-9A-Z]{4}-[0-9A-Z]{3})\.yaml"
)

_ASIDE = re.compile(r"saved-\d{4}-\d\d-\d\d-[0-9A-Z-]+\.yaml")


class ClosedPlan(Struct, frozen=True, kw_only=True):
    """One plan as it left the desk: its number (0 before the first was given), when
    and how, and the code on its paper.
    """

    path: Path
    number: int
    date: str
    how: str
    code: str

    def words(self) -> str:
        """`plan 2, printed 2026-11-30`; without a number `the plan printed 2026-11-30`."""
        return (
            f"plan {plan_mark(self.number)}, {self.how} {self.date}"
            if self.number
            else f"the plan {self.how} {self.date}"
        )


def folder_of(job: Path) -> Path:
    """Where the closed plans of a job's file lie."""
    return job.with_name(f"{job.stem}{FOLDER}")


def job_of(path: Path) -> Path | None:
    """The job that a file of its plans belongs to, closed or kept aside
    (`kept_aside.py`); None where it is none of those.
    """
    if not path.parent.name.endswith(FOLDER) or not (
        _NAME.fullmatch(path.name) or _ASIDE.fullmatch(path.name)
    ):
        return None
    return path.parent.with_name(f"{path.parent.name.removesuffix(FOLDER)}.yaml")


def closed_plans(job: Path) -> tuple[ClosedPlan, ...]:
    """The closed plans of a job, the oldest first; nothing where there are
    none or the folder cannot be read.
    """
    try:
        there = sorted(folder_of(job).iterdir())
    except OSError:
        return ()
    found = [
        ClosedPlan(
            path=path, number=int(name["number"]), date=name["date"], how=name["how"], code=name["code"]
        )
        for path in there
        if (name := _NAME.fullmatch(path.name)) is not None
    ]
    return tuple(
        sorted(found, key=lambda closed_plan: (closed_plan.number, closed_plan.date, closed_plan.path.name))
    )


def closed_as(job: Path, data: bytes | None) -> ClosedPlan | None:
    """The closed plan that these bytes are; None where they never left the desk."""
    if data is None or not folder_of(job).exists():
        return None
    code = check_code(data)
    return next((plan for plan in closed_plans(job) if plan.code == code), None)


def close_plan(job: Path, data: bytes, number: int, how: str, date: str) -> ClosedPlan:
    """Keep the bytes of a plan that is printed or made; the one that is kept
    where that very plan was closed before.

    Parameters
    ----------
    data : bytes
        The job's file, or what the sheet carries inside
    number : int
        Of its last revision; 0 where it has none
    date : str
        Such as `2026-11-30`

    Raises
    ------
    CannotWrite
        If the disk refuses: the plan is not closed then.
    """
    known = closed_as(job, data)
    if known is not None:
        return known
    code = check_code(data)
    path = folder_of(job) / f"plan-{number}-{date}-{how}-{code}.yaml"
    try:
        path.parent.mkdir(exist_ok=True)
    except OSError as error:
        raise CannotWrite(
            f"{path.parent.name} cannot be made beside {job.name}: {error.strerror}."
        ) from error
    write_file(path, data)
    return ClosedPlan(path=path, number=number, date=date, how=how, code=code)


def is_whole(plan: ClosedPlan) -> bool:
    """Whether the file still is what left the desk. Raises OSError where it cannot be read."""
    return check_code(plan.path.read_bytes()) == plan.code


def newer_than(path: Path) -> str:
    """By what a closed plan is superseded: `plan 3`; `a later plan` where that has no number;
    empty where it is the plan that counts.

    It counts as long as the job's file says the same.
    """
    job = job_of(path)
    if job is None:
        return ""
    from jobsheet.storage.job_file import read_job

    try:
        if job.read_bytes() == path.read_bytes():
            return ""
        now = read_job(job)
    except (OSError, DocumentError, JobsheetError):
        return "a later plan, which cannot be read"
    return f"plan {plan_mark(now.revisions[-1].number)}" if now.revisions else "a later plan"
