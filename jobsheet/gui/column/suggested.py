"""What the catalogue would write into the fields of the open row: shown as such, written only when pressed."""

from __future__ import annotations

from PySide6.QtCore import QCoreApplication, QRect, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from jobsheet.gui.column.remarks import INDENT
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.forms.shown import Suggested
from jobsheet.gui.ink import ink
from jobsheet.gui.ink.look import look

#: A suggestion with its reason and its button.
LINE = 40

translate = QCoreApplication.translate


class Suggestions(QWidget):
    """One line with all suggestions; opened, a line for each with its reason and a button that writes it in."""

    taken = Signal(str, str)
    height_changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.items: tuple[Suggested, ...] = ()
        self.buttons: list[Button] = []
        self.more = Button(translate("Suggestions", "Why"), self, Manner.LINK)
        self.more.setCheckable(True)
        self.more.toggled.connect(self._toggle)
        self._heights: list[int] = []
        self.hide()

    def put(self, items: tuple[Suggested, ...]) -> bool:
        """Show these; whether anything changed."""
        if items == self.items:
            return False
        self.items = items
        for old in self.buttons:
            old.hide()
            old.deleteLater()
        self.buttons = []
        for item in items:
            words = translate("Suggestions", "Write {text}").format(text=item.text)
            button = Button(words, self, in_row=True)
            button.setAccessibleName(
                translate("Suggestions", "Write {text} into {field}").format(text=item.text, field=item.title)
            )
            button.setAccessibleDescription(self._reason(item))
            button.clicked.connect(lambda _=False, one=item: self.taken.emit(one.name, one.text))
            button.setVisible(self.more.isChecked())
            self.buttons.append(button)
        self.setVisible(bool(items))
        self.setAccessibleName(
            translate("Suggestions", "Suggested by the catalogue: {text}").format(text=self._all())
        )
        self.update()
        return True

    def stops(self) -> list[QWidget]:
        """What Tab stops at."""
        return [self.more, *self.buttons] if self.items else []

    def _all(self) -> str:
        """All suggestions in one line."""
        return ", ".join(f"{item.title.lower()} {item.text}" for item in self.items)

    @staticmethod
    def _reason(item: Suggested) -> str:
        """Why, and where that comes from."""
        return translate("Suggestions", "{why}; {source}").format(why=item.why, source=item.source)

    def _toggle(self, on: bool) -> None:
        """Open or close the reasons."""
        self.more.setText(translate("Suggestions", "Hide") if on else translate("Suggestions", "Why"))
        for button in self.buttons:
            button.setVisible(on)
        self.height_changed.emit()

    def _wide(self, taken: int) -> int:
        """The width left for words beside something so wide [px]."""
        now = look()
        return self.width() - now.px(INDENT) - taken - now.px(22)

    def arrange(self, width: int) -> int:
        """Place the buttons; the height needed at a width."""
        if not self.items:
            return 0
        now = look()
        self.resize(width, self.height())
        hint = self.more.sizeHint()
        self.more.setGeometry(width - now.px(10) - hint.width(), 0, hint.width(), hint.height())
        high = ink.paragraph_height(now, self._all(), now.body, self._wide(hint.width()))
        top = max(hint.height(), high + now.px(18))
        self._heights = [top]
        if self.more.isChecked():
            for item, button in zip(self.items, self.buttons, strict=True):
                hint = button.sizeHint()
                words = ink.paragraph_height(now, self._reason(item), now.caption, self._wide(hint.width()))
                high = max(now.px(LINE), words + now.px(28))
                button.setGeometry(
                    width - now.px(10) - hint.width(),
                    top + (high - hint.height()) // 2,
                    hint.width(),
                    hint.height(),
                )
                top += high
                self._heights.append(top)
        return top

    def paintEvent(self, _event: QPaintEvent) -> None:  # noqa: N802
        """The caption in pencil, the line, and the reasons when they are open."""
        if not self.items or not self._heights:
            return
        now = look()
        with QPainter(self) as painter:
            ink.horizontal(painter, now.colour("rule"), 0, self.width(), 0)
            caption = QRect(now.px(14), now.px(9), now.px(INDENT - 18), now.px(18))
            ink.write(painter, now, caption, translate("Suggestions", "suggested"), now.label, "pencil")
            wide = self._wide(self.more.width())
            text = QRect(now.px(INDENT), now.px(9), wide, self.height())
            ink.paragraph(painter, now, text, self._all(), now.body, "pencil")
            for top, item, button in zip(self._heights, self.items, self.buttons, strict=False):
                if not self.more.isChecked():
                    break
                wide = self._wide(button.width())
                head = QRect(now.px(INDENT), top + now.px(4), wide, now.px(18))
                ink.write(painter, now, head, item.title, now.body)
                why = QRect(now.px(INDENT), top + now.px(21), wide, self.height())
                ink.paragraph(painter, now, why, self._reason(item), now.caption, "pencil")
