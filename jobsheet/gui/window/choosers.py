"""Menus that are filled when they open: the kinds of step, the machines with the ways to the
places, the last jobs, the samples.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

from PySide6.QtCore import QCoreApplication
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from jobsheet.edit.commands import ChooseMachine
from jobsheet.errors import JobsheetError
from jobsheet.gui.desk.place import Way
from jobsheet.gui.edits.all_edits import Edits
from jobsheet.gui.forms.plain_words import entry

translate = QCoreApplication.translate


def fill_machines(menu: QMenu, edits: Edits, actions: Mapping[str, QAction], ways: Iterable[Way]) -> None:
    """The panel of machines; every card, of which one is the job's; below them the ways to the places."""
    from PySide6.QtGui import QActionGroup

    from jobsheet.storage.card_files import card_names, find_card

    hand = edits.hand
    menu.addAction(actions["choose-machine"])
    menu.addSeparator()
    one_of = QActionGroup(menu)
    for card in card_names():
        try:
            title = find_card(card).title
        except JobsheetError:
            title = card  # choosing it says what is wrong with it
        action = menu.addAction(entry(title))
        action.setCheckable(True)
        one_of.addAction(action)
        action.setChecked(card == hand.desk.job.machine)
        action.triggered.connect(lambda _=False, card=card: hand.do(ChooseMachine(card)))
    menu.addSeparator()
    menu.addActions([actions[way.id] for way in ways])


def fill_recent(menu: QMenu, open_recent: Callable[[str], object]) -> None:
    """The last jobs by part and file; one that is no longer there says so."""
    from jobsheet.storage.kept.recent import recent

    found = recent()
    if not found:
        menu.addAction(translate("Actions", "No job was saved or opened yet")).setEnabled(False)
    for other in found:
        path = Path(other.path)
        words = " – ".join(part for part in (other.part, path.name, path.parent.name) if part)
        gone = "" if other.there else translate("Actions", "not there now: ")
        action = menu.addAction(entry(f"{gone}{words}"))
        action.setEnabled(other.there)
        action.triggered.connect(lambda _=False, name=other.path: open_recent(name))


def fill_samples(menu: QMenu, open_sample: Callable[[Path], object]) -> None:
    """Every sample that is shipped."""
    from jobsheet import paths

    for path in sorted(paths.sample_jobs().glob("*.yaml")):
        menu.addAction(entry(path.stem)).triggered.connect(lambda _=False, path=path: open_sample(path))
