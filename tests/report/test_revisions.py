"""Revisions of the plan and remarks set aside, as blocks: newest first, a hazard with a line for initials."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.job import Dismissed, Revision
from jobsheet.report.blocks import words_of
from jobsheet.report.heed.revisions import LAST, aside_words, hazards_aside, revision_blocks, set_aside_at
from jobsheet.review.engine import severity_of

from .plans import plate
from .seen_from_above import plan_of

HAZARD = "grip-deep-enough"


def test_the_newest_stands_first_and_only_the_last_are_printed():
    revisions = tuple(
        Revision(number=number, changed=f"change {number}", who="rw", when="2026-11-30")
        for number in range(1, LAST + 3)
    )
    words = list(words_of(tuple(revision_blocks(plan_of(replace(plate(), revisions=revisions))))))
    shown = [word for word in words if word.startswith("change ")]
    assert shown[0] == f"change {LAST + 2}"
    assert len(shown) <= LAST


def test_without_revisions_and_remarks_there_is_nothing():
    assert revision_blocks(plan_of(replace(plate(), revisions=(), dismissed=()))) == ()


def test_a_hazard_without_initials_has_a_line_for_them():
    assert severity_of(HAZARD) == "hazard"
    plan = plan_of(replace(plate(), dismissed=(Dismissed(rule=HAZARD, about="drill", reason="seen"),)))
    assert "initials ____" in aside_words(plan, plan.job.dismissed[0])
    signed = plan_of(
        replace(plate(), dismissed=(Dismissed(rule=HAZARD, about="drill", reason="seen.", initials="rw"),))
    )
    assert aside_words(signed, signed.job.dismissed[0]).endswith("seen (rw).")
    assert len(set_aside_at(plan, "drill")) == len(hazards_aside(plan)) == 1
    assert set_aside_at(plan, "tap") == ()
