"""What a closed row shows of its verdict."""

from __future__ import annotations

from jobsheet.edit.commands import SetField
from jobsheet.gui.column.views import row_view
from jobsheet.operations.kind import Aim
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Steps
from jobsheet.storage.job_file import read_job
from tests.report.pages_read import all_of
from tests.report.plans import pages


def test_what_was_not_tried_is_said_behind_what_governs(samples):
    """The grip governs; the depth that was not tried is said beside it, and never hidden among the rest."""
    job = SetField("step", "spindle", "190 rpm").apply(read_job(samples / "hm-103-pivot-block.yaml"))
    found = Reckoner().reckon(job)
    outcome, operation = found.operations["step"], job.find("step")[1]
    assert outcome.governing.name != "chatter"
    closed = row_view(operation, outcome, (), Aim(), stale=False)
    assert closed.untried.endswith("chatter")
    assert "not tried" in closed.spoken()
    (row,) = (row for steps in all_of(pages(job), Steps) for row in steps.rows if row.number == "70")
    assert row.untried.startswith("chatter not tried: begin at")
