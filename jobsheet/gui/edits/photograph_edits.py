"""Photographs of set-ups: a file that is chosen or let fall, what is said of those
that are gone, and taking one out.
"""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QCoreApplication

from jobsheet.edit.photograph_commands import AddPhotograph, TakeOutPhotograph
from jobsheet.errors import CommandError, JobsheetError
from jobsheet.gui.edits.in_hand import Hand
from jobsheet.gui.forms import ask
from jobsheet.model.job import Photograph, SetUp

translate = QCoreApplication.translate
#: The toolkit may take so much of the memory for a picture [MB], and makes it no larger than
#: this to see whether it can be drawn.
MOST_MEMORY, SEEN = 300, 400
#: What a file is called that is taken for a photograph when it is let fall; what
#: it really is is asked of its bytes.
ENDINGS = (".jpg", ".jpeg", ".png", ".heic", ".heif", ".webp", ".gif", ".bmp", ".tif", ".tiff")


class PhotographEdits:
    """Edits of the photographs, from the menu and by letting a file fall."""

    def __init__(self, hand: Hand) -> None:
        self._hand = hand

    def add(self) -> None:
        """Ask which picture, and put it to the set-up that is meant."""
        desk = self._hand.desk
        path = ask.picture_path(self._hand.parent, desk.path.parent if desk.path else Path.home())
        if path is not None:
            self.take(path, self._hand.set_up)

    def take(self, path: Path, set_up: SetUp) -> bool:
        """Keep a picture and put it to a set-up; what is wrong with it is said in one sentence."""
        from jobsheet.storage.photos.kept_photographs import places, taken_in

        desk = self._hand.desk
        try:
            can_be_drawn(path)
            content = taken_in(path, desk.job, places(desk.path))
            desk.do(AddPhotograph(Photograph(content=content, shows=path.stem, about=set_up.key)))
        except JobsheetError as error:
            ask.tell(self._hand.parent, str(error))
            return False
        words = translate(
            "RowEdits", "{name} is kept as a photograph of set-up {number}; it prints on its page."
        )
        self._hand.say(words.format(name=path.name, number=set_up.number))
        return True

    def take_out(self) -> None:
        """Take out the photograph of the set-up that is meant; where it has several, ask which."""
        from jobsheet.storage.photos.kept_photographs import owner_words

        desk, set_up = self._hand.desk, self._hand.set_up
        keys = {set_up.key, *(operation.key for operation in set_up.operations)}
        photographs = [photograph for photograph in desk.job.photographs if photograph.about in keys] or list(
            desk.job.photographs
        )
        if not photographs:
            self._hand.say(translate("RowEdits", "This job has no photograph."))
            return
        which: int | None = 0
        if len(photographs) > 1:
            names = [
                f"{owner_words(desk.job, photograph)}: {photograph.shows or photograph.content[:8]}"
                for photograph in photographs
            ]
            which = ask.which(
                self._hand.parent, translate("RowEdits", "Which photograph is taken out?"), names
            )
        if which is not None and self._hand.do(TakeOutPhotograph(photographs[which])):
            self._hand.say(translate("RowEdits", "The photograph is taken out; undo brings it back."))

    def say_what_is_gone(self) -> None:
        """Say of the job on the desk which of its photographs are gone."""
        desk = self._hand.desk
        if not desk.job.photographs:
            return
        from jobsheet.storage.photos.kept_photographs import places, problem_words, shots_of

        gone = [shot for shot in shots_of(desk.job, places(desk.path)) if shot.problem]
        if not gone:
            return
        words = problem_words(desk.job, gone[0])
        if len(gone) > 1:
            words += translate("RowEdits", " {count} more are gone too.").format(count=len(gone) - 1)
        self._hand.say(words)
        ruled = self._hand.ruled
        if ruled.notice_line is not None:  # what a crash left behind is asked first
            return

        def take_out() -> None:
            for shot in gone:
                self._hand.do(TakeOutPhotograph(shot.photograph))
            leave()

        def leave() -> None:
            ruled.notice("", "", ())

        owner = gone[0].photograph.about
        offers = (
            (translate("RowEdits", "Take it out"), take_out),
            (translate("RowEdits", "Leave it"), leave),
        )
        ruled.notice(owner if owner in ruled.by_key else next(iter(ruled.by_key), ""), words, offers)


def can_be_drawn(path: Path) -> None:
    """Whether the whole picture can be read, not only its head; raises CommandError in one sentence."""
    from PySide6.QtCore import QBuffer, QIODevice, QSize, Qt
    from PySide6.QtGui import QImageReader

    from jobsheet.storage.photos.kept_photographs import checked, read_picture

    raw = read_picture(path)
    head = checked(raw, path.name)
    QImageReader.setAllocationLimit(MOST_MEMORY)
    held = QBuffer()
    held.setData(raw)
    held.open(QIODevice.OpenModeFlag.ReadOnly)
    reader = QImageReader(held, head.kind.encode())
    reader.setScaledSize(
        QSize(head.width, head.height).scaled(SEEN, SEEN, Qt.AspectRatioMode.KeepAspectRatio)
    )
    if reader.read().isNull():
        raise CommandError(
            translate(
                "RowEdits",
                "{name} is damaged: its picture cannot be drawn. Fetch it again from where it came.",
            ).format(name=path.name)
        )
