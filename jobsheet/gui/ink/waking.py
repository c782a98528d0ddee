"""What waits until the first figures are painted, and whether they are.

The first use of any of the toolkit's own constants (`Qt.…`), also by a pen, a brush or a policy of focus,
makes all twelve hundred of them: 12 ms. Nothing that is needed for the first figures does so; what would, waits.
"""

from __future__ import annotations

import contextlib
from collections.abc import Callable

_awake: list[bool] = []
_waiting: list[Callable[[], object]] = []


def awake() -> bool:
    """Whether the first figures are painted."""
    return bool(_awake)


def when_awake(do: Callable[[], object]) -> None:
    """Do this at once, or when the first figures are painted."""
    if _awake:
        do()
    elif do not in _waiting:
        _waiting.append(do)


def wake() -> None:
    """The first figures are painted: what waits may follow."""
    _awake[:] = [True]
    waiting, _waiting[:] = _waiting[:], []
    for do in waiting:
        with contextlib.suppress(RuntimeError):  # what a widget wanted that is gone
            do()


def sleep() -> None:
    """Begin anew, as before the first painting."""
    _awake.clear()
    _waiting.clear()
