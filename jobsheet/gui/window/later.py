"""What comes after the figures, and what comes when the hand rests: never before the first painting."""

from __future__ import annotations

from PySide6.QtCore import QObject, QTimer, Signal

#: How long the hand rests before the whole plan is read through [ms]: that may take as long as two edits.
REST = 60
#: How long the hand rests in a text before what is typed counts as meant [ms].
MEANT = 600


class Later(QObject):
    """Two waits, one after the other; asking again begins the first anew."""

    #: The figures are painted.
    painted = Signal()
    #: The hand rests.
    rested = Signal()
    #: What was typed is meant: the field was left, or the hand rested in it.
    meant = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._begun = False
        self._soon = self._timer(0)
        self._soon.timeout.connect(self.painted)
        self._rest = self._timer(REST)
        self._rest.timeout.connect(self.rested)
        self._typing = self._timer(MEANT)
        self._typing.timeout.connect(self._commit)

    def _timer(self, wait: int) -> QTimer:
        timer = QTimer(self)
        timer.setSingleShot(True)
        timer.setInterval(wait)
        return timer

    def begin(self) -> None:
        """The first painting is done."""
        if not self._begun:
            self._begun = True
            self._soon.start()

    def soon(self) -> None:
        """Show what may come after the figures: never before the first of them are painted."""
        if self._begun:
            self._soon.start()

    def typing(self) -> None:
        """A key came: only figures follow at once, everything else waits until the text is meant."""
        self._rest.stop()
        self._typing.start()

    def commit(self) -> None:
        """The field is left: what waits for its text need not wait longer."""
        if self._typing.isActive():
            self._typing.stop()
            self._commit()

    def _commit(self) -> None:
        self.meant.emit()
        self.soon()

    def rest(self) -> None:
        """Wait until the hand rests."""
        self._rest.start()

    @property
    def waiting(self) -> bool:
        """Whether something is still to come."""
        return self._soon.isActive() or self._rest.isActive() or self._typing.isActive()
