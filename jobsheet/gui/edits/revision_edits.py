"""A new revision of the plan: what changed is proposed from the file as it was
saved, and stands as it is then typed.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.clock import today
from jobsheet.errors import JobsheetError
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.forms import ask
from jobsheet.model.job import Job
from jobsheet.storage.plan_mark import plan_mark

translate = QCoreApplication.translate


class RevisionEdits:
    """Edits of the plan's revisions."""

    def __init__(self, hand: Hand) -> None:
        self._hand = hand

    def add(self) -> None:
        """Ask what changed and who says so, and write the next revision down."""
        from jobsheet.edit.revision_commands import AddRevision, next_number, proposed, revised_by

        job = self._hand.desk.job
        number = next_number(job)
        who = revised_by(job)
        found = ask.revision(self._hand.parent, number, proposed(self._saved(), job), who)
        if found is None:
            return
        if self._hand.do(AddRevision(changed=found[0], who=found[1], when=today())):
            words = translate("RowEdits", "Plan {number}: it prints on the sheets; save the job to keep it.")
            self._hand.say(words.format(number=plan_mark(number)))

    def _saved(self) -> Job | None:
        """The job as its file has it; None where it has none, or it cannot be read."""
        from jobsheet.storage.job_file import read_job

        path = self._hand.desk.path
        if path is None:
            return None
        try:
            return read_job(path)
        except JobsheetError:
            return None
