"""Why the steps stand as they do, written into the job from its facts: an edit
like any other, to be typed over.
"""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication

from jobsheet.edit.commands import SetField
from jobsheet.errors import JobsheetError
from jobsheet.gui.edits.in_hand import Hand

translate = QCoreApplication.translate


class WhyEdit:
    """One edit of the job's form; what a person wrote there is never replaced."""

    def __init__(self, hand: Hand) -> None:
        self._hand = hand

    def write(self) -> None:
        """Fill the line, or say why not."""
        from jobsheet.lessons.needed_order import needed_order
        from jobsheet.lessons.order_in_words import why_words

        desk = self._hand.desk
        if desk.job.why.strip():
            self._hand.say(
                translate("RowEdits", "Why this order is written already: empty the line first, with F2.")
            )
            return
        if desk.reckoned is None:
            self._hand.say(desk.problem)
            return
        try:
            words = why_words(needed_order(desk.reckoned))
        except JobsheetError as error:
            self._hand.say(str(error))
            return
        if not words:
            self._hand.say(translate("RowEdits", "Nothing in this job must stand before something else."))
        elif self._hand.do(SetField("job", "why", words)):
            self._hand.say(
                translate(
                    "RowEdits",
                    "Written from the facts of the plan: F2 shows it, type over what you know better.",
                )
            )
