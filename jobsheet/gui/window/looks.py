"""The choices of View: as the system, light, dark, bench size; kept for the next start."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from PySide6 import QtCore
from PySide6.QtWidgets import QApplication

from jobsheet.gui.ink import look
from jobsheet.gui.window import settings

if TYPE_CHECKING:
    from PySide6.QtGui import QAction


class Looks:
    """What was chosen; `rebuild` makes all panels anew in another look."""

    def __init__(self, rebuild: Callable[[], None]) -> None:
        self.chosen = settings.read()
        self._rebuild = rebuild
        self._actions: dict[str, QAction] = {}

    def follow(self, actions: dict[str, QAction]) -> None:
        """Mark the choices from now on, and follow the system where that is the choice."""
        self._actions = actions
        self._check()
        app = QApplication.instance()
        if isinstance(app, QApplication):
            app.styleHints().colorSchemeChanged.connect(self._system_changed)

    def _check(self) -> None:
        """Mark the choices of View."""
        for id_ in ("system", "light", "dark"):
            self._actions[id_].setChecked(self.chosen.scheme == id_)
        self._actions["bench"].setChecked(self.chosen.bench)

    def _system_changed(self, scheme: QtCore.Qt.ColorScheme) -> None:
        """Follow the system into the dark or out of it."""
        look.system_changed(dark=scheme == QtCore.Qt.ColorScheme.Dark)
        if self.chosen.scheme == "system":
            look.apply("system", bench=self.chosen.bench)
            self._rebuild()

    def as_system(self) -> None:
        """Light or dark as the system asks."""
        self._set(settings.Settings("system", self.chosen.bench))

    def light(self) -> None:
        """Light."""
        self._set(settings.Settings("light", self.chosen.bench))

    def dark(self) -> None:
        """Dark."""
        self._set(settings.Settings("dark", self.chosen.bench))

    def bench_size(self) -> None:
        """Everything half as large again, or back."""
        self._set(settings.Settings(self.chosen.scheme, not self.chosen.bench))

    def _set(self, chosen: settings.Settings) -> None:
        """Keep a choice and show it."""
        self.chosen = chosen
        self._check()
        settings.write(chosen)
        look.apply(chosen.scheme, bench=chosen.bench)
        self._rebuild()
