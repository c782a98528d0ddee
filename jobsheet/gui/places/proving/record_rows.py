"""The record of a machine as rows: every trial and every mark that the machine changed, with what
may be done to it. No widget here.
"""

from __future__ import annotations

from msgspec import Struct
from PySide6.QtCore import QCoreApplication

from jobsheet.model.trials import CHANGES, Trial
from jobsheet.reckoning.worked_anew import anew
from jobsheet.storage.records.proof_log import Log

translate = QCoreApplication.translate


class RecordRow(Struct, frozen=True, kw_only=True):
    """One record. `number` counts as they were entered; `lead` is what was done,
    `under` the rest of what is known.

    `struck` says why it no longer counts, and is empty where it does.
    """

    record: Trial
    number: int
    when: str
    lead: str
    size: str
    under: str
    outcome: str
    struck: str = ""
    kept: bool = False
    invented: bool = False

    @property
    def id(self) -> str:
        """The id of its record."""
        return self.record.id

    def named(self) -> str:
        """What it is called in a question."""
        return ", ".join(
            part
            for part in (
                translate("Record", "no. {number}").format(number=self.number),
                self.lead,
                self.size,
                self.outcome,
            )
            if part
        )

    def spoken(self) -> str:
        """All of it in one line."""
        state = translate("Record", "struck out: {why}").format(why=self.struck) if self.struck else ""
        parts = (f"{self.number}", self.when, self.lead, self.size, self.outcome, self.under, state)
        return ", ".join(part for part in parts if part)


def record_rows(log: Log) -> tuple[RecordRow, ...]:
    """The rows of a log, the newest first."""
    place = {id_: number for number, id_ in enumerate(log.written, 1)}
    struck = log.struck
    kept = {trial.keeps for trial in log.marks if trial.keeps and trial.id not in struck}
    now = {trial.id: trial for trial in anew(log.trials)}
    shown = [trial for trial in log.records if trial.is_cut or trial.changed]
    # What was written down in the same second stands as it was entered.
    shown.sort(key=lambda trial: (trial.date, trial.time, not trial.changed, place.get(trial.id, 0)))
    rows = [
        RecordRow(
            record=trial, number=place.get(trial.id, 0), when=" ".join(word for word in (trial.date, trial.time[:5]) if word),
            lead=_lead(trial), size=_size(trial), under=_under(trial, now.get(trial.id, trial)), outcome=trial.outcome, kept=trial.id in kept,
            struck=_why(struck[trial.id]) if trial.id in struck else "", invented=trial.id in log.shipped,
        )
        for trial in reversed(shown)
    ]  # fmt: skip
    return tuple(rows)


def _why(strike: Trial) -> str:
    """When and why it was struck out."""
    parts = (strike.date, strike.note or translate("Record", "no reason given"))
    return ", ".join(part for part in parts if part)


def _lead(trial: Trial) -> str:
    if trial.changed:
        return translate("Record", "The machine changed: {what}").format(what=trial.changed)
    return trial.process


def _size(trial: Trial) -> str:
    """Its sizes as they were typed: `6 mm wide, 2 mm deep`, `M8, hole 6.8 mm, 12 mm deep`."""
    words = {
        "thread": "{size}",
        "hole": translate("Record", "hole {size}"),
        "width": translate("Record", "{size} wide"),
        "depth": translate("Record", "{size} deep"),
    }
    typed = trial.one_cut()
    return ", ".join(text.format(size=typed[name]) for name, text in words.items() if typed.get(name))


def _under(trial: Trial, now: Trial) -> str:
    if trial.changed:
        about = limit_words(trial.changed)
        words = translate("Record", "what was known of {about} before says less").format(about=about)
        return "; ".join(part for part in (words, trial.note, trial.role) if part)
    job = translate("Record", "of a job: {job}").format(job=trial.job) if trial.job else ""
    parts = [
        job,
        trial.cutter,
        trial.material,
        *_shares(trial, now),
        trial.role,
        trial.note.replace("\n", " / "),
    ]
    return " · ".join(part for part in parts if part)


def limit_words(what: str) -> str:
    """The limits that a change concerns, in words."""
    names = {"spindle-torque": translate("Record", "torque"), "chatter": translate("Record", "chatter")}
    return translate("Record", " and ").join(names[change] for change in CHANGES[what])


def _shares(trial: Trial, now: Trial) -> list[str]:
    """What it asked of each learned limit, then and as it is worked out now where that differs."""
    words = []
    for asked in trial.asked:
        then, today = f"{asked.share * 100:.0f} %", now.of(asked.limit)
        name = (
            translate("Record", "of the peak torque")
            if asked.limit == "spindle-torque"
            else translate("Record", "of what its class carries")
        )
        again = f"{today.share * 100:.0f} %" if today is not None else then
        if again != then:
            words.append(
                translate("Record", "{then} then, {now} now {of}").format(then=then, now=again, of=name)
            )
        else:
            words.append(f"{then} {name}")
    return words
