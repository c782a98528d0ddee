"""The ruled list to a screen reader: a list, in it an item for each line, and
the open form after its own item.

The toolkit asks a factory for the face of a widget; the items are no widgets, so they are made here, when a
screen reader first asks for them. The toolkit keeps a note of each: one that is thrown away is taken out of
its notes first, or it would be thrown away twice at the end of the program.
"""

from __future__ import annotations

import atexit
from collections.abc import Iterable
from functools import partial
from typing import Any

from msgspec import Struct, field
from PySide6.QtCore import QObject, QPoint, QRect
from PySide6.QtGui import QAccessible, QAccessibleEvent, QAccessibleInterface, QAccessibleStateChangeEvent
from PySide6.QtWidgets import QAccessibleWidget, QWidget

from jobsheet.gui.column.painted_list import PaintedList

#: What is kept for each list that lives; the first one brings the factory with it.
_kept: dict[int, Kept] = {}
_installed: list[bool] = []


class Item(QAccessibleInterface):
    """One line: its name is all that it shows, its state whether it is chosen and whether it is open."""

    def __init__(self, lines: PaintedList, key: str) -> None:
        super().__init__()
        self._list = lines
        self.key = key

    def isValid(self) -> bool:  # noqa: N802
        """Whether the line is still there."""
        return self.key in self._list.by_key

    def object(self) -> QObject:
        """No widget stands behind it."""
        return None  # type: ignore[return-value]

    def parent(self) -> QAccessibleInterface:
        """The list."""
        return QAccessible.queryAccessibleInterface(self._list)

    def child(self, _index: int) -> QAccessibleInterface:
        """It has none: what is open stands beside it."""
        return None  # type: ignore[return-value]

    def childAt(self, _x: int, _y: int) -> QAccessibleInterface:  # noqa: N802
        """It has none."""
        return None  # type: ignore[return-value]

    def childCount(self) -> int:  # noqa: N802
        """It has none."""
        return 0

    def indexOfChild(self, _child: QAccessibleInterface) -> int:  # noqa: N802
        """It has none."""
        return -1

    def role(self) -> QAccessible.Role:
        """An item of a list."""
        return QAccessible.Role.ListItem

    def state(self) -> QAccessible.State:
        """Chosen or not, open or closed, in sight or not."""
        lines, state = self._list, QAccessible.State()
        opened = lines.opened is not None and lines.opened.key == self.key
        said: dict[str, bool] = {
            "focusable": True,
            "selectable": True,
            "expandable": True,
            "selected": self.key in lines.choice.keys,
            "focused": lines.chosen_key == self.key and lines.hasFocus(),
            "expanded": opened,
            "collapsed": not opened,
            "offscreen": not lines.visibleRegion().intersects(self._place()),
        }
        for name, value in said.items():
            setattr(state, name, value)
        return state

    def text(self, what: QAccessible.Text) -> str:
        """All that the line shows."""
        line = self._list.by_key.get(self.key)
        if what != QAccessible.Text.Name or line is None or line.view is None:
            return ""
        return line.view.spoken()

    def setText(self, _what: QAccessible.Text, _text: str) -> None:  # noqa: N802
        """It is not typed into."""

    def _place(self) -> QRect:
        line = self._list.by_key.get(self.key)
        return QRect(0, line.top, self._list.width(), line.high) if line is not None else QRect()

    def rect(self) -> QRect:
        """Where it stands on the screen."""
        place = self._place()
        return QRect(self._list.mapToGlobal(place.topLeft()), place.size())


