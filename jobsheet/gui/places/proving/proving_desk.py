"""What the proving place shows: a ladder, what was entered on it, what the machine has shown,
and what to conclude. No widget here.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from msgspec import Struct
from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication

from jobsheet.clock import time_of_day, today
from jobsheet.errors import CommandError, JobsheetError
from jobsheet.gui.places.proving.ladder_asked import Asked, entries
from jobsheet.gui.places.proving.rung_words import named
from jobsheet.limits.each.chatter import is_measured
from jobsheet.limits.verdict import in_words
from jobsheet.model.capacity import Capacity, Snapshot
from jobsheet.model.trials import ABOUT, OUTCOMES, Trial
from jobsheet.reckoning.ladder.ladder_sizes import Size, in_size
from jobsheet.reckoning.ladder.ladders import Ladder, Rung, plan, trial_of
from jobsheet.reckoning.worked_anew import anew
from jobsheet.report.proving_sheet import Initialled, unread
from jobsheet.storage.card_files import card_names
from jobsheet.storage.records.proof_log import Log, append, read_log, strike

if TYPE_CHECKING:
    from jobsheet.model.job import Job
    from jobsheet.reckoning.ladder.job_needs import Need
    from jobsheet.reckoning.reckoner import Reckoned

translate = QCoreApplication.translate

#: After one of these a ladder is over.
CLEAN = "clean"


class Conclusion(Struct, frozen=True):
    """One sentence in large type, what it rests on, and the size to plan to, if any."""

    head: str
    lines: tuple[str, ...] = ()
    planned: float | None = None


class ProvingDesk:
    """One ladder at a time, on one machine."""

    def __init__(self, job: Job, like: Asked | None = None) -> None:
        self.units = job.units
        cards = card_names()
        machine = job.machine if job.machine in cards else cards[0]  # its card may be gone
        self.asked = Asked(machine=machine, material=job.material or "S235")
        if job.units == "in":
            self.asked = Asked(
                machine=machine, material=job.material or "S235", cutter="end mill 1/2 in, 4 teeth, 1-1/4 in out", width="1/4 in"
            )  # fmt: skip
        if like is not None and job.machine == machine:
            self.asked = like
        self.ladder: Ladder | None = None
        #: What was entered on this ladder, by the number of its rung; some of it may be struck out since.
        self.entered: dict[int, Trial] = {}
        #: How the ladder was asked for, so that a finer one can be of the very same cuts.
        self._how: dict[str, Any] = {}
        #: Who has read the stop notes of this ladder.
        self.given = Initialled()
        self.trainee = job.trainee

    @property
    def done(self) -> dict[int, Trial]:
        """What counts of what was entered on this ladder."""
        if not self.entered:
            return {}
        struck = self.log.struck
        return {number: trial for number, trial in self.entered.items() if trial.id not in struck}

    # --- a ladder ---

    def set(self, name: str, text: str) -> None:
        """Something was typed into the form."""
        self.asked = replace(self.asked, **{name: text})

    def start(self) -> Ladder:
        """Plan the ladder that was asked for.

        Raises
        ------
        JobsheetError
            With a sentence, where something cannot be read.
        """
        return self._begin(*self._asked_for())

    def _asked_for(self) -> tuple[Ladder, dict[str, Any]]:
        """The ladder of the form, and how it is asked for."""
        asked = self.asked
        texts: dict[str, str] = {}
        if asked.kind in ("face", "side") and asked.width.strip():
            texts["width" if asked.grow == "depth" else "depth"] = asked.width
        if asked.spindle.strip():
            texts["spindle"] = asked.spindle
        if asked.feed.strip():
            texts["feed" if asked.kind in ("drill", "tap") else "feed_per_tooth"] = asked.feed
        milled = asked.kind in ("face", "side", "slot")
        (entry,) = (entry for entry in entries() if entry.name == "chance")
        chance = entry.read(asked.chance, self.units).value if asked.chance.strip() else None
        how: dict[str, Any] = {
            "machine": asked.machine, "cutter": asked.cutter, "material": asked.material, "kind": asked.kind, "units": self.units,
            "grow": asked.grow if milled and asked.kind != "slot" else "", "texts": texts, "holding": asked.holding, "chance": chance,
        }  # fmt: skip
        return plan(**how), how

    def foreseen(self) -> Ladder | None:
        """The ladder of the form as it would be; None where something of it
        cannot be read yet. It takes a moment.
        """
        try:
            return self._asked_for()[0]
        except JobsheetError:
            return None  # said when it is asked for: a text may not be finished

    @staticmethod
    def needs(reckoned: Reckoned | None) -> tuple[Need, ...]:
        """What the open job needs proved; nothing where it cannot be reckoned. It takes a moment."""
        from jobsheet.reckoning.ladder.job_needs import job_needs

        return job_needs(reckoned) if reckoned is not None else ()

    def _begin(self, ladder: Ladder, how: dict[str, Any]) -> Ladder:
        """Lay a ladder on the desk; nobody has read its notes yet."""
        self.ladder, self._how = ladder, how
        self.entered = {}
        self.given = Initialled()
        return ladder

    def begin_need(self, ladder: Ladder) -> Ladder:
        """Lay a ladder on the desk that settles steps of the job."""
        self.asked = replace(self.asked, machine=ladder.machine.name)
        how = {
            "machine": ladder.machine.name, "cutter": ladder.cutter.text, "material": ladder.material, "kind": ladder.process,
            "units": ladder.units, "grow": ladder.grows if ladder.process in ("face", "side") else "",
            "texts": dict(ladder.texts),
        }  # fmt: skip
        return self._begin(ladder, how)

    @property
    def over(self) -> bool:
        """Whether a ladder has ended at its limit, or was not begun because an earlier one
        had: then a finer one may narrow it.

        What only slipped ended it too, and said nothing of the limit: there is nothing to narrow. Nor is
        there in a part: its step goes on with layers as deep as the last clean one.
        """
        if (
            self.ladder is None
            or self.ladder.inside
            or self.current is not None
            or not self.ladder.capacities
        ):
            return False
        known = self.after()
        return known is not None and bool(known.bad) and bool(known.ends)

    def finer(self) -> Ladder | None:
        """The finer ladder of the same cuts, before it is begun; None where there
        is none to make. It takes a moment.
        """
        if not self.over:
            return None
        ladder = plan(**{**self._how, "finer": True})
        return ladder if ladder.rungs else None

    def begin_finer(self, ladder: Ladder) -> Ladder:
        """Lay the finer ladder on the desk."""
        return self._begin(ladder, self._how)

    @property
    def unread(self) -> tuple[str, ...]:
        """The stop notes of this ladder that nobody has given initials for."""
        ladder = self.ladder
        if ladder is None or not ladder.rungs:
            return ()
        return unread(ladder, self.given, trainee=self.trainee)

    def leave(self) -> None:
        """Away from the ladder, back to the form; what was recorded stays recorded."""
        self.ladder = None
        self.entered = {}

    @property
    def machine_name(self) -> str:
        """The machine that is asked about, by the name of its card."""
        return self.ladder.machine.name if self.ladder is not None else self.asked.machine

    @property
    def log(self) -> Log:
        """Everything recorded on the machine that is asked about."""
        return read_log(self.machine_name)

    def known(self) -> Snapshot | None:
        """What all that is recorded of the machine teaches; None where there is nothing."""
        log = self.log
        if not log.standing:
            return None
        from jobsheet.reckoning.known_capacity import snapshot_of
        from jobsheet.storage.shop_file import workshop

        shop = self.ladder.setting.shop if self.ladder is not None else workshop()
        return snapshot_of(self.machine_name, log.teaching, today(), shop)

    @property
    def current(self) -> Rung | None:
        """The rung to cut next; None where the ladder is over or there is none."""
        if self.ladder is None or self.stopped:
            return None
        return next((rung for rung in self.ladder.rungs if rung.number not in self.done), None)

    @property
    def stopped(self) -> bool:
        """Whether a trial on this ladder was anything but clean."""
        return any(trial.outcome != CLEAN for trial in self.done.values())

    # --- entry ---

    def enter(
        self, digit: int, *, seconds: float | None, tachometer: float | None, slipped: str, note: str
    ) -> Trial:
        """What happened on the current rung goes into the machine's log at once.

        Raises
        ------
        JobsheetError
            With a sentence, where it makes no sense; nothing is recorded then.
        """
        ladder, rung = self.ladder, self.current
        if ladder is None or rung is None:
            raise CommandError(translate("Proving", "There is no rung to enter: this ladder is over."))
        if self.unread:
            raise CommandError(
                translate(
                    "Proving",
                    "Nothing is entered before the stop notes were read and initials given for them.",
                )
            )
        trial = trial_of(
            ladder, rung, outcome=OUTCOMES[digit - 1], seconds=seconds, tachometer=tachometer, slipped=slipped, note=note,
            role=self.asked.role, date=today(), time=time_of_day(),
        )  # fmt: skip
        kept = append(ladder.machine.name, trial)
        self.entered[rung.number] = kept
        return kept

    def take_back(self) -> Trial | None:
        """Strike the last trial of this ladder out; the log keeps both."""
        done = self.done
        if self.ladder is None or not done:
            return None
        trial = done[max(done)]
        words = translate("Proving", "taken back at the desk")
        strike(self.ladder.machine.name, trial.id, today(), self.asked.role, words, time_of_day())
        return trial

    # --- what it has shown ---

    @property
    def about(self) -> str:
        """The limit that this ladder is about."""
        return ABOUT.get(self.ladder.process, "spindle-torque") if self.ladder is not None else "chatter"

    def before(self, ladder: Ladder | None = None) -> Capacity | None:
        """What is known of such cuts without any trial: those of this ladder, or of another."""
        from jobsheet.reckoning.known_capacity import prior

        one = ladder or self.ladder
        if one is None:
            return None
        about = ABOUT.get(one.process, "spindle-torque")
        return prior(about, one.process, one.cutter.kind, measured=is_measured(one.machine))

    def after(self, ladder: Ladder | None = None) -> Capacity | None:
        """What is known of such cuts with all trials; None without any."""
        snapshot, one = self.known(), ladder or self.ladder
        if snapshot is None or one is None:
            return None
        return snapshot.find(ABOUT.get(one.process, "spindle-torque"), one.process, one.cutter.kind)

    def same_cuts(self) -> tuple[Trial, ...]:
        """The trials of the machine with what each asks as it is worked out now; the
        chart takes those of its own cuts.
        """
        return anew(self.log.standing)

    def size_at(self, share: float) -> Size | None:
        """The largest size of this ladder's cuts that asks no more than this
        share; None where none asks so little.
        """
        return in_size(self.ladder, self.about, share) if self.ladder is not None else None

    def conclusion(self) -> Conclusion:
        """What to do now."""
        ladder = self.ladder
        if ladder is None:
            return Conclusion(translate("Proving", "Choose machine, cutter and metal, then plan the ladder."))
        if ladder.refused:
            planned = self._planned() if self.over else None
            return Conclusion(translate("Proving", "No ladder."), (ladder.refused,), planned)
        if not self.done:
            words = translate("Proving", "Start at the bottom rung: {size}.").format(
                size=named(ladder, ladder.rungs[0])
            )
            return Conclusion(words, ladder.start)
        number = max(self.done)
        last = self.done[number]
        clean = [
            rung
            for rung in ladder.rungs
            if rung.number in self.done and self.done[rung.number].outcome == CLEAN
        ]
        if last.outcome == CLEAN and self.current is not None:
            words = translate("Proving", "Go on to {size}.").format(size=named(ladder, self.current))
            chance = translate("Proving", "{chance} chance of trouble.").format(
                chance=in_words(self.current.chance).capitalize()
            )
            return Conclusion(words, (chance,), self._planned())
        what = translate("Proving", "{size}: {outcome}.").format(
            size=named(ladder, ladder.rungs[number - 1]), outcome=last.outcome
        )
        lines = [what]
        if clean:
            lines.append(translate("Proving", "{size} ran clean.").format(size=named(ladder, clean[-1])))
        planned = self._planned()
        size = self.size_at(planned) if planned else None
        if size is not None and last.outcome == CLEAN:
            words = translate("Proving", "Every rung ran clean. Plan such cuts up to {size}.").format(
                size=size.words
            )
            lines = [ladder.ends]
        elif size is not None:
            words = translate("Proving", "Stop here. Plan such cuts up to {size}.").format(size=size.words)
        elif last.outcome == CLEAN:
            words = translate("Proving", "The ladder is done: every rung ran clean.")
            lines.append(ladder.ends)
        else:
            words = translate("Proving", "Stop here.")
        if ladder.inside and last.outcome != CLEAN:
            words = (
                translate("Proving", "Stop here. Go on in the part with layers of {size}.").format(
                    size=clean[-1].size
                )
                if clean
                else translate(
                    "Proving", "Stop here. Nothing ran clean: plan the step lighter before it goes on."
                )
            )
        if last.outcome != CLEAN and self._is_odd(last):
            lines.append(
                translate(
                    "Proving", "This does not fit the others: all trials of the machine say why (Ctrl + T)."
                )
            )
        return Conclusion(words, tuple(line for line in lines if line), planned)

    def _is_odd(self, trial: Trial) -> bool:
        """Whether what the others say makes it unlikely."""
        from jobsheet.reckoning.odd_trials import odd_trials

        return any(odd.trial.id == trial.id for odd in odd_trials(self.known(), self.log))

    def _planned(self) -> float | None:
        """The share that such cuts may ask: what ends badly with at most the workshop's chance."""
        capacity = self.after()
        return capacity.planned or None if capacity is not None else None
