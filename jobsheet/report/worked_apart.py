"""Works out what the shelf shows of its jobs, in a process of its own and in idle time: `python -m jobsheet.report.worked_apart FOLDER`.

It is told on its input which contents are in sight, a line at a time; these come first. It tells each content that is done, and
ends with its input, so that it never outlives the window.
"""

from __future__ import annotations

import contextlib
import os
import sys
import threading
from pathlib import Path

from jobsheet.drawing.drawn import Drawing
from jobsheet.errors import DocumentError, JobsheetError
from jobsheet.model.job import Job
from jobsheet.model.lying import Lying
from jobsheet.model.not_checked import alone
from jobsheet.reckoning.reckoner import Reckoned, Reckoner
from jobsheet.remembered import forget_the_plan
from jobsheet.shelf.how_it_went import BROKEN, NOTHING
from jobsheet.shelf.shelf_index import Index
from jobsheet.shelf.worked_kept import Worked, keep, to_work
from jobsheet.storage.disk import digest
from jobsheet.storage.job_file import job_from_text

#: Of a row's picture, and of the one beside the facts [points]: 92 × 58 and 212 × 146 pixels of a screen (look-2).
SMALL, LARGE = (67.0, 42.0), (154.0, 106.0)


def main(folder: str) -> None:
    """Work what is not worked yet, what is in sight first; as nice as can be, for somebody works beside it."""
    with contextlib.suppress(AttributeError, OSError):
        os.nice(19)
    sight = _Sight()
    index = Index(Path(folder), look=False)
    try:
        left = to_work(index)
        while left and not sight.over:
            content = next((one for one in sight.contents if one in left), None) or next(iter(left))
            worked = worked_out(index.shelf / left.pop(content), content)
            if worked is not None:
                keep(index, worked)
                sys.stdout.buffer.write(f"{content}\n".encode())
                sys.stdout.buffer.flush()
    finally:
        index.close()


class _Sight:
    """What is in sight, as it is told."""

    def __init__(self) -> None:
        self.contents: tuple[str, ...] = ()
        self.over = False
        threading.Thread(target=self._listen, daemon=True).start()

    def _listen(self) -> None:
        """Line by line, past Python's own reader: it would be held at the end of the program."""
        said = b""
        while data := os.read(0, 65536):
            *lines, said = (said + data).split(b"\n")
            if lines:
                self.contents = tuple(lines[-1].decode(errors="replace").split())
        self.over = True


def worked_out(path: Path, content: str) -> Worked | None:
    """What a file's plan is said to be and its finished part; None where it cannot be read now, or says something else by now."""
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
    for operation in (one for _, one in reckoned.job.operations()):
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


if __name__ == "__main__":
    main(sys.argv[1])
