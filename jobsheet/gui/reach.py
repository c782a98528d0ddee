"""Which controls the keyboard reaches; said once the first figures are painted.

The toolkit makes its namespace of keys and policies when it is first asked for one, and that takes longer
than painting the whole sheet. Nobody presses Tab before they see something, so it is asked for right after.
"""

from __future__ import annotations

from typing import Protocol, runtime_checkable

from PySide6.QtWidgets import QWidget


@runtime_checkable
class Reached(Protocol):
    """A control that says by itself how it is reached."""

    def reach(self) -> None:
        """Take the policy of focus that fits the state."""


class _State:
    """Whether the first painting is over."""

    ready = False


def ready() -> bool:
    """Whether controls made now take their policy at once."""
    return _State.ready


def begin(root: QWidget) -> None:
    """The first painting is over: everything made so far can be reached from now on."""
    if _State.ready:
        return
    _State.ready = True
    for widget in root.findChildren(QWidget):
        if isinstance(widget, Reached):
            widget.reach()
