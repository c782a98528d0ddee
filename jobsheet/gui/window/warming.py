"""What the lists and the print place will ask for is fetched while the hand rests, a little at a time: they open
at once, and the start pays nothing.
"""

from __future__ import annotations

import importlib
from collections.abc import Callable, Iterator
from itertools import chain

from PySide6.QtCore import QTimer
from PySide6.QtWidgets import QWidget

from jobsheet.gui.ink import signs
from jobsheet.gui.ink.look import look
from jobsheet.gui.window.later import Later

#: How long the hand has rested, and between two pieces [ms].
WAIT, BETWEEN = 400, 15
#: As large as the list of kinds draws them.
ICON = 22


class Warming:
    """One pass through the pieces; it stands still while anything else is to be done."""

    def __init__(self, later: Later, parent: QWidget, pages: Callable[[], object]) -> None:
        self._later = later
        self._pages = pages
        self._parent = parent
        self._pieces: Iterator[Callable[[], object]] | None = None
        self._timer = QTimer(parent)
        self._timer.setSingleShot(True)
        self._timer.timeout.connect(self._step)

    def begin(self) -> None:
        """The hand rests: once is enough."""
        if self._pieces is None:
            self._pieces = chain(_pieces(self._parent.devicePixelRatio()), (self._pages,))
            self._timer.start(WAIT)

    def _step(self) -> None:
        """The next piece, unless something is waited for."""
        if self._later.waiting:
            self._timer.start(WAIT)
            return
        piece = next(self._pieces, None) if self._pieces is not None else None
        if piece is not None:
            piece()
            self._timer.start(BETWEEN)


def _pieces(ratio: float) -> Iterator[Callable[[], object]]:
    """Each takes a few milliseconds."""
    from jobsheet.operations import registry

    for name in registry.kinds():
        yield lambda name=name: registry.kind(name)  # type: ignore[misc]
    from jobsheet.operations.choosing import order_of_work

    for name in registry.kinds():
        yield lambda name=name: order_of_work.role_of(name)  # type: ignore[misc]
    for module in (
        "jobsheet.operations.choosing.likely",
        "jobsheet.operations.choosing.found",
        "jobsheet.gui.edits.insertion",
        "jobsheet.report.plan",
        "jobsheet.gui.pages.pages_view",
        "jobsheet.gui.pages.print_window",
    ):
        yield lambda module=module: importlib.import_module(module)  # type: ignore[misc]
    yield order_of_work.all_groups
    for name in registry.kinds():
        yield lambda name=name: _draw(f"op-{registry.kind(name).icon}", ratio)  # type: ignore[misc]


def _draw(icon: str, ratio: float) -> None:
    """An icon as the list of kinds shows it: one that is meant, and one that is not."""
    now = look()
    for tone in ("ink", "pencil"):
        signs.pixmap(icon, getattr(now.tokens, tone), now.px(ICON), ratio)
