"""What happened at the machine with a job: one entry as it was said, and all of them together."""

from __future__ import annotations

from msgspec import Struct

#: What an entry is about.
ABOUT = ("step", "size", "minutes", "change")
#: Beside the outcomes of a test cut: the step was left out this time.
NOT_CUT = "not cut"
#: What one would change, in ready words (look-2, bench-entry).
CHANGES = ("nothing", "lighter", "slower", "other cutter", "hold deeper", "other order")


class Entry(Struct, frozen=True, kw_only=True):
    """One thing that was said of a run. Speeds [rev/s], lengths [m], times [s];
    nothing is filled in that was not said.

    `plan` is the check code of the file as it was printed or opened, `revision` its number there; `key` and
    `number` name the step, `layer` which of its layers gave trouble (0: all or not said).
    """

    job: str
    plan: str
    revision: int
    machine: str
    date: str
    about: str
    time: str = ""
    role: str = ""
    key: str = ""
    number: int = 0
    step: str = ""
    outcome: str = ""
    layer: int = 0
    slipped: str = ""
    #: What really ran, where it was not as planned or was timed.
    speed: float | None = None
    depth: float | None = None
    length: float | None = None
    seconds: float | None = None
    #: A size as the sheet names it, and what was found.
    size: str = ""
    found: float | None = None
    #: Minutes to set up and to cut, of the set-up of that number (0: of the whole job) [s].
    set_up: int = 0
    setting_up: float | None = None
    cutting: float | None = None
    #: What was planned then, beside minutes: to set up, and the rest by kind of work [s].
    planned_set_up: float | None = None
    planned_milling: float | None = None
    planned_holes: float | None = None
    planned_by_hand: float | None = None
    #: What one would change next time: ready words, and one's own in the note.
    change: str = ""
    note: str = ""
    #: A later entry takes back a wrong one by its id; then only date, role and note count.
    takes_back: str = ""
    id: str = ""


class Runs(Struct, frozen=True, kw_only=True):
    """All entries of a job in the order of dates, with those that were taken
    back, and the entries that did so.
    """

    entries: tuple[Entry, ...] = ()
    back: tuple[Entry, ...] = ()

    @property
    def standing(self) -> tuple[Entry, ...]:
        """The entries that count."""
        out = {entry.takes_back for entry in self.back}
        return tuple(entry for entry in self.entries if entry.id not in out)

    def of_step(self, key: str) -> tuple[Entry, ...]:
        """What counts of one step, the oldest first."""
        return tuple(entry for entry in self.standing if entry.about == "step" and entry.key == key)

    @property
    def dates(self) -> tuple[str, ...]:
        """The days on which something was cut or said, the newest first."""
        return tuple(sorted({entry.date for entry in self.standing}, reverse=True))
