"""One window with the sample, off any screen, in a home of its own; nothing asks a person."""

import gc
import os
from functools import partial

os.environ["QT_QPA_PLATFORM"] = "offscreen"

import pytest
from PySide6.QtCore import QCoreApplication, QEvent
from PySide6.QtWidgets import QApplication

from jobsheet.gui.desk.opening import open_at_start
from jobsheet.gui.forms import ask
from jobsheet.gui.ink import look
from jobsheet.gui.start.collecting import look as look_for_circles
from jobsheet.gui.start.start import make_window

#: How long a state is waited for [ms].
PATIENCE = 60_000


@pytest.fixture(autouse=True)
def home(tmp_path, monkeypatch):
    """A person's own folder that nobody else uses."""
    folder = tmp_path / "home"
    monkeypatch.setenv("JOBSHEET_HOME", str(folder))
    return folder


@pytest.fixture(autouse=True)
def _circles_in_this_thread():
    """As in the program: no thread that makes pages or solids lets a piece of a window go."""
    collects = gc.isenabled()
    gc.disable()
    yield
    look_for_circles()
    if collects:
        gc.enable()


@pytest.fixture(autouse=True)
def nobody_to_ask(monkeypatch):
    """A question that a test did not expect is a failure, not a wait."""

    def unexpected(*args):
        raise AssertionError(f"a person was asked: {args}")

    for name in (
        "save_changes",
        "changed_outside",
        "keep_run",
        "open_path",
        "save_path",
        "export_path",
        "tell",
        "reason",
        "proving_initials",
    ):
        monkeypatch.setattr(ask, name, unexpected)


@pytest.fixture
def qtbot(qtbot, monkeypatch):
    """Waits for a state longer than a busy machine may need, which costs nothing on any other."""
    monkeypatch.setattr(qtbot, "waitUntil", partial(qtbot.waitUntil, timeout=PATIENCE))
    return qtbot


@pytest.fixture
def show(qtbot):
    """Shows a window in a size and look, and waits for what comes after its first painting."""
    shown = []

    def show(path=None, size=(1440, 900), scheme="light", factor=1.0):
        look.apply(scheme, factor=factor)
        window = make_window(open_at_start(path))
        window.resize(*size)
        window.show()
        shown.append(window)
        qtbot.waitUntil(lambda: bool(window.actions_by_id))
        window.activateWindow()
        QApplication.processEvents()
        return window

    yield show
    for window in shown:
        window.hide()
        window.parts.solids.halt()  # as closing does: the next test waits for no solids of this one
        window.parts.files.keeping.journal.clear()
        window.deleteLater()
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)


@pytest.fixture
def window(show):
    """The window with the sample, as in the drawings."""
    return show()


@pytest.fixture
def type_in(qtbot):
    """Types into a field of the open row as a hand does: choose all, write over it."""

    def type_in(window, name, text):
        box = window.open_row.form.fields[name].box
        box.setFocus()
        box.selectAll()
        qtbot.keyClicks(box, text)
        return window.open_row.form.fields[name]

    return type_in
