"""What went wrong and stops nobody: an answer, a suggestion or a drawing that
fails is absent, and kept in a log.

While a person types, a text passes through sizes that nobody means (`10 m` on the way to `10 mm`). What is
asked beside the figures may fail at those; it must never raise out of an edit, nor open a box.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from jobsheet import paths

Found = TypeVar("Found")
#: Problems that were logged: one that comes at every key is written once in a run of the program.
_KEPT: set[tuple[str, int]] = set()
#: More than so many different ones are not written (estimate: a run of an hour shows a handful).
MOST = 200


def or_absent(ask: Callable[[], Found], absent: Found) -> Found:
    """What was asked, or `absent` where asking fails; the failure goes into the log."""
    try:
        return ask()
    except Exception as error:  # noqa: BLE001  whatever fails here fails alone
        keep(error)
        return absent


def keep(error: BaseException) -> None:
    """Write the whole story into the person's own folder, once for each place where it happens."""
    import traceback

    trace = error.__traceback__
    while trace is not None and trace.tb_next is not None:
        trace = trace.tb_next
    where = (trace.tb_frame.f_code.co_filename, trace.tb_lineno) if trace is not None else ("", 0)
    if where in _KEPT or len(_KEPT) >= MOST:
        return
    _KEPT.add(where)
    try:
        folder = paths.own_folder()
        folder.mkdir(parents=True, exist_ok=True)
        with (folder / "problems.log").open("a", encoding="utf-8") as log:
            log.writelines(traceback.format_exception(error))
    except OSError:
        return
