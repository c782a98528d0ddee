"""Which stages the strip shows: those of the set-up that is meant, and the moment of the large drawing."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import QCoreApplication

from jobsheet.gui.desk.stage_work import Solids
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.strip.stage_blocks import stages
from jobsheet.gui.strip.strip import Strip

translate = QCoreApplication.translate


class StagesShown:
    """Between hand and strip."""

    def __init__(self, hand: Hand, strip: Callable[[], Strip], solids: Solids) -> None:
        self._hand = hand
        self._strip = strip
        self._solids = solids

    def refresh(self) -> None:
        """The drawings of the stages around the open or chosen row."""
        hand = self._hand
        set_up, current = hand.set_up, hand.chosen
        if current == set_up.key and set_up.operations:
            current = set_up.operations[0].key
        self._strip().put(stages(hand.desk.job, hand.desk.sweeps, set_up.key), current)

    def ask(self) -> None:
        """Have the solids drawn that are shown."""
        self._solids.ask(self._strip())

    def next_moment(self) -> None:
        """The large drawing shows the work after its step, before it, or the stock, in turn."""
        strip = self._strip()
        order = ("after", "before", "stock")
        strip.moment = order[(order.index(strip.moment) + 1) % len(order)]
        words = {
            "after": translate("Window", "The work after this step."),
            "before": translate("Window", "The work before this step."),
            "stock": translate("Window", "The stock, as it lies in this set-up."),
        }
        self._hand.say(words[strip.moment])
        self.refresh()
        self.ask()
