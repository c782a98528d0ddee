"""The program as a person starts it, but it says when its keys and menus are there: by a file in its home.

Nothing that an X display shows tells that moment, and a key that is pressed before it goes nowhere.
"""

import os
import sys
from pathlib import Path

READY = "ready"


def main():
    from jobsheet.gui.start.app import main as start
    from jobsheet.gui.window.window import Window

    begin = Window._begin

    def begin_and_tell(window):
        begin(window)
        Path(os.environ["JOBSHEET_HOME"], READY).touch()

    Window._begin = begin_and_tell
    return start(sys.argv[1] if len(sys.argv) > 1 else None)


if __name__ == "__main__":
    sys.exit(main())
