"""The help: a line to find by, the pages at the left, the one that is read at the
right. Esc goes back to where one was.
"""

from __future__ import annotations

from PySide6 import QtCore
from PySide6.QtCore import QCoreApplication, QEvent, QObject
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QApplication,
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from jobsheet.gui.desk.help_topic import page_near
from jobsheet.gui.desk.place import Visit
from jobsheet.gui.forms.buttons import Button, Manner
from jobsheet.gui.ink.look import look
from jobsheet.gui.ink.style_sheets import scroll_style
from jobsheet.gui.places.help.page_view import PageView
from jobsheet.review.pages import help_pages
from jobsheet.review.pages.one_page import Page

translate = QCoreApplication.translate
_ID = QtCore.Qt.ItemDataRole.UserRole
_WALKING = (
    QtCore.Qt.Key.Key_Up,
    QtCore.Qt.Key.Key_Down,
    QtCore.Qt.Key.Key_PageUp,
    QtCore.Qt.Key.Key_PageDown,
)


def show_help(visit: Visit) -> HelpWindow:
    """The page of what has the focus, or of what is asked about; one window of help is open at a time."""
    focus = QApplication.focusWidget()
    own = visit.pages()
    window = next(
        (
            widget
            for widget in QApplication.topLevelWidgets()
            if isinstance(widget, HelpWindow) and widget.isVisible()
        ),
        None,
    )
    asked_inside = window is not None and (focus is None or window.isAncestorOf(focus))
    if window is None:
        around = QApplication.activeModalWidget() or (focus.window() if focus is not None else visit.parent)
        window = HelpWindow(visit, focus, around)
        window.show()
    if visit.about:
        window.open_page(visit.about)
    elif not asked_inside:
        window.turn_to(page_near(focus, own))
    window.activateWindow()
    return window


class HelpWindow(QDialog):
    """Two sheets: the list and the page."""

    def __init__(self, visit: Visit, came_from: QWidget | None, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAttribute(QtCore.Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(translate("Help", "Help"))
        now = look()
        self._own = visit.pages()
        self._came_from = came_from
        self._been: list[Page] = []
        self.shown: Page | None = None
        self.line = QLineEdit(self)
        self.line.setMinimumHeight(now.px(36))
        self.line.setPlaceholderText(translate("Help", "find: quill, spot, tight, places …"))
        self.line.setAccessibleName(translate("Help", "Find a page"))
        self.line.textChanged.connect(self._list)
        self.line.installEventFilter(self)
        self.list = QListWidget(self)
        self.list.setAccessibleName(translate("Help", "Pages"))
        self.list.setUniformItemSizes(True)
        self.list.verticalScrollBar().setStyleSheet(scroll_style(now))
        self.list.currentItemChanged.connect(self._chosen)
        self.view = PageView(self)
        self.back = Button(translate("Help", "Back"), self, Manner.LINK)
        self.back.clicked.connect(self.go_back)
        self._lay_out()
        self.resize(now.px(900), now.px(600))
        self._list("")

    def _lay_out(self) -> None:
        """The list at the left, the page at the right."""
        now = look()
        scroll = QScrollArea(self)
        scroll.setWidgetResizable(True)
        scroll.setWidget(self.view)
        scroll.setFocusPolicy(QtCore.Qt.FocusPolicy.StrongFocus)
        scroll.setAccessibleName(translate("Help", "The page"))
        scroll.verticalScrollBar().setStyleSheet(scroll_style(now))
        left, right, whole = QVBoxLayout(), QVBoxLayout(), QHBoxLayout(self)
        left.addWidget(self.line)
        left.addWidget(self.list, 1)
        close = Button(translate("Help", "Close"), self)
        close.clicked.connect(self.close)
        foot = QHBoxLayout()
        foot.addWidget(self.back)
        foot.addStretch(1)
        foot.addWidget(close)
        right.addWidget(scroll, 1)
        right.addLayout(foot)
        whole.addLayout(left, 2)
        whole.addLayout(right, 3)

    # --- which page ---

    def _page(self, id_: str) -> Page | None:
        return next((page for page in self._own if page.id == id_), None) or help_pages.page(id_)

    def open_page(self, id_: str) -> None:
        """Show a page; the one before it is a step back."""
        self.turn_to(self._page(id_))

    def open_help(self, topic: str) -> None:
        """A link of the page was pressed."""
        self.open_page(topic)

    def turn_to(self, page: Page | None) -> None:
        """The same for a page that is in no list."""
        if page is None or page == self.shown:
            return
        if self.shown is not None:
            self._been.append(self.shown)
        self._show(page)

    def _show(self, page: Page) -> None:
        self.shown = page
        leads = [found for id_ in page.see if (found := self._page(id_)) is not None]
        self.view.put(page, leads)
        self.back.why_not("" if self._been else translate("Help", "This is the first page."))
        self.list.blockSignals(True)
        rows = (row for row in range(self.list.count()) if self.list.item(row).data(_ID) == page.id)
        self.list.setCurrentRow(next(rows, -1))
        self.list.blockSignals(False)

    def go_back(self) -> None:
        """The page that was read before."""
        if self._been:
            self._show(self._been.pop())

    def _list(self, words: str) -> None:
        """Every page that has these words."""
        asked = words.casefold().split()
        own = [page for page in self._own if all(word in page.text.casefold() for word in asked)]
        self.list.blockSignals(True)
        self.list.clear()
        for page in (*own, *help_pages.found(words)):
            item = QListWidgetItem(
                translate("Help", "{title}  · {sort}").format(title=page.title, sort=page.sort)
            )
            item.setData(_ID, page.id)
            self.list.addItem(item)
        self.list.blockSignals(False)
        if asked and self.list.count():
            self.list.setCurrentRow(0)

    def _chosen(self, item: QListWidgetItem | None) -> None:
        if item is not None:
            self.open_page(str(item.data(_ID)))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Up and Down in the line to find by walk through the list."""
        if (
            watched is self.line
            and isinstance(event, QKeyEvent)
            and event.type() == QEvent.Type.KeyPress
            and event.key() in _WALKING
        ):
            QApplication.sendEvent(self.list, event)
            return True
        return super().eventFilter(watched, event)

    def done(self, result: int) -> None:
        """The keyboard goes back to where it was."""
        super().done(result)
        came_from, self._came_from = self._came_from, None
        if came_from is None:
            return
        try:
            came_from.window().activateWindow()
            came_from.setFocus(QtCore.Qt.FocusReason.OtherFocusReason)
        except RuntimeError:  # what had it is gone meanwhile
            return
