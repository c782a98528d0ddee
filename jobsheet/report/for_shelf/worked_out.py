"""What the shelf shows of one job: its plan's verdict, and its finished part drawn small
for a row and large beside its facts.
"""

from __future__ import annotations

from pathlib import Path

from jobsheet.drawing.drawn import Drawing
from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.model.job import Job
from jobsheet.model.lying import Lying
from jobsheet.model.not_checked import alone
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.remembered import forget_the_plan
from jobsheet.shelf.how_it_went import BROKEN, NOTHING
from jobsheet.shelf.worked_kept import Worked
from jobsheet.storage.disk import digest
from jobsheet.storage.job_file import job_from_text

#: Of a row's picture, and of the one beside the facts [points]: 92 × 58 and
#: 212 × 146 pixels of a screen (look-2).
SMALL, LARGE = (67.0, 42.0), (154.0, 106.0)


def worked_out(path: Path, content: str) -> Worked | None:
    """What a file's plan is said to be and its finished part; None where it cannot be read
    now, or says something else by now.
    """
    try:
        raw = path.read_bytes()
    except OSError:
        return None
    if digest(raw) != content:
        return None
    try:
        job = job_from_text(raw.decode("utf-8"), path.name)
        reckoned = Reckoner().reckon(job)
        verdict, at = _verdict(reckoned)
    except DocumentError as error:
        return Worked(content=content, verdict=BROKEN, at=str(error.problems[0]) if error.problems else "")
    except (JobsheetError, UnicodeDecodeError) as error:
        return Worked(content=content, verdict=BROKEN, at=str(error))
    small, large = alone(lambda: _pictures(reckoned.job, reckoned), lambda _why: (None, None))
    forget_the_plan()
    return Worked(content=content, verdict=verdict, at=at, small=small, large=large)


def _verdict(reckoned: Reckoned) -> tuple[str, str]:
    """The worst verdict of all, and the first step that has it."""
    worst = reckoned.worst
    for operation in (operation for _, operation in reckoned.job.operations()):
        governing = reckoned.operations[operation.key].governing
        if governing is not None and governing.verdict == worst:
            return worst, f"step {operation.number}"
    return NOTHING, ""


def _pictures(job: Job, reckoned: Reckoned) -> tuple[Drawing | None, Drawing | None]:
    from jobsheet.report.stage_view import finished_view, stages_of
    from jobsheet.stages.pictures import picture

    stages = stages_of(job, reckoned.settings)
    last = stages[-1]
    box = last.cut.after.box if last.cut is not None else last.box
    lie = Lying(near="front", far="rear", left="left", right="right", up="top", down="bottom", box=box)
    small = picture(last, "iso", *SMALL, lie=lie, now=False, margin=(2, 2, 2, 2))
    return small, finished_view(stages, job.datums, *LARGE)
