"""A plan whose first cut is looked at from above."""

from __future__ import annotations

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.job_sheet import always
from jobsheet.report.plan import Plan, courses
from jobsheet.review.notes.notes import notes_for
from jobsheet.storage.card_files import find_card

MM = 1e-3


def plan_of(work) -> Plan:
    found = Reckoner().reckon(work)
    return Plan(
        job=work, reckoned=found, notes=notes_for(work, found), remarks=(), card=find_card(work.machine), acknowledged=(),
        fits=always, courses=courses(work, found.settings),
    )  # fmt: skip
