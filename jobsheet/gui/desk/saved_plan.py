"""The plan that a run is recorded with: the job as it was saved, for that is what
was printed and can be found again.
"""

from __future__ import annotations

from pathlib import Path

from msgspec import Struct

from jobsheet.gui.desk.desk import Desk
from jobsheet.model.job import Job
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.storage.check_code import check_code
from jobsheet.storage.job_file import job_digest, read_job


class SavedPlan(Struct, frozen=True, kw_only=True):
    """The job in its file, its figures and its check code; `changed` says that the
    job on the desk is another by now.
    """

    path: Path
    job: Job
    reckoned: Reckoned
    code: str
    changed: bool = False

    @property
    def revision(self) -> int:
        """Its number; 0 before the first."""
        return self.job.plan_number


def saved_plan(desk: Desk) -> SavedPlan | None:
    """The plan in the file of the job on the desk; None where it has none yet.

    Raises
    ------
    JobsheetError
        If the file cannot be read any more.
    """
    path = desk.path
    if path is None:
        return None
    changed = desk.history.changed or bool(desk.history.drafts)
    job, reckoned = desk.job, desk.reckoned
    if changed or job_digest(path) != desk.digest or reckoned is None or desk.reckoner.behind:
        job = read_job(path)
        reckoned = Reckoner(learns=True).reckon(job)
    code = check_code(path.read_bytes())
    return SavedPlan(path=path, job=job, reckoned=reckoned, code=code, changed=changed)