class ListFace(QAccessibleWidget):
    """The list: its children are the items in their order, and after the open one its form."""

    def __init__(self, lines: PaintedList, items: dict[str, Item]) -> None:
        super().__init__(lines, QAccessible.Role.List)
        self._list = lines
        self._items = items

    def state(self) -> QAccessible.State:
        """As any widget's, and several can be chosen."""
        state = super().state()
        for name in ("multiSelectable", "extSelectable"):
            setattr(state, name, True)
        return state

    def order(self) -> list[str | QWidget]:
        """Keys of lines, and widgets: the open form, a notice."""
        lines, found = self._list, list[str | QWidget]()
        opened = lines.opened
        if opened is not None and opened.key not in lines.by_key:
            found.append(opened)
        for line in lines.lines:
            if line.widget is not None:
                found.append(line.widget)
                continue
            found.append(line.key)
            if opened is not None and opened.key == line.key:
                found.append(opened)
        return found

    def childCount(self) -> int:  # noqa: N802
        """Lines, and what is open."""
        return len(self.order())

    def child(self, index: int) -> QAccessibleInterface:
        """The item or the widget at a place."""
        order = self.order()
        if not 0 <= index < len(order):
            return None  # type: ignore[return-value]
        one = order[index]
        return QAccessible.queryAccessibleInterface(one) if isinstance(one, QWidget) else self.item(one)

    def item(self, key: str) -> Item:
        """The item of a line; those of lines that are gone are forgotten."""
        _forget(self._items, [known for known in self._items if known not in self._list.by_key])
        if key not in self._items:
            self._items[key] = Item(self._list, key)
            QAccessible.registerAccessibleInterface(self._items[key])
        return self._items[key]

    def indexOfChild(self, child: QAccessibleInterface) -> int:  # noqa: N802
        """The place of an item or of a widget."""
        wanted: Any = child.key if isinstance(child, Item) else child.object()
        order = self.order()
        return order.index(wanted) if wanted in order else -1

    def focusChild(self) -> QAccessibleInterface:  # noqa: N802
        """The line that has the keyboard; inside the form its own control."""
        if self._list.hasFocus() and self._list.chosen_key in self._list.by_key:
            return self.item(self._list.chosen_key)
        return super().focusChild()

    def childAt(self, x: int, y: int) -> QAccessibleInterface:  # noqa: N802
        """What stands at a place on the screen."""
        at = self._list.mapFromGlobal(QPoint(x, y))
        widget = self._list.childAt(at)
        if widget is not None:
            return QAccessible.queryAccessibleInterface(widget)
        line = self._list.standing.at(at.y()) if self._list.rect().contains(at) else None
        return self.item(line.key) if line is not None else None  # type: ignore[return-value]


class Kept(Struct):
    """The items of a list, and its faces: the toolkit asks for another one when the
    class of a widget gets a new slot.
    """

    items: dict[str, Item] = field(default_factory=dict)
    faces: list[ListFace] = field(default_factory=list)


def _face(_kind: str, what: QObject) -> QAccessibleInterface | None:
    """The toolkit's question: our face for our list, its own for everything else."""
    if not isinstance(what, PaintedList):
        return None
    kept = _kept.get(id(what))
    if kept is None:
        kept = _kept[id(what)] = Kept()
        what.destroyed.connect(partial(_gone, id(what)))
    kept.faces.append(ListFace(what, kept.items))
    return kept.faces[-1]


def _forget(items: dict[str, Item], keys: Iterable[str]) -> None:
    """Take items out of the toolkit's notes, which throws them away: ours must last until that is done."""
    for key in list(keys):
        item = items.pop(key)
        QAccessible.deleteAccessibleInterface(QAccessible.uniqueId(item))


def _gone(which: int) -> None:
    """A list is gone, and with it its faces."""
    kept = _kept.pop(which, None)
    if kept is not None:
        _forget(kept.items, kept.items)


def _end() -> None:
    """The program ends: nothing of ours is in the toolkit's notes when it looks through them."""
    for kept in _kept.values():
        _forget(kept.items, kept.items)


def _listens() -> bool:
    """Whether anybody hears."""
    return QAccessible.isActive()


def install(lines: PaintedList) -> None:
    """Let the toolkit ask us from now on, also about a list that a screen reader has looked at already."""
    if not _installed:
        QAccessible.installFactory(_face)
        atexit.register(_end)
        _installed.append(True)
    if _listens():
        known = QAccessible.queryAccessibleInterface(lines)
        if not isinstance(known, ListFace):
            QAccessible.deleteAccessibleInterface(QAccessible.uniqueId(known))


def focus_moved(lines: PaintedList) -> None:
    """Say that another line has the keyboard."""
    _send(lines, lines.chosen_key, QAccessibleEvent(lines, QAccessible.Event.Focus))


def chosen_otherwise(lines: PaintedList) -> None:
    """Say that other rows are chosen."""
    if _listens():
        QAccessible.updateAccessibility(QAccessibleEvent(lines, QAccessible.Event.SelectionWithin))


def opened_or_closed(lines: PaintedList, key: str) -> None:
    """Say that a line was opened or closed."""
    state = QAccessible.State()
    for name in ("expanded", "collapsed"):
        setattr(state, name, True)  # which of the states changed, not what they are now
    _send(lines, key, QAccessibleStateChangeEvent(lines, state))


def _send(lines: PaintedList, key: str, event: QAccessibleEvent) -> None:
    """Send an event about a line, where somebody listens."""
    if not _listens():
        return
    face = QAccessible.queryAccessibleInterface(lines)
    if isinstance(face, ListFace):
        order = face.order()
        if key in order:
            event.setChild(order.index(key))
            QAccessible.updateAccessibility(event)
