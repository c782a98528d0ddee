"""Starts the program: without an argument the window, else the command line; either is imported late."""

from __future__ import annotations

import atexit
import gc
import os
import sys
from typing import NoReturn

#: So many values more than before, and a verb looks for circles among them; Python would
#: after 700, some hundred times while it reads modules that all stay.
CIRCLES = 400_000
#: Where one of these is there, something may have to be put down in order: the window,
#: an index that is open, processes and threads of one's own.
TAKEN_DOWN = ("PySide6", "sqlite3", "multiprocessing", "concurrent.futures")


def _open_window(path: str | None) -> int:
    """Open the window, or say in one line what it lacks."""
    try:
        from jobsheet.gui.start.app import main as window
    except ImportError as error:
        sys.stderr.write(
            f"The window cannot open: {error}. On Debian or Ubuntu, run python3 packaging/start.py --system-packages"
            " once; the other commands work without it.\n"
        )
        return 2
    return window(path)


def main(arguments: list[str] | None = None) -> int:
    """Run the program; returns the exit code (0 good, 1 something should stop you, 2 cannot be read)."""
    given = sys.argv[1:] if arguments is None else arguments
    if not given:
        return _open_window(None)
    if given[0] == "open" and len(given) <= 2 and not any(word.startswith("-") for word in given[1:]):
        # The quickest way to the window: the command line is not even imported.
        return _open_window(given[1] if len(given) > 1 else None)
    if arguments is None and given[0].isalpha() and _is_verb(given[0]):
        # What a verb would compile anew each time is kept for it, as it is for
        # the window: a tenth to a fifth of it. So is what it would parse.
        from jobsheet.gui.start import compiled

        gc.set_threshold(CIRCLES)
        with compiled.used(given[0]):
            from jobsheet.gui.start import last_read

            with last_read.used(verb=True):
                return _run(given)
    return _run(given)


def _is_verb(word: str) -> bool:
    """Whether there is a verb of that name: a slip of the hand leaves nothing behind."""
    return os.path.isfile(os.path.join(os.path.dirname(__file__), "cli", "verbs", f"{word}.py"))  # noqa: PTH113, PTH118, PTH120  the quick way


def _run(given: list[str]) -> int:
    """Run a verb of the command line."""
    from jobsheet.cli.main import run

    return run(given, _open_window)


def program() -> NoReturn:
    """The program as a shell starts it: ends the process with the exit code of `main`.

    Taking down every module and value by itself is a fifth of a verb's time and changes nothing: what was printed
    is out, files are closed where they are written, and what asked to be called at the end is called. Where
    anything may need more than that, the process ends as Python does it.
    """
    code = main()
    if not any(name in sys.modules for name in TAKEN_DOWN) and _all_is_out():
        atexit._run_exitfuncs()  # noqa: SLF001  # as Python itself does at its end; there is no other way to ask it
        os._exit(code)
    sys.exit(code)


def _all_is_out() -> bool:
    """Whether all that was printed has gone where it should; what could not be is Python's to say."""
    try:
        for stream in (sys.stdout, sys.stderr):
            stream.flush()
    except (OSError, ValueError, AttributeError):  # nobody reads it, closed, not there
        return False
    return True


if __name__ == "__main__":
    program()
