"""Questions to the person. Everything that stops and waits for an answer goes through here; tests replace it.

Dialogs are made when they are asked, so that starting the program does not pay for them.
"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from jobsheet.storage.plan_mark import plan_mark

if TYPE_CHECKING:
    from PySide6.QtWidgets import QDialog, QDialogButtonBox, QVBoxLayout

    from jobsheet.edit.three_ways import Both, Item

translate = QCoreApplication.translate


def save_changes(parent: QWidget, name: str) -> str:
    """Whether to save before a job is put away: `save`, `throw away` or `cancel`."""
    from PySide6.QtWidgets import QMessageBox

    from jobsheet.gui.forms import plain_widgets

    button = QMessageBox.StandardButton
    words = translate("Ask", "“{name}” has changes that are not saved.")
    box = plain_widgets.box(parent, words.format(name=name))
    box.setInformativeText(translate("Ask", "Save them before it is closed?"))
    box.setStandardButtons(button.Save | button.Discard | button.Cancel)
    box.setDefaultButton(button.Save)
    answer = box.exec()
    return {button.Save.value: "save", button.Discard.value: "throw away"}.get(answer, "cancel")


def keep_run(parent: QWidget) -> str:
    """Whether to keep what was said of a run before it is put away: `keep`, `throw away` or `cancel`."""
    from PySide6.QtWidgets import QMessageBox

    from jobsheet.gui.forms import plain_widgets

    box = plain_widgets.box(parent, translate("Ask", "What you entered is not kept yet."))
    keep = box.addButton(translate("Ask", "Keep it"), QMessageBox.ButtonRole.AcceptRole)
    away = box.addButton(translate("Ask", "Throw it away"), QMessageBox.ButtonRole.DestructiveRole)
    box.addButton(QMessageBox.StandardButton.Cancel)
    box.setDefaultButton(keep)
    box.exec()
    pressed = box.clickedButton()
    return "keep" if pressed is keep else "throw away" if pressed is away else "cancel"


def changed_outside(parent: QWidget, sentence: str) -> str:
    """What to do when the file is not the one that was opened: `both`, `save as`, `overwrite` or `cancel`."""
    from PySide6.QtWidgets import QMessageBox

    from jobsheet.gui.forms import plain_widgets

    box = plain_widgets.box(parent, sentence)
    both = box.addButton(translate("Ask", "Put both together…"), QMessageBox.ButtonRole.AcceptRole)
    elsewhere = box.addButton(translate("Ask", "Save under another name…"), QMessageBox.ButtonRole.AcceptRole)
    over = box.addButton(translate("Ask", "Write over it"), QMessageBox.ButtonRole.DestructiveRole)
    box.addButton(QMessageBox.StandardButton.Cancel)
    box.setDefaultButton(both)
    box.exec()
    return {both: "both", elsewhere: "save as", over: "overwrite"}.get(box.clickedButton(), "cancel")  # type: ignore[call-overload, no-any-return]


def by_step(parent: QWidget, name: str, both: Both) -> tuple[tuple[Item, str], ...] | None:
    """Which plan counts in each thing that two people changed; None where it is called off."""
    from PySide6.QtWidgets import QDialog

    from jobsheet.gui.forms.two_plans import TwoPlans

    box = TwoPlans(parent, name, both)
    box.finished.connect(box.deleteLater)
    return box.rows.chosen if box.exec() == QDialog.DialogCode.Accepted else None


def which(parent: QWidget, sentence: str, names: list[str]) -> int | None:
    """Which one of several, by its place in the list; None where it is called off."""
    from PySide6.QtWidgets import QDialogButtonBox

    from jobsheet.gui.forms.plain_widgets import Choices, named

    box, column = _sheet(parent, translate("Ask", "Job sheet"), sentence)
    choices = Choices(box)
    named(choices, translate("Ask", "Which one"))
    for place, name in enumerate(names):
        choices.offer(name, place)
    column.addWidget(choices)
    done = _agreed(box, column, QDialogButtonBox.StandardButton.Open)
    return choices.currentIndex() if done else None


def whose_card(parent: QWidget, sentence: str, *, there: bool) -> str:
    """Which card of a machine counts for a job from printed sheets: `sheets`,
    `here` where there is one, or `cancel`.
    """
    from PySide6.QtWidgets import QMessageBox, QPushButton

    from jobsheet.gui.forms import plain_widgets

    box = plain_widgets.box(parent, sentence)
    role = QMessageBox.ButtonRole.AcceptRole
    if there:
        box.setInformativeText(
            translate(
                "Ask",
                "The card of the sheets would be kept beside it under a name of its own, without its proof log.",
            )
        )
        here: QPushButton | None = box.addButton(translate("Ask", "Plan with the card here"), role)
        sheets = box.addButton(translate("Ask", "Keep the card of the sheets"), role)
    else:
        box.setInformativeText(
            translate("Ask", "Its proof log comes with it. Without a card the job cannot be opened.")
        )
        sheets = box.addButton(translate("Ask", "Take the card over"), role)
        here = None
    box.addButton(QMessageBox.StandardButton.Cancel)
    box.setDefaultButton(here or sheets)
    box.exec()
    pressed = box.clickedButton()
    return "sheets" if pressed is sheets else "here" if here is not None and pressed is here else "cancel"


def open_path(parent: QWidget, folder: Path) -> Path | None:
    """Which job to open."""
    from PySide6.QtWidgets import QFileDialog

    name, _ = QFileDialog.getOpenFileName(
        parent,
        translate("Ask", "Open a job"),
        str(folder),
        translate("Ask", "Jobs and printed sheets (*.yaml *.yml *.pdf)"),
    )
    return Path(name) if name else None


def folder(parent: QWidget, start: Path, title: str) -> Path | None:
    """Which folder."""
    from PySide6.QtWidgets import QFileDialog

    name = QFileDialog.getExistingDirectory(parent, title, str(start))
    return Path(name) if name else None


def picture_path(parent: QWidget, folder: Path) -> Path | None:
    """Which photograph to take."""
    from PySide6.QtWidgets import QFileDialog

    name, _ = QFileDialog.getOpenFileName(
        parent,
        translate("Ask", "Add a photograph"),
        str(folder),
        translate("Ask", "Photographs (*.jpg *.jpeg *.png)"),
    )
    return Path(name) if name else None


def scans(parent: QWidget, folder: Path) -> tuple[Path, ...]:
    """Which scans or photographs of old sheets; nothing where it is called off."""
    from PySide6.QtWidgets import QFileDialog

    names, _ = QFileDialog.getOpenFileNames(
        parent,
        translate("Ask", "Old sheets of one part"),
        str(folder),
        translate("Ask", "Scans and photographs (*.pdf *.jpg *.jpeg *.png)"),
    )
    return tuple(map(Path, names))


def save_path(parent: QWidget, suggestion: Path) -> Path | None:
    """Where to save a job; the name gets `.yaml` where it has no ending."""
    kinds = translate("Ask", "Jobs (*.yaml *.yml)")
    return _path_to_write(parent, translate("Ask", "Save the job"), kinds, suggestion, ".yaml")


def export_path(parent: QWidget, suggestion: Path) -> Path | None:
    """Where to put the sheets; the name gets `.pdf` where it has no ending."""
    kinds = translate("Ask", "PDF (*.pdf)")
    return _path_to_write(parent, translate("Ask", "Export the sheets"), kinds, suggestion, ".pdf")


def _path_to_write(parent: QWidget, title: str, kinds: str, suggestion: Path, ending: str) -> Path | None:
    """The system's own question for a new file; None where it is called off."""
    from PySide6.QtWidgets import QFileDialog

    from jobsheet.storage.exporting_files import same_name

    # The toolkit's own question takes the name of a file for markup, and does
    # not see the ending that is added.
    own_question = QFileDialog.Option.DontConfirmOverwrite
    name, _ = QFileDialog.getSaveFileName(parent, title, str(suggestion), kinds, options=own_question)
    if not name:
        return None
    path = Path(name)
    if not path.suffix:
        path = path.with_name(path.name + ending)
    if other := same_name(path):
        words = translate(
            "Ask",
            "“{other}” is there already, and some computers take “{name}” for the same name: choose another one.",
        )
        tell(parent, words.format(other=other, name=path.name))
        return None
    return path if not path.exists() or _may_replace(parent, path.name) else None


