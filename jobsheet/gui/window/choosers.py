"""Menus that are filled when they open: the kinds of step, the machines with the ways to the places, the samples."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from pathlib import Path

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu

from jobsheet.edit.commands import ChooseMachine
from jobsheet.errors import JobsheetError
from jobsheet.gui.edits.all_edits import Edits
from jobsheet.gui.forms.plain_words import entry


def fill_machines(menu: QMenu, edits: Edits, ways: Iterable[QAction]) -> None:
    """Every machine card, the job's own marked; below them the ways to the places."""
    from jobsheet.storage.card_files import card_names, find_card

    hand = edits.hand
    for card in card_names():
        try:
            title = find_card(card).title
        except JobsheetError:
            title = card  # choosing it says what is wrong with it
        action = menu.addAction(entry(title))
        action.setCheckable(True)
        action.setChecked(card == hand.desk.job.machine)
        action.triggered.connect(lambda _=False, card=card: hand.do(ChooseMachine(card)))
    menu.addSeparator()
    menu.addActions(list(ways))


def fill_samples(menu: QMenu, open_sample: Callable[[Path], object]) -> None:
    """Every sample that is shipped."""
    from jobsheet import paths

    for path in sorted(paths.sample_jobs().glob("*.yaml")):
        menu.addAction(entry(path.stem)).triggered.connect(lambda _=False, path=path: open_sample(path))
