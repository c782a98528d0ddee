"""What a person does to the record of a machine: strike, give back, say that it was so,
mark a change; each can be taken back.

Nothing is ever changed in the log: what is taken back is struck by a later record.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date as calendar
from datetime import datetime, timedelta

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.clock import time_of_day, today
from jobsheet.errors import CommandError
from jobsheet.model.trials import Trial
from jobsheet.reckoning.odd_trials import Odd
from jobsheet.storage.records.proof_log import give_back, mark, read_log, strike

translate = QCoreApplication.translate


class Act(Struct, frozen=True):
    """Something done in this visit: how it is taken back, which returns what is then said."""

    back: Callable[[], str]


class RecordActs:
    """What was done to the records in this visit, the last one first to be taken back."""

    def __init__(self) -> None:
        self._done: list[Act] = []

    def did(self, back: Callable[[], str]) -> None:
        """Something was done, and this takes it back."""
        self._done.append(Act(back))

    def undo(self) -> str:
        """Take back the last thing that was done; what is to be said. Raises
        JobsheetError where it cannot be.
        """
        if not self._done:
            return ""
        act = self._done[-1]
        words = act.back()
        self._done.remove(act)
        return words

    def strike(self, trial: Trial, why: str, role: str) -> None:
        """Strike a record out. Raises CommandError without a reason."""
        if not why:
            raise CommandError(translate("Record", "Write why it is wrong: the record keeps it."))
        strike(trial.machine, trial.id, today(), role, why, time_of_day())
        self.did(lambda: self.given(trial, role))

    def give_back(self, trial: Trial, role: str) -> None:
        """Let what was struck count again."""
        why = read_log(trial.machine).struck[trial.id].note
        give_back(trial.machine, trial.id, today(), role, "", time_of_day())

        def back() -> str:
            strike(trial.machine, trial.id, today(), role, why, time_of_day())
            return translate("Record", "Struck out again: {outcome}.").format(outcome=_called(trial))

        self.did(back)

    def given(self, trial: Trial, role: str) -> str:
        """Let what was struck count again; what is then said."""
        give_back(trial.machine, trial.id, today(), role, "", time_of_day())
        return translate("Record", "It counts again: {outcome}.").format(outcome=_called(trial))

    def keep(self, trial: Trial, role: str) -> None:
        """It seemed odd, and it was so."""
        made = mark(trial.machine, today(), keeps=trial.id, role=role, clock=time_of_day())
        self.did(lambda: self._unmarked(made, role))

    def changed(self, machine: str, what: str, day: str, note: str, role: str, time: str = "") -> Trial:
        """Mark that the machine changed. Raises CommandError where the day is none."""
        try:
            then = calendar.fromisoformat(day or today())
        except ValueError:
            words = translate("Record", "“{day}” is no date; write it as 2026-11-25.")
            raise CommandError(words.format(day=day)) from None
        if then > calendar.fromisoformat(today()):
            words = translate("Record", "{day} is still to come; a change is marked once it was made.")
            raise CommandError(words.format(day=then.isoformat()))
        at = time or (time_of_day() if then.isoformat() == today() else "")
        made = mark(machine, then.isoformat(), changed=what, role=role, note=note, clock=at)
        self.did(lambda: self._unmarked(made, role))
        return made

    def changed_then(self, odd: Odd, what: str, note: str, role: str) -> Trial:
        """Mark the change at a trial that does not fit: before it, or behind it
        where most of the others came after it.
        """
        day, time = turn_of(odd, read_log(odd.trial.machine).standing)
        return self.changed(odd.trial.machine, what, day, note, role, time)

    @staticmethod
    def _unmarked(made: Trial, role: str) -> str:
        words = translate("Record", "taken back at the desk")
        strike(made.machine, made.id, today(), role, words, time_of_day())
        if made.changed:
            return translate("Record", "The mark is taken back: {what}.").format(what=made.changed)
        return translate("Record", "Taken back: it is asked about again.")


def _called(trial: Trial) -> str:
    return trial.outcome or trial.changed


def turn_of(odd: Odd, standing: tuple[Trial, ...]) -> tuple[str, str]:
    """Day and time at which the machine changed if that trial shows it: its own, or a second
    later where most others came later.

    A trial without a time stands before all others of its day; behind it is midnight.
    """
    trial = odd.trial
    like = [
        other
        for other in standing
        if other.id != trial.id
        and other.of(odd.limit) is not None
        and (other.process, other.cutter_kind) == (trial.process, trial.cutter_kind)
    ]
    later = sum((other.date, other.time) > (trial.date, trial.time) for other in like)
    if 2 * later <= len(like):
        return trial.date, trial.time
    if not trial.time:
        return trial.date, "00:00:00"
    try:
        then = datetime.fromisoformat(f"{trial.date} {trial.time}") + timedelta(seconds=1)
    except ValueError:
        return trial.date, "23:59:59"
    return then.date().isoformat(), then.strftime("%H:%M:%S")