def _may_replace(parent: QWidget, name: str) -> bool:
    """Whether a file that is there may be written over."""
    from PySide6.QtWidgets import QMessageBox

    from jobsheet.gui.forms import plain_widgets

    button = QMessageBox.StandardButton
    box = plain_widgets.box(
        parent, translate("Ask", "“{name}” is there already. Replace it?").format(name=name)
    )
    box.setStandardButtons(button.Yes | button.Cancel)
    box.setDefaultButton(button.Cancel)
    return box.exec() == button.Yes


def tell(parent: QWidget | None, sentence: str) -> None:
    """Say something that must be seen before going on."""
    from jobsheet.gui.forms import plain_widgets

    plain_widgets.box(parent, sentence).exec()


def reason(parent: QWidget, remark: str, *, initials: bool) -> tuple[str, str] | None:
    """Why a remark is set aside, and whose initials stand for it where they are needed; None if it is not."""
    titles = [translate("Ask", "Why it does not count in this job (printed with the plan)")]
    if initials:
        titles.append(translate("Ask", "Initials of the person in charge"))
    found = _written(parent, translate("Ask", "Set a remark aside"), remark, tuple(titles))
    if found is None:
        return None
    return found[0], found[1] if initials else ""


def proving_initials(parent: QWidget) -> tuple[str, str, str] | None:
    """Who has read the stop notes of a proving sheet: operator, second person, person in
    charge; None where it is called off.

    What stays empty prints NOT ACKNOWLEDGED, with no places for results.
    """
    head = translate(
        "Ask",
        "Stop at the first sign and do not repeat the step. A second person is present for the whole ladder and knows"
        " where the stop is. Without initials the sheet prints NOT ACKNOWLEDGED and has no places for results.",
    )
    titles = (
        translate("Ask", "Operator"),
        translate("Ask", "Second person beside"),
        translate("Ask", "Person in charge, for a trainee"),
    )
    found = _written(parent, translate("Ask", "Initials for the proving sheet"), head, titles)
    return None if found is None else (found[0], found[1], found[2])


