"""What the bench entry knows: the plan, the day, what was said so far, what
stands in the record. No widget here.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from msgspec.structs import replace
from PySide6.QtCore import QCoreApplication

from jobsheet.errors import CommandError, JobsheetError, QuantityError
from jobsheet.gui.desk.last_role import LONGEST, keep_role, last_role
from jobsheet.gui.desk.paces_known import paces_known
from jobsheet.gui.desk.saved_plan import SavedPlan, saved_plan
from jobsheet.gui.places.ran.ran_asked import RanAsked, SizeAsked, StepAsked, asked_of
from jobsheet.gui.places.ran.ran_said import Said, as_said, difference, matter, standing
from jobsheet.model.what_ran import CHANGES, NOT_CUT, Entry
from jobsheet.reckoning.paces import SET_UP, TOGETHER, Pace
from jobsheet.reckoning.run_trials import trial_of_entry
from jobsheet.reckoning.run_words import outcome_words
from jobsheet.reckoning.runs_kept import Kept, entry_of, keep, this_moment
from jobsheet.storage.card_files import find_card
from jobsheet.storage.kept.own_pace import OwnPace, keep_pace, own_pace
from jobsheet.storage.records.run_log import path_beside, read_runs
from jobsheet.units.grammar import read

if TYPE_CHECKING:
    from jobsheet.gui.desk.desk import Desk

translate = QCoreApplication.translate
#: What may have run otherwise than planned: the field of the entry, what it asks, the unit of a bare number.
RAN = (("speed", "spindle speed", "rpm"), ("depth", "length", ""), ("seconds", "time", "s"))
#: More minutes than one set-up takes anybody.
MOST = 24 * 60


class RanDesk:
    """One set-up on one day at a time."""

    def __init__(self, desk: Desk, on: str) -> None:
        self._desk = desk
        self._on = on
        self.plan: SavedPlan | None = None
        self.asked: RanAsked | None = None
        self.day = this_moment()[0]
        self.role = last_role()
        self.said = Said()
        #: What stands in the record of that day and set-up, and what was taken back of it.
        self.kept: dict[tuple[str, str], tuple[Entry, ...]] = {}
        self.back: dict[tuple[str, str], tuple[Entry, ...]] = {}
        #: Texts in fields that are no entry yet, with the sentence why; by (matter, field).
        self.unread: dict[tuple[str, str, str], tuple[str, str]] = {}
        self.to_proof = True
        self.problem = ""
        #: By what real times differ from planned ones here, where enough runs are written down.
        self.paces: tuple[Pace, ...] = ()
        self._touched: set[tuple[str, str]] = set()
        self._trials: dict[Entry, bool] = {}
        self._history = desk.history
        self.load()

    # --- what there is ---

    @property
    def units(self) -> str:
        """The system of the job."""
        return self.plan.job.units if self.plan is not None else "mm"

    @property
    def machine(self) -> str:
        """The machine by its title."""
        name = self.plan.job.machine if self.plan is not None else self._desk.job.machine
        try:
            return find_card(name).title
        except JobsheetError:
            return name

    def load(self) -> None:
        """Read plan and record anew; what was said here and not kept stays said."""
        self.problem = ""
        if self._desk.history is not self._history:
            # Another job lies on the desk: what was said was not said of that one.
            self._history = self._desk.history
            self.said, self.unread, self._touched = Said(), {}, set()
        try:
            self.plan = saved_plan(self._desk)
            if self.plan is not None:
                self._base = entry_of(self.plan.path, self.plan.job, self.day, self.role)
        except (JobsheetError, OSError) as error:
            self.plan, self.problem = None, str(error)
        if self.plan is None:
            self.asked, self.kept, self.back, self.said = None, {}, {}, Said()
            return
        job = self.plan.job
        chosen = next((set_up for set_up in job.set_ups if set_up.key == self._on), job.set_ups[0])
        self._on = chosen.key
        self.asked = asked_of(self.plan, chosen)
        self._trials.clear()
        try:
            runs, problems = read_runs(self.plan.path)
        except JobsheetError as error:
            self.problem = str(error)
            return
        if problems:
            self.problem = f"{path_beside(self.plan.path).name}: {problems[0]}"
        here = [entry for entry in runs.entries if entry.date == self.day and entry.machine == job.machine]
        gone = {entry.takes_back for entry in runs.back}
        self.kept = standing(self.asked, (entry for entry in here if entry.id not in gone))
        self.back = standing(self.asked, (entry for entry in here if entry.id in gone))
        self._merge(as_said(self.kept))
        self.paces = paces_known(self.plan.path)

    def times_as_here(self) -> None:
        """Have times shown by the factors of what ran here, or again as they are
        planned; no plan is changed by it.
        """
        if own_pace() is not None:
            keep_pace(None)
            return
        found = {pace.kind: pace for pace in self.paces}
        keep_pace(
            OwnPace(
                set_up=found[SET_UP].factor if SET_UP in found else 1.0,
                work=found[TOGETHER].factor if TOGETHER in found else 1.0,
                runs=max((pace.runs for pace in self.paces), default=0),
                day=self.day,
            )
        )

    def _merge(self, said: Said) -> None:
        """What was said here wins over what stands in the record; what was taken back here is gone."""
        own, touched, asked = self.said, self._touched, self.asked
        assert asked is not None
        steps = {step_asked.key for step_asked in asked.steps}
        sizes = {size_asked.key for size_asked in asked.sizes}
        self.said = Said(
            steps=_merged("step", said.steps, own.steps, touched, steps),
            sizes=_merged("size", said.sizes, own.sizes, touched, sizes),
            minutes=own.minutes if ("minutes", "") in touched else said.minutes,
            change=own.change if ("change", "") in touched else said.change,
        )

    def to_day(self, day: str) -> None:
        """Another day; what was said and is not kept was said of that one."""
        self.day = day
        there = {matter(entry): entry for entry in self.said.all()}
        self._touched &= set(there)
        for of in self._touched:
            self._put(*of, replace(there[of], date=day))
        self.load()

    def go(self, set_up: str) -> None:
        """To another set-up; what was not kept is forgotten."""
        self._on = set_up
        self.said, self.unread, self._touched = Said(), {}, set()
        self.to_proof = True
        self.load()

    @property
    def unkept(self) -> bool:
        """Whether something was said that is not in the record."""
        return any(difference(self.said, self.kept)) or bool(self.unread)

    # --- what is said ---

    def _entry(self, about: str, key: str = "") -> Entry:
        """The entry of a matter as it is, or a new one."""
        there = {matter(entry): entry for entry in self.said.all()}
        entry = there.get((about, key))
        return replace(entry or self._base, about=about, key=key, date=self.day, id="", time=self._base.time,
                       plan=self._base.plan, revision=self._base.revision, job=self._base.job)  # fmt: skip

    def _put(self, about: str, key: str, entry: Entry | None) -> None:
        """Say something, or nothing any more."""
        self._touched.add((about, key))
        if about in ("minutes", "change"):
            self.said = replace(self.said, **{about: entry})
            return
        name = f"{about}s"
        before = getattr(self.said, name)
        after = {of: one for of, one in before.items() if of != key}
        self.said = replace(self.said, **{name: after | ({key: entry} if entry is not None else {})})

    def outcome(self, step: StepAsked, outcome: str) -> None:
        """How a step went; layer and what slipped belong to the outcome before and are asked anew."""
        entry = self._entry("step", step.key)
        if outcome == NOT_CUT:
            entry = replace(entry, speed=None, depth=None, seconds=None, length=None)
        self._put(
            "step",
            step.key,
            replace(entry, number=step.number, step=step.named, outcome=outcome, layer=0, slipped=""),
        )

    def forget(self, step: StepAsked) -> None:
        """Nothing is said of that step."""
        self._put("step", step.key, None)
        self.unread = {of: why for of, why in self.unread.items() if of[:2] != ("step", step.key)}

    def set(self, step: StepAsked, **said: object) -> None:
        """Layer, or what slipped, of a step that has its outcome."""
        if step.key in self.said.steps:
            self._put("step", step.key, replace(self._entry("step", step.key), **said))

    def ran(self, step: StepAsked, name: str, text: str) -> None:
        """What really ran: speed, depth of the layer or seconds; empty is as planned."""
        if step.key not in self.said.steps:
            return
        _, asks, unit = next(one for one in RAN if one[0] == name)
        value = self._number(("step", step.key, name), text, asks, unit)
        if ("step", step.key, name) not in self.unread:
            self._put("step", step.key, replace(self._entry("step", step.key), **{name: value}))

    def found(self, size: SizeAsked, text: str) -> None:
        """A size that was found."""
        value = self._number(("size", size.key, ""), text, "length", "")
        if ("size", size.key, "") in self.unread:
            return
        base = replace(self._entry("size", size.key), number=size.number, size=size.size)
        self._put("size", size.key, replace(base, found=value) if value is not None else None)

    def minutes(self, name: str, text: str) -> None:
        """Minutes to set (`setting_up`) or to cut (`cutting`); empty is not said."""
        of = ("minutes", "", name)
        value = self._number(of, text, "time", "min")
        if value is not None and value > MOST * 60:
            self.unread[of] = (text, translate("Ran", "{text} minutes is more than a day.").format(text=text))
        if of in self.unread:
            return
        assert self.asked is not None
        entry = replace(self._entry("minutes"), **{name: value, "set_up": self.asked.set_up.number})
        self._put("minutes", "", entry if (entry.setting_up, entry.cutting) != (None, None) else None)

    def _number(self, of: tuple[str, str, str], text: str, asks: str, unit: str) -> float | None:
        """A number as it is typed, a bare one in that unit; where it cannot be read, that
        is remembered with the sentence why.
        """
        self.unread.pop(of, None)
        words = text.strip()
        if not words:
            return None
        bare = words.replace(",", ".").replace(".", "", 1).isdigit()
        try:
            value = read(f"{words} {unit}" if bare and unit else words, asks, self.units)
        except QuantityError as error:
            self.unread[of] = (text, str(error))
            return None
        if value < 0 or (value == 0 and of[0] != "minutes"):
            self.unread[of] = (text, translate("Ran", "“{text}” must be above nought.").format(text=words))
            return None
        return value

    @property
    def changes(self) -> tuple[str, ...]:
        """The ready words that are chosen."""
        words = self.said.change.change if self.said.change is not None else ""
        return tuple(word for word in CHANGES if word in words.split(", "))

    def change(self, word: str) -> None:
        """Choose a ready word, or no longer; `nothing` stands alone."""
        chosen = set(self.changes) ^ {word}
        chosen = chosen & {word} if word == CHANGES[0] else chosen - {CHANGES[0]}
        self._change(change=", ".join(change for change in CHANGES if change in chosen))

    def note(self, text: str) -> None:
        """What one would change, in one's own words."""
        self._change(note=" ".join(text.split()))

    def _change(self, **said: str) -> None:
        assert self.asked is not None
        entry = replace(self._entry("change"), set_up=self.asked.set_up.number, **said)
        self._put("change", "", entry if entry.change or entry.note else None)

    def by(self, role: str) -> None:
        """Who cut, by role."""
        self.role = " ".join(role.split())[:LONGEST]

    # --- what would be kept ---

    def offered(self) -> tuple[Entry, ...]:
        """The steps that would count in the proof log with the next keeping."""
        if self.plan is None:
            return ()
        return tuple(
            entry
            for entry in difference(self.said, self.kept)[0]
            if entry.about == "step" and self._teaches(entry)
        )

    def _teaches(self, entry: Entry) -> bool:
        """Whether a step is a trial; worked out once for the same words."""
        assert self.plan is not None
        if entry.outcome in ("", NOT_CUT):
            return False
        if entry not in self._trials:
            try:
                self._trials[entry] = trial_of_entry(entry, self.plan.reckoned) is not None
            except JobsheetError:
                self._trials[entry] = False
        return self._trials[entry]

    def offered_words(self) -> str:
        """`Step 70 noisy at 4 mm counts in the proof log of Knee mill K-2.`; empty where nothing does."""
        steps = (
            {step_asked.key: step_asked for step_asked in self.asked.steps} if self.asked is not None else {}
        )
        said = [
            f"{entry.number} {_at(entry, steps[entry.key], self.units)}"
            for entry in self.offered()
            if entry.key in steps
        ]
        if not said:
            return ""
        form = (
            translate("Ran", "Steps {steps} go to the proof log of {machine}")
            if len(said) > 1
            else translate("Ran", "Step {steps} goes to the proof log of {machine}")
        )
        return form.format(steps=", ".join(said), machine=self.machine)

    def incomplete(self) -> str:
        """What has to be said or mended before anything is kept; empty where nothing has."""
        if self.plan is None or self.asked is None:
            return translate("Ran", "The job has no file yet: save it first.")
        for step in self.asked.steps:
            entry = self.said.steps.get(step.key)
            if entry is not None and entry.outcome == "slipped" and not entry.slipped:
                return translate("Ran", "Step {number} slipped: say what, vice, holder or shank.").format(
                    number=step.number
                )
        if self.unread:
            (about, key, _), (text, why) = next(iter(self.unread.items()))
            return translate("Ran", "{place}: {why}").format(place=self._place(about, key), why=why or text)
        return ""

    def _place(self, about: str, key: str) -> str:
        """Where on the screen that is."""
        assert self.asked is not None
        if about == "step":
            return next(
                (
                    translate("Ran", "Step {n}").format(n=step_asked.number)
                    for step_asked in self.asked.steps
                    if step_asked.key == key
                ),
                "",
            )
        if about == "size":
            return next(
                (
                    translate("Ran", "Size {n}").format(n=size_asked.size)
                    for size_asked in self.asked.sizes
                    if size_asked.key == key
                ),
                "",
            )
        return translate("Ran", "Minutes")

    def keep(self) -> Kept:
        """Keep what was said, as one. Raises JobsheetError with a sentence; nothing is written then."""
        before = {entry.id for some in self.kept.values() for entry in some}
        plan = self.plan.code if self.plan is not None else ""
        self.load()
        if missing := self.incomplete():
            raise CommandError(missing)
        assert self.plan is not None
        if self.plan.code != plan:
            raise CommandError(
                translate("Ran", "The job was saved anew meanwhile: look once more, then keep it.")
            )
        if before != {entry.id for some in self.kept.values() for entry in some}:
            raise CommandError(
                translate(
                    "Ran",
                    "Something else was kept for this day meanwhile, and is shown now: look once more, then keep it.",
                )
            )
        fresh, back = difference(self.said, self.kept)
        if not fresh and not back:
            raise CommandError(translate("Ran", "There is nothing new to keep."))
        plan_now = self.plan
        entries = tuple(replace(entry, role=self.role, time=self._base.time) for entry in fresh)
        leave = () if self.to_proof else tuple(entry.key for entry in entries)
        done = keep(
            plan_now.path, entries, lambda: plan_now.reckoned, back=back, leave_out=leave, role=self.role
        )
        keep_role(self.role)
        self._touched.clear()
        self.load()
        return done

    def take_back(self) -> Kept:
        """Take back all that is kept of this set-up on this day; it stays on the
        screen, to be mended and kept again.
        """
        if self.plan is None or not self.kept:
            raise CommandError(translate("Ran", "Nothing is kept of this day yet."))
        plan = self.plan
        back = tuple(entry for some in self.kept.values() for entry in some)
        done = keep(plan.path, (), lambda: plan.reckoned, back=back, role=self.role)
        self._touched |= set(self.kept)
        self.load()
        return done


def _merged(
    about: str,
    found: Mapping[str, Entry],
    own: Mapping[str, Entry],
    touched: set[tuple[str, str]],
    asked: set[str],
) -> dict[str, Entry]:
    """By key: one's own where it was touched here, else what stands in the record."""
    rest = {key: entry for key, entry in found.items() if (about, key) not in touched}
    return rest | {key: entry for key, entry in own.items() if (about, key) in touched and key in asked}


def _at(entry: Entry, step: StepAsked, units: str) -> str:
    """`noisy at 4 mm`: the depth of a layer where it is known."""
    if entry.depth is not None or not step.one_deep:
        return outcome_words(entry, units)
    words, comma, rest = outcome_words(entry, units).partition(",")
    return f"{words} at {step.one_deep}{comma}{rest}"
