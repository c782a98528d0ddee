"""Opening and closing in place: the form of a step, of a set-up, or of the job,
and what it shows as things change.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QTimer
from PySide6.QtWidgets import QApplication

from jobsheet.edit.commands import GiveBack, HoldBy, SetField
from jobsheet.edit.finished_lines import OWNER, MoveLine, StrikeLine, line_number
from jobsheet.edit.history import Change
from jobsheet.gui.column.at_the_lines import elsewhere
from jobsheet.gui.column.header_form import HeaderForm
from jobsheet.gui.column.open_row import OpenRow
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.desk.problems_log import or_absent
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.edits.places_seen import plan_of
from jobsheet.gui.edits.remark_edits import RemarkEdits
from jobsheet.gui.forms.boxes import Line, Lines
from jobsheet.gui.forms.shown import Section
from jobsheet.gui.ink.look import look
from jobsheet.holdings.all_holdings import unsaid_of
from jobsheet.holdings.of_stock import at_odds, with_stock
from jobsheet.model.held_work import Holding
from jobsheet.operations import registry
from jobsheet.storage.words.stock_words import without_fact

if TYPE_CHECKING:
    from jobsheet.drawing.drawn import Drawing
    from jobsheet.gui.edits.picking import Picking
    from jobsheet.gui.forms.field import Field

translate = QCoreApplication.translate

#: The key of the form that belongs to no line: the job's own.
JOB = "job"
#: So long the hand rests before the finished part is drawn anew [ms].
RESTED = 250


class OpenRows:
    """One form is open at a time, or none."""

    def __init__(self, hand: Hand, remarks: RemarkEdits, moved: Callable[[], None]) -> None:
        self._hand = hand
        self._remarks = remarks
        self._moved = moved
        #: Told which place of the open step the cursor is in, from nought; less for none.
        self.place_chosen: Callable[[int], None] = lambda _place: None
        #: The layout that the open form was made for.
        self.form = ""
        #: How set-ups were held before another kind was chosen, by set-up and kind.
        self._left: dict[tuple[str, str], Holding] = {}

        self._part_later: QTimer | None = None

    def _part_when_rested(self) -> None:
        """The finished part is a solid: it is drawn when the hand rests, never between two keys."""
        from shiboken6 import isValid

        # The list is made anew with another look, and what waits for it went with the old one.
        if self._part_later is None or not isValid(self._part_later):
            self._part_later = QTimer(self._hand.ruled)
            self._part_later.setSingleShot(True)
            self._part_later.setInterval(RESTED)
            self._part_later.timeout.connect(self._draw_part)
        self._part_later.start()

    def _draw_part(self) -> None:
        """What the part shall be, over the job's form, if that is still open."""
        form = self._hand.ruled.opened
        if isinstance(form, HeaderForm) and form.key == JOB:
            from jobsheet.gui.desk.part_picture import part_pictures

            pictures: tuple[Drawing, ...] = or_absent(lambda: part_pictures(self._hand.desk), ())
            self._hand.column.keep_place(lambda: form.draw(pictures))

    @property
    def row(self) -> OpenRow | None:
        """The operation that is open."""
        opened = self._hand.ruled.opened
        return opened if isinstance(opened, OpenRow) else None

    # --- opening and closing ---

    def open(self, key: str) -> None:
        """Open a row or a heading in place, and close what was open."""
        hand, ruled = self._hand, self._hand.ruled
        if key == hand.opened_key:
            return
        ruled.open(None)
        if key == JOB or hand.desk.set_up(key) is not None:
            self._open_header(key)
        elif key in ruled.by_key:
            self._open_operation(key)
        hand.desk.history.focus(hand.opened_key)
        hand.column.reveal(key)
        self._moved()

    def open_at(self, key: str, rule: str) -> None:
        """Open what a remark is about, and put the keyboard on its line."""
        self.open(key)
        opened = self._hand.ruled.opened
        lines = opened.remark_lines if opened is not None else []
        line = next((line for line in lines if line.remark.rule == rule), None)
        if line is not None:
            line.setFocus(QtCore.Qt.FocusReason.TabFocusReason)

    def close(self) -> None:
        """Close what is open; the keyboard goes to its line."""
        hand, ruled = self._hand, self._hand.ruled
        key = hand.opened_key
        ruled.open(None)
        hand.desk.history.focus("")
        ruled.focus_line(key if key in ruled.by_key else ruled.chosen_key)
        self._moved()

    def toggle(self) -> None:
        """Open the chosen row, or close what is open."""
        if self._hand.opened_key:
            self.close()
        else:
            self.open(self._hand.ruled.chosen_key)

    def open_job(self) -> None:
        """Open the form of the title block."""
        self.open(JOB)

    def _form_now(self) -> str:
        now = look()
        return now.form(self._hand.ruled.width() + now.px(18))

    def _open_operation(self, key: str) -> None:
        """The form of an operation."""
        desk, ruled = self._hand.desk, self._hand.ruled
        _, operation = desk.job.find(key)
        self.form = self._form_now()
        row = OpenRow(desk.view(key), registry.kind(operation.kind), desk.job.units, self.form, ruled)
        row.typed.connect(lambda name, text: self._typed(key, name, text))
        row.place_chosen.connect(self.place_chosen)
        row.done.connect(
            lambda name, text, what, by_key: self._done(SetField(key, name, text, what), by_key=by_key)
        )
        row.offered.connect(lambda edits: self._remarks.take(key, edits))
        row.picks_wanted.connect(lambda name: self._pick(key, name))
        self._connect(row)
        self._fill(row)
        ruled.open(row)
        row.form.focus_first()

    def _typed(self, owner: str, name: str, text: str) -> None:
        """Something was written into a field: by a key, of which more may come, or chosen whole."""
        box = QApplication.focusWidget()
        by_key = isinstance(box, Line | Lines)
        command = self._held_again(owner, text) if name == "kind" else None
        or_absent(lambda: self._hand.desk.type(command or SetField(owner, name, text), by_key=by_key), None)
        field = self._field(owner, name) if by_key else None
        if field is not None and field.listed and field.box is box:
            self.picking.typed(owner, field)

    def _held_again(self, owner: str, kind: str) -> HoldBy | None:
        """A set-up goes back to a kind of holding whose facts were entered before; None where they were not.

        Who goes through the list with the arrows passes kinds that have none of the facts.
        """
        section, _, key = owner.partition(":")
        set_up = self._hand.desk.set_up(key)
        if section != "holding" or set_up is None:
            return None
        self._left[key, set_up.holding.kind] = set_up.holding
        known = self._left.get((key, kind))
        return HoldBy(owner, "kind", kind, holding=known) if known is not None else None

    def _done(self, command: SetField, *, by_key: bool) -> None:
        """Something was done in a field of several parts: a step of its own, or
        one that goes on while it is typed.
        """
        desk = self._hand.desk
        if not by_key:
            desk.history.break_merge()
        or_absent(lambda: desk.type(command, by_key=by_key), None)
        if not by_key:
            desk.history.break_merge()

    def give_back(self) -> None:
        """The value that the cursor is in is taken out and left as recommended;
        of rows that are chosen every one.
        """
        owner, name = self.field_in_hand()
        if not self._hand.opened_key:
            self._give_back_whole()
            return
        if self.row is None or not name:
            self._hand.say(translate("Window", "Put the cursor into a field of the step first."))
            return
        self._hand.desk.history.break_merge()
        if self._hand.do(GiveBack(owner, name)):
            self.let_go()
            proposed = self.row.form.fields[name].proposed if self.row is not None else ""
            self._hand.say(translate("Window", "As recommended: {text}.").format(text=proposed or "–"))

    def _give_back_whole(self) -> None:
        """Speed, feed, layers, width and pecks of the chosen steps are left as
        recommended, as one step of undo.
        """
        from jobsheet.reckoning.adviser.left_empty import given_back

        desk = self._hand.desk
        steps = [desk.job.find(key)[1] for key in self._hand.keys]
        able = [operation for operation in steps if given_back(operation) is not None]
        desk.history.break_merge()
        for operation in able:
            self._hand.do(GiveBack(operation.key, merge_key="give-back"))
        desk.history.break_merge()
        words = (
            translate("Window", "As recommended now: {count}.")
            if able
            else translate("Window", "Nothing is recommended for what is chosen.")
        )
        self._hand.say(
            words.format(
                count=translate("Window", "one step")
                if len(able) == 1
                else translate("Window", "{count} steps").format(count=len(able))
            )
        )

    def field_in_hand(self) -> tuple[str, str]:
        """Owner and name of the field that the cursor is in."""
        opened = self._hand.ruled.opened
        forms = (
            {opened.key: opened.form} if isinstance(opened, OpenRow) else getattr(opened, "forms", None) or {}
        )
        return next(
            ((owner, name) for owner, form in forms.items() if (name := form.field_in_hand())), ("", "")
        )

    def let_go(self) -> None:
        """Something typed is taken back: it counts in the box under the cursor too."""
        opened = self._hand.ruled.opened
        if isinstance(opened, OpenRow):
            opened.form.let_go()
        elif isinstance(opened, HeaderForm):
            for form in opened.forms.values():
                form.let_go()

    @cached_property
    def picking(self) -> Picking:
        """The list under a field."""
        from jobsheet.gui.edits.picking import Picking

        return Picking(self._hand, self._typed)

    def _field(self, owner: str, name: str) -> Field | None:
        """The field of an owner in what is open."""
        opened = self._hand.ruled.opened
        if isinstance(opened, HeaderForm):
            form = opened.forms.get(owner)
            return form.fields.get(name) if form is not None else None
        row = self.row
        return row.form.fields.get(name) if row is not None else None

    def _pick(self, owner: str, name: str) -> None:
        """List what a field can be filled with."""
        field = self._field(owner, name)
        if field is not None:
            self.picking.ask(owner, field)

    def _open_header(self, key: str) -> None:
        """The form of the job or of a set-up."""
        desk, ruled = self._hand.desk, self._hand.ruled
        close = translate("Window", "Close")
        self._left.clear()  # what was left in another form, or of another job, is not come back to
        form = HeaderForm(key, self._title(key), self._sections(key), desk.job.units, close, ruled)
        form.typed.connect(self._typed)
        form.picks_wanted.connect(self._pick)
        form.line_moved.connect(self._line_moved)
        form.gone_to.connect(lambda about: self.open_at(about.key, about.rule))
        self._connect(form)
        self._fill_header(form)
        ruled.open(form)
        form.focus_first()

    def _line_moved(self, name: str, by: int) -> None:
        """A line of the finished part goes up or down, and the hand with it; struck,
        the hand goes to the one before it.
        """
        number = line_number(name)
        self._hand.desk.history.break_merge()
        done = or_absent(lambda: self._hand.do(MoveLine(number, by) if by else StrikeLine(number)), None)
        beside = number + by if by else max(number - 1, 1)
        if (done or not by) and (field := self._field(OWNER, f"line_{beside}")) is not None:
            field.go_in()

    def _connect(self, form: OpenRow | HeaderForm) -> None:
        """Hear what both kinds of form report."""
        form.mended.connect(self._remarks.mend)
        form.dismissed.connect(self._remarks.dismiss)
        form.previewed.connect(self._remarks.preview)
        form.closed.connect(lambda _key: self.close())

    def _sections(self, key: str) -> tuple[Section, ...]:
        """The sections of the job's form or of a set-up's."""
        desk = self._hand.desk
        return desk.job_sections() if key == JOB else desk.set_up_sections(key)

    def _title(self, key: str) -> str:
        """The title over the job's form or a set-up's."""
        if key == JOB:
            return translate("Window", "Part, stock and machine")
        set_up = self._hand.desk.set_up(key)
        number = set_up.number if set_up else 0
        return translate("Window", "Set-up {number}").format(number=number)

    # --- what it shows ---

    def _fill(self, row: OpenRow) -> None:
        """An operation as it stands, with its figures and what is said of it."""
        key, desk = row.key, self._hand.desk
        if row.form.rows is not None:
            setting = desk.reckoned.settings.get(key) if desk.reckoned else None
            row.form.rows.dial_with(setting.machine if setting else None)
            row.margin.show_plan(or_absent(lambda: plan_of(desk.job, key), None))
        row.put(desk.view(key), desk.operation_fields(key), desk.outcome(key), why_not=desk.why_not(key))
        row.say(desk.remarks_of(key), desk.reminders_of(key), desk.prints(key), self._remarks.offer)

    def _fill_header(self, form: HeaderForm) -> None:
        """The job or a set-up as it stands."""
        desk = self._hand.desk
        sections = self._sections(form.key)
        form.ask(sections)
        form.put(self._title(form.key), desk.header_fields(sections))
        if form.key == JOB:
            form.ask_for(_only_words(desk))
            self._part_when_rested()
        else:
            from jobsheet.gui.desk.holding_pictures import holding_pictures

            form.ask_for(_unsaid_words(desk, form.key))
            form.draw(or_absent(lambda: holding_pictures(desk, form.key), ()))
        at_steps = elsewhere(desk.remarks, desk.job) if form.key == JOB else ()
        form.say(desk.remarks_about(form.key), self._remarks.offer, at_steps)

    def refresh(self) -> None:
        """Show the open form and its figures as they stand."""
        opened = self._hand.ruled.opened
        if isinstance(opened, OpenRow):
            self._fill(opened)
        elif isinstance(opened, HeaderForm):
            # What is said of one line must not push another out from under the hand.
            self._hand.column.keep_place(lambda: self._fill_header(opened))
            return
        if opened is not None:
            self._hand.ruled.arrange()

    def changed(self, change: Change) -> None:
        """An edit was made: what is gone closes, and what takes another unit is made anew."""
        ruled = self._hand.ruled
        opened = ruled.opened
        if opened is not None and opened.key != JOB and opened.key not in ruled.by_key:
            ruled.open(None)
        if change.before.job.units != change.after.job.units and opened is not None:
            # The unit a bare number takes stands in every box: make the form anew.
            ruled.open(None)
            self.open(opened.key)
        self.refresh()

    def resized(self) -> None:
        """A form made for another layout is made anew."""
        row = self.row
        if row is not None and self._form_now() != self.form:
            self._hand.ruled.open(None)
            self._open_operation(row.key)


def _only_words(desk: Desk) -> str:
    """What the words of the stock say that became no fact, in one line."""
    if not (left := without_fact(desk.job.stock)):
        return ""
    said = ", ".join(f"“{one}”" for one in left)
    return translate("Window", "Said of the stock in words only, which no rule reads: {words}").format(
        words=said
    )


def _unsaid_words(desk: Desk, key: str) -> str:
    """What should still be said of how a set-up is held, in one line."""
    set_up = desk.set_up(key)
    if set_up is None:
        return ""
    if differs := at_odds(set_up, desk.job.stock):
        return differs[0].upper() + differs[1:]
    titles = [entry.title.lower() for entry in unsaid_of(with_stock(set_up.holding, desk.job.stock))]
    if not titles:
        return ""
    if len(titles) == 1:
        return translate("Window", "To be said yet of the holding: {facts}").format(facts=titles[0])
    words = translate("Window", "{count} things to say of the holding: {facts}")
    return words.format(count=len(titles), facts=", ".join(titles))
