"""All that a person does to the job, one part for each thing that is edited; the
actions of the menus name these parts.
"""

from __future__ import annotations

from collections.abc import Callable

from jobsheet.gui.edits.clip_edits import ClipEdits
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.open_rows import OpenRows
from jobsheet.gui.edits.photograph_edits import PhotographEdits
from jobsheet.gui.edits.remark_edits import Facts, Now, RemarkEdits
from jobsheet.gui.edits.revision_edits import RevisionEdits
from jobsheet.gui.edits.run_edits import RunEdits
from jobsheet.gui.edits.set_up_edits import SetUpEdits
from jobsheet.gui.edits.step_edits import StepEdits
from jobsheet.gui.edits.stepping import Stepping
from jobsheet.gui.edits.taking_back import TakingBack
from jobsheet.gui.edits.walking import Walking
from jobsheet.gui.edits.why_edit import WhyEdit


class Edits:
    """The parts, connected with each other; `moved` is told when another row is open, `now`
    asked for a remark of this moment.

    `facts` tells what the solids say of the job as it is.
    """

    def __init__(self, hand: Hand, moved: Callable[[], None], now: Now, facts: Facts) -> None:
        self.hand = hand
        self.remarks = RemarkEdits(hand, now, facts)
        self.rows = OpenRows(hand, self.remarks, moved)
        self.history = TakingBack(hand, self.rows)
        self.steps = StepEdits(hand, self.rows, self.history.undo)
        self.set_ups = SetUpEdits(hand, self.rows, self.history.undo)
        self.photographs = PhotographEdits(hand)
        self.revisions = RevisionEdits(hand)
        self.why = WhyEdit(hand)
        self.clip = ClipEdits(hand, self.rows, self.steps, self.set_ups)
        self.stepping = Stepping(hand, self.rows)
        self.walking = Walking(hand, self.rows)
        self.runs = RunEdits(hand)
