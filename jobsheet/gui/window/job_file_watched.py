"""What is to be known of the job's file beside what stands in it: who else has it open, and
whether something else changed it.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import QCoreApplication, QEvent, QObject
from PySide6.QtWidgets import QWidget

from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.beside_others import Claim
from jobsheet.gui.desk.desk import Desk
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.storage.disk import file_digest
from jobsheet.storage.kept.recent import used

translate = QCoreApplication.translate


class WatchedFile(QObject):
    """Told whenever another job lies on the desk or it was saved; asks again
    when the window comes to the front.
    """

    def __init__(self, hand: Hand, window: QWidget, open_path: Callable[[Path], object]) -> None:
        super().__init__(window)
        self._hand = hand
        self._open_path = open_path
        self._known = ""
        self.claim = Claim()
        window.installEventFilter(self)

    @property
    def _desk(self) -> Desk:
        return self._hand.desk

    def settled(self) -> None:
        """The job on the desk belongs to this file now."""
        path = self._desk.path
        self._known = self._desk.digest or ""
        alone = self.claim.take(path)
        if path is None:
            return
        part = self._desk.job.part
        used(path, " ".join(word for word in (part.number, part.name) if word))
        if not alone:
            words = translate(
                "Files",
                "{name} is open in another window too: whoever saves last is asked before writing over it.",
            )
            self._tell(words.format(name=path.name), ())

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802  named by the toolkit
        """The window comes to the front: look whether the file is still the one that was opened."""
        if event.type() == QEvent.Type.WindowActivate:
            self.look()
        return super().eventFilter(watched, event)

    def look(self) -> None:
        """Say once that something else has changed the file."""
        path = self._desk.path
        if path is None or not self._known:
            return
        try:
            found = file_digest(path)
        except JobsheetError:
            return
        if found is None or found == self._known:
            return
        self._known = found
        words = translate("Files", "{name} was changed by something else since it was opened.")
        self._tell(
            words.format(name=path.name),
            (
                (translate("Files", "Open it as it is now"), lambda: self._reopen(path)),
                (translate("Files", "Go on with this one"), self._done),
            ),
        )

    def _reopen(self, path: Path) -> None:
        self._done()
        self._open_path(path)

    def _done(self) -> None:
        self._hand.ruled.notice("", "", ())

    def _tell(self, words: str, offers: tuple[tuple[str, Callable[[], None]], ...]) -> None:
        """Above the first line, unless something stands there already; in the status line in any case."""
        ruled = self._hand.ruled
        if ruled.notice_line is None:
            go_on = ((translate("Files", "Go on"), self._done),)
            ruled.notice(next(iter(ruled.by_key), ""), words, offers or go_on)
        self._hand.say(words)