def revision(parent: QWidget, number: int, changed: str, who: str, why: str = "") -> tuple[str, str] | None:
    """What changed in the plan, and who says so; None where it is called off. `why` says what asks for it."""
    head = translate(
        "Ask", "Plan {number}. What changed prints on the sheets; the revision of the drawing stays as it is."
    ).format(number=plan_mark(number))
    head = f"{why}\n\n{head}" if why else head
    titles = (translate("Ask", "What changed"), translate("Ask", "By"))
    found = _written(parent, translate("Ask", "New revision of the plan"), head, titles, (changed, who))
    return None if found is None else (found[0], found[1])


def old_sheet(parent: QWidget, files: int) -> tuple[str, ...] | None:
    """Whose old sheets they are: number, name, words to find them by, drawer, who puts them
    there; None where it is called off.
    """
    titles = (
        translate("Ask", "Number of the part"),
        translate("Ask", "Name"),
        translate("Ask", "Words to find it by"),
        translate("Ask", "Drawer or folder of the paper"),
        translate("Ask", "Put here by"),
    )
    head = translate("Ask", "Files: {count}. Whose sheets are they? A plan of that part can follow any day.")
    return _written(parent, translate("Ask", "Old sheets"), head.format(count=files), titles)


def drawing_revision(parent: QWidget, sentence: str, now: str) -> str | None:
    """At which revision the drawing is today; None where nobody has looked."""
    found = _written(
        parent,
        translate("Ask", "The drawing"),
        sentence,
        (translate("Ask", "Drawing revision today"),),
        (now,),
    )
    return None if found is None else found[0]


def _written(
    parent: QWidget, title: str, head: str, titles: tuple[str, ...], given: tuple[str, ...] = ()
) -> tuple[str, ...] | None:
    """Lines to write in under some words, each with its title and what it begins
    with; None where it is called off.
    """
    from PySide6.QtWidgets import QDialogButtonBox, QLineEdit

    from jobsheet.gui.forms.plain_widgets import Label

    box, column = _sheet(parent, title, head)
    lines: list[QLineEdit] = []
    for caption in titles:
        column.addWidget(Label(caption, box))
        line = QLineEdit(box)
        line.setAccessibleName(caption)
        line.setText(given[len(lines)] if given else "")
        column.addWidget(line)
        lines.append(line)
    if given:  # what is proposed is typed over, not typed behind
        lines[0].selectAll()
        lines[0].setFocus()
    if not _agreed(box, column, QDialogButtonBox.StandardButton.Ok):
        return None
    return tuple(line.text().strip() for line in lines)


def _sheet(parent: QWidget, title: str, head: str) -> tuple[QDialog, QVBoxLayout]:
    """A box with some words at its head, and the column that more goes into."""
    from PySide6.QtWidgets import QDialog, QVBoxLayout

    from jobsheet.gui.forms.plain_widgets import Label

    box = QDialog(parent)
    box.finished.connect(box.deleteLater)
    box.setWindowTitle(title)
    column = QVBoxLayout(box)
    column.addWidget(Label(head, box))
    return box, column


def _agreed(box: QDialog, column: QVBoxLayout, yes: QDialogButtonBox.StandardButton) -> bool:
    """Whether it was ended by that button, and not called off."""
    from PySide6.QtWidgets import QDialog, QDialogButtonBox

    buttons = QDialogButtonBox(yes | QDialogButtonBox.StandardButton.Cancel, box)
    buttons.accepted.connect(box.accept)
    buttons.rejected.connect(box.reject)
    column.addWidget(buttons)
    box.resize(520, box.sizeHint().height())
    return box.exec() == QDialog.DialogCode.Accepted
