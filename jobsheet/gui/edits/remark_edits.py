"""What is done about a remark: its fix, an offer of the margin, setting it aside, bringing it back."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QCoreApplication

from jobsheet.edit.commands import SetFields
from jobsheet.gui.column.remarks import Offer, RemarkLine
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.forms import ask
from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark

if TYPE_CHECKING:
    from jobsheet.review.mending.fix_tried import FixTried

translate = QCoreApplication.translate
#: What the solids say of the job as it is, or None while they are being made.
Facts = Callable[[], "tuple[Any, ...] | None"]
#: A remark as it is of the job on the desk, or None where it is true no longer.
Now = Callable[[Remark], "Remark | None"]


class Mend:
    """A remark's fix as an edit that can be undone."""

    merge_key = ""

    def __init__(self, fix: Fix) -> None:
        self._fix = fix
        self.label = fix.label

    def apply(self, job: Job) -> Job:
        """The job after it."""
        return self._fix.mend(job)


class RemarkEdits:
    """Edits that answer what the rules and the margin say."""

    def __init__(self, hand: Hand, now: Now, facts: Facts) -> None:
        self._hand = hand
        self._now = now
        self._facts = facts

    def offer(self, remark: Remark) -> Offer:
        """What mends a remark, tried for the plan as it is: what it would change, end
        and leave; or why nothing is offered.
        """
        from jobsheet.edit.difference import changes
        from jobsheet.review.mending.fix_words import by_hand, ends_and_leaves, refusal, together

        # The same words may stand there from before the last key, with another fix;
        # or nothing of it is true any more.
        now = self._now(remark)
        if now is None:
            return Offer(lines=(translate("Remarks", "The plan has changed: this is read again."),))
        remark = now
        tried = self._tried(remark)
        if tried is None:
            said = translate("Remarks", "By hand: {what}.").format(what=by_hand(remark))
            return Offer(lines=(said,) if remark.by_hand else ())
        if not tried.offered:
            return Offer(lines=(refusal(remark, tried),))
        job = self._hand.desk.job
        would = together(changes(job, tried.job))
        return Offer(tried.fix.label, (would, ends_and_leaves(remark, tried, job)))

    def _tried(self, remark: Remark) -> FixTried | None:
        from jobsheet.review.mending.fix_tried import fix_tried

        desk = self._hand.desk
        if desk.reckoned is None:
            return None
        return fix_tried(remark, desk.job, desk.reckoned, self._facts())

    def mend(self, remark: Remark) -> None:
        """Do what a remark offers, for the plan as it is by now: what is shown
        may be older than the last key.
        """
        found = self._now(remark)
        tried = self._tried(found) if found is not None else None
        if found is None or tried is None:
            self._hand.say(translate("RowEdits", "Not done: the plan has changed, and this is read again."))
        elif not tried.offered:
            from jobsheet.review.mending.fix_words import refusal

            self._hand.say(translate("RowEdits", "Not done. {why}").format(why=refusal(found, tried)))
        elif self._hand.do(Mend(tried.fix)):
            self._hand.say(translate("RowEdits", "Done: {fix}.").format(fix=tried.fix.label))

    def take(self, key: str, edits: tuple[tuple[str, str], ...]) -> None:
        """Write an offer into a step, as one edit."""
        if self._hand.do(SetFields(key, edits)):
            said = ", ".join(f"{name.replace('_', ' ')} {text or '–'}" for name, text in edits)
            self._hand.say(translate("RowEdits", "Written in: {edits}.").format(edits=said))

    def preview(self, line: RemarkLine) -> None:
        """Say what a remark's fix would change."""
        if self._now(line.remark) is not None:
            line.preview(self.offer(line.remark).lines)

    def dismiss(self, remark: Remark) -> None:
        """Set a remark aside for this job, with a reason; a hazard in a trainee's job needs initials too."""
        from jobsheet.edit.setting_aside import Dismiss
        from jobsheet.review.engine import about

        hand = self._hand
        needs = remark.severity == "hazard" and hand.desk.job.trainee
        answer = ask.reason(hand.parent, remark.message, initials=needs)
        if answer is None:
            return
        reason, initials = answer
        if needs and not initials.strip():
            hand.say(translate("RowEdits", "Not set aside: a hazard in a trainee's job needs initials."))
            return
        if hand.do(Dismiss(remark.rule, about(remark), reason, initials)):
            hand.say(translate("RowEdits", "Set aside; the reason is printed with the plan."))

    def bring_back(self) -> None:
        """All remarks that were set aside are open again."""
        from jobsheet.edit.setting_aside import BringBack

        if not self._hand.desk.job.dismissed:
            self._hand.say(translate("RowEdits", "No remark is set aside in this job."))
        elif self._hand.do(BringBack()):
            self._hand.say(translate("RowEdits", "All remarks are open again."))
