"""The card of a job is gone, or has a name that no file can have: its places
open all the same, and say so.
"""

import pytest
from msgspec.structs import replace
from PySide6.QtWidgets import QDialog, QMainWindow

from jobsheet.errors import NoSuchEntry
from jobsheet.gui.forms import ask
from jobsheet.gui.places.proving.proving_window import ProvingWindow
from jobsheet.storage.card_files import card_names
from jobsheet.storage.records.proof_log import read_log

#: No card, no name of a card, and longer than the name of a file can be.
NAMES = ["gone-to-the-scrapyard", "<b>x</b> & y", "../../etc/passwd", "w" * 3000]


class _Lay:
    """Puts another job on the desk."""

    label, merge_key = "open", ""

    def __init__(self, job):
        self._job = job

    def apply(self, _job):
        return self._job


@pytest.mark.parametrize("name", NAMES, ids=["gone", "markup", "path", "long"])
def test_every_place_opens_without_the_card(window, name, monkeypatch):
    said = []
    monkeypatch.setattr(ask, "tell", lambda _parent, sentence: said.append(sentence))
    window.desk.history.do(_Lay(replace(window.desk.job, machine=name)))
    window.desk.learn()
    window.parts.after_figures()
    window.parts.when_rested()
    for way in ("prove", "card", "capability", "fits", "print"):
        window.actions_by_id[way].trigger()
    opened = [
        one for one in window.findChildren(QDialog) + window.findChildren(QMainWindow) if one.isVisible()
    ]
    (proving,) = [one for one in opened if isinstance(one, ProvingWindow)]
    assert proving.desk.asked.machine in card_names()
    assert said  # the card, and the sheets
    for one in opened:
        one.grab()
        one.close()


@pytest.mark.parametrize("name", NAMES[1:], ids=["markup", "path", "long"])
def test_the_log_of_no_machine_is_a_sentence(name):
    with pytest.raises(NoSuchEntry, match="is not the name of a machine card"):
        read_log(name)
