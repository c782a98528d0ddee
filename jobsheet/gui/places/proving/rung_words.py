"""Rungs and sizes as they are said."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.reckoning.ladder.ladder_expected import words_of
from jobsheet.reckoning.ladder.ladders import Ladder, Rung

translate = QCoreApplication.translate


def named(ladder: Ladder, rung: Rung) -> str:
    """The rung by what grew."""
    words = {"depth": translate("Proving", "{size} deep"), "width": translate("Proving", "{size} wide")}
    return words.get(ladder.grows, "{size}").format(size=rung.size)


def foreseen_words(ladder: Ladder | None) -> str:
    """What a ladder that is not begun would cost and teach, or why there would be none."""
    if ladder is None:
        return ""
    if ladder.refused or ladder.expected is None:
        return ladder.refused
    sizes = translate("Proving", "{count} rungs on the sheet, {first} to {last}.").format(
        count=len(ladder.rungs), first=ladder.rungs[0].size, last=named(ladder, ladder.rungs[-1])
    )
    return f"{words_of(ladder.expected)} {sizes}"
