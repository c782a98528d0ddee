"""What the proving place shows: a ladder, what was entered on it, what the machine has shown, and what to conclude. No widget here."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import CommandError
from jobsheet.gui.places.proving.ladder_asked import Asked
from jobsheet.gui.places.proving.record_acts import clock
from jobsheet.gui.places.proving.rung_words import length_text, named, size_of
from jobsheet.limits.each.chatter import is_measured
from jobsheet.limits.verdict import in_words
from jobsheet.model.capacity import Capacity, Snapshot
from jobsheet.model.trials import OUTCOMES, Trial
from jobsheet.reckoning.ladder.ladders import Ladder, Rung, plan, today, trial_of
from jobsheet.storage.card_files import card_names
from jobsheet.storage.records.proof_log import Log, append, read_log, strike

if TYPE_CHECKING:
    from jobsheet.model.job import Job

translate = QCoreApplication.translate

#: After one of these a ladder is over.
CLEAN = "clean"
#: The limit that a milling ladder is about, and that of all others.
_ABOUT = {"face": "chatter", "side": "chatter", "slot": "chatter"}


class Conclusion(Struct, frozen=True):
    """One sentence in large type, what it rests on, and the size to plan to, if any."""

    head: str
    lines: tuple[str, ...] = ()
    planned: float | None = None


class ProvingDesk:
    """One ladder at a time, on one machine."""

    def __init__(self, job: Job) -> None:
        self.units = job.units
        cards = card_names()
        machine = job.machine if job.machine in cards else cards[0]  # its card may be gone
        self.asked = Asked(machine=machine, material=job.material or "S235")
        if job.units == "in":
            self.asked = Asked(
                machine=machine, material=job.material or "S235", cutter="end mill 1/2 in, 4 teeth, 1-1/4 in out", width="1/4 in"
            )  # fmt: skip
        self.ladder: Ladder | None = None
        #: What was entered on this ladder, by the number of its rung; some of it may be struck out since.
        self.entered: dict[int, Trial] = {}

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
        from msgspec.structs import replace

        self.asked = replace(self.asked, **{name: text})

    def start(self) -> Ladder:
        """Plan the ladder that was asked for.

        Raises
        ------
        JobsheetError
            With a sentence, where something cannot be read.
        """
        asked = self.asked
        texts: dict[str, str] = {}
        if asked.kind in ("face", "side") and asked.width.strip():
            texts["width" if asked.grow == "depth" else "depth"] = asked.width
        if asked.spindle.strip():
            texts["spindle"] = asked.spindle
        if asked.feed.strip():
            texts["feed" if asked.kind in ("drill", "tap") else "feed_per_tooth"] = asked.feed
        milled = asked.kind in ("face", "side", "slot")
        self.ladder = plan(
            asked.machine, cutter=asked.cutter, material=asked.material, kind=asked.kind, units=self.units,
            grow=asked.grow if milled and asked.kind != "slot" else "", texts=texts, holding=asked.holding,
        )  # fmt: skip
        self.entered = {}
        return self.ladder

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
        trial = trial_of(
            ladder, rung, outcome=OUTCOMES[digit - 1], seconds=seconds, tachometer=tachometer, slipped=slipped, note=note,
            role=self.asked.role, date=today(), time=clock(),
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
        strike(self.ladder.machine.name, trial.id, today(), self.asked.role, words, clock())
        return trial

    # --- what it has shown ---

    @property
    def about(self) -> str:
        """The limit that this ladder is about."""
        return _ABOUT.get(self.ladder.process, "spindle-torque") if self.ladder is not None else "chatter"

    def before(self) -> Capacity | None:
        """What is known without any trial."""
        from jobsheet.reckoning.known_capacity import prior

        if self.ladder is None:
            return None
        return prior(
            self.about,
            self.ladder.process,
            self.ladder.cutter.kind,
            measured=is_measured(self.ladder.machine),
        )

    def after(self) -> Capacity | None:
        """What is known with all trials; None without any."""
        found = self.known()
        if found is None or self.ladder is None:
            return None
        return found.find(self.about, self.ladder.process, self.ladder.cutter.kind)

    def same_cuts(self) -> tuple[Trial, ...]:
        """The trials of such cuts: same process and kind of cutter."""
        ladder = self.ladder
        if ladder is None:
            return ()
        return tuple(
            one
            for one in self.log.standing
            if (one.process, one.cutter_kind) == (ladder.process, ladder.cutter.kind)
        )

    def size_at(self, share: float) -> float | None:
        """The size that asks for this share, between and beyond the rungs [m]; None where sizes do not scale."""
        ladder = self.ladder
        if ladder is None or ladder.grows == "size" or not ladder.rungs:
            return None
        points = [
            (asked.share, size)
            for rung in ladder.rungs
            if (asked := rung.of(self.about)) is not None
            and (size := size_of(rung, ladder.grows)) is not None
        ]
        if not points:
            return None
        for (s1, d1), (s2, d2) in pairwise(points):
            if s1 <= share <= s2:
                return d1 + (d2 - d1) * (share - s1) / max(s2 - s1, 1e-12)
        s, d = points[0] if share < points[0][0] else points[-1]
        return d * share / s

    def conclusion(self) -> Conclusion:
        """What to do now."""
        ladder = self.ladder
        if ladder is None:
            return Conclusion(translate("Proving", "Choose machine, cutter and metal, then plan the ladder."))
        if ladder.refused:
            return Conclusion(translate("Proving", "No ladder."), (ladder.refused,))
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
        if size is not None:
            words = translate("Proving", "Stop here. Plan such cuts up to {size}.").format(
                size=length_text(size, self.units)
            )
        elif last.outcome == CLEAN:
            words = translate("Proving", "The ladder is done: every rung ran clean.")
            lines.append(ladder.ends)
        else:
            words = translate("Proving", "Stop here.")
        if planned and ladder.grows == "size":
            asked = ladder.rungs[0].of(self.about)
            if asked is not None:
                most = planned * asked.demand / asked.share
                lines.append(
                    translate("Proving", "Plan no more than {torque} N·m in such cuts.").format(
                        torque=f"{most:.2f}"
                    )
                )
        return Conclusion(words, tuple(line for line in lines if line), planned)

    def _planned(self) -> float | None:
        """The share that such cuts may ask: what ends badly with at most the workshop's chance."""
        found = self.after()
        return found.planned or None if found is not None else None
