"""A row of the shelf in words: when it was made last, how it went, what else is of the same plan."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.shelf.how_it_went import BROKEN, CUT_BEFORE, NO_RECORD, NOTHING, OLD_SHEET
from jobsheet.shelf.shelf_questions import Hit
from jobsheet.shelf.worked_kept import Worked

translate = QCoreApplication.translate


def made_words(hit: Hit) -> tuple[str, str]:
    """When it was made last, and under it on how many days; or for when it was planned."""
    if hit.how == OLD_SHEET:
        return translate("Shelf", "no plan yet"), ""
    if not hit.made:
        planned = translate("Shelf", "planned {date}").format(date=hit.planned_on) if hit.planned_on else ""
        return translate("Shelf", "not made yet"), planned
    return hit.made, translate("Shelf", "{times} times").format(times=hit.times) if hit.times > 1 else ""


def how_words(hit: Hit, worked: Worked | None) -> tuple[str, str]:
    """How it went in one word, and what that means here; of a job that was never
    made what its plan is said to be.
    """
    if hit.how == OLD_SHEET:
        return translate("Shelf", "old sheet"), translate("Shelf", "Enter shows it")
    if hit.how == NO_RECORD:
        return translate("Shelf", "no record"), translate("Shelf", "nothing written down")
    if hit.how == CUT_BEFORE:
        return verdict_word(hit.how), translate("Shelf", "every step clean")
    if hit.how:
        return verdict_word(hit.how), hit.went
    if worked is None:
        return translate("Shelf", "not yet worked"), ""
    if worked.verdict == BROKEN:
        return translate("Shelf", "broken"), worked.at
    if worked.verdict == NOTHING:
        return translate("Shelf", "nothing to judge"), ""
    if worked.verdict in ("tight", "beyond"):
        return verdict_word(worked.verdict), translate("Shelf", "planned, {step}").format(step=worked.at)
    return verdict_word(worked.verdict), translate("Shelf", "never made")


def twins_words(hit: Hit) -> str:
    """That its plan lies in a second file beside it; empty where it does not."""
    if not hit.twins:
        return ""
    return translate("Shelf", "the same plan as {other}").format(other=", ".join(hit.twins))
