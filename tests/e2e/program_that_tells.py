"""The program as a person starts it, but it tells two states by files in its home: keys and menus are there; what was remarked.

Nothing that an X display shows tells either moment, and a key that is pressed before it goes nowhere.
"""

import os
import sys
from pathlib import Path

READY = "ready"
REMARKS = "remarks"


def main():
    from jobsheet.gui.start.app import main as start
    from jobsheet.gui.window.window import Window

    begin = Window._begin

    def begin_and_tell(window):
        begin(window)
        Path(os.environ["JOBSHEET_HOME"], READY).touch()

    Window._begin = begin_and_tell

    from jobsheet.gui.desk.reading_through import ReadingThrough

    read = ReadingThrough.read

    def read_and_tell(reading, facts):
        new = read(reading, facts)
        rules = " ".join(remark.rule for remark in reading._desk.remarks)
        Path(os.environ["JOBSHEET_HOME"], REMARKS).write_text(rules, encoding="utf-8")
        return new

    ReadingThrough.read = read_and_tell
    return start(sys.argv[1] if len(sys.argv) > 1 else None)


if __name__ == "__main__":
    sys.exit(main())
