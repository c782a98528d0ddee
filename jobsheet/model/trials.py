"""What test cuts have shown: one trial as it was recorded, and the capacity of a
machine that is learned from all of them.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec import Struct

#: How a test cut can end, in the order of their digits on screen and sheet.
OUTCOMES = ("clean", "noisy", "slowed", "chatter", "stalled", "slipped", "broke", "too hard to wind")
#: Processes of which both the drive and chatter are learned; of the others only the drive.
MILLING = ("face", "side", "slot")
#: What may change at a machine, with the limits of which older trials then say less (common practice: what a
#: fitter would look at first): gibs and vice stiffen it, the belt drives it, bearings do both.
CHANGES: dict[str, tuple[str, ...]] = {
    "gibs": ("chatter",), "belt": ("spindle-torque",), "bearings": ("spindle-torque", "chatter"), "vice": ("chatter",),
    "motor": ("spindle-torque",), "something else": ("spindle-torque", "chatter"),
}  # fmt: skip
#: Of ordinary work those that ring as milling does.
MILLED = ("pocket", "keyway", "fly cut")
#: The limit that a ladder of such cuts is about; of all others it is the torque.
ABOUT = dict.fromkeys((*MILLING, *MILLED), "chatter")
#: What slipped, where something did.
SLIPPED = ("vice", "holder", "shank")
#: Kinds of cut that are proved, each with a bias of its own.
PROCESSES = ("face", "side", "slot", "drill", "tap")
#: What ordinary work is as well: each a process of its own, of which no ladder is made.
WORKED = (
    "pocket", "keyway", "fly cut", "chamfer", "spot", "enlarge", "plunge", "bore", "ream", "counterbore", "countersink",
)  # fmt: skip
#: The limits that are learned: both as a factor on what the card or the class gives.
LEARNED = ("spindle-torque", "chatter")


class Asked(Struct, frozen=True):
    """What a trial asked of one limit: the demand [N·m or N/m], and its share of what
    the card or class gives there [-].

    The share is of the peak torque at that speed, or of the class value with that cutter: the learned
    capacity is one factor on the whole of either.
    """

    limit: str
    demand: float
    share: float


class Trial(Struct, frozen=True, kw_only=True):
    """One test cut. Speeds [rev/s], lengths [m], times [s]; `step` holds the fields of the cut as typed."""

    machine: str
    date: str
    process: str
    cutter: str
    cutter_kind: str
    material: str
    outcome: str
    asked: tuple[Asked, ...]
    role: str = ""
    holding: str = ""
    stick_out: float | None = None
    speed: float | None = None
    tachometer: float | None = None
    length: float | None = None
    seconds: float | None = None
    slipped: str = ""
    note: str = ""
    kind: str = ""
    units: str = "mm"
    step: tuple[tuple[str, str], ...] = ()
    #: A later record may strike out a wrong one by its id; then only date, role and note count.
    strikes: str = ""
    #: A mark that the machine changed, one of `CHANGES`: older trials fade by it;
    #: then only date, role and note count.
    changed: str = ""
    #: A later record may say of one that seemed odd that it was so; then only date, role and note count.
    keeps: str = ""
    #: The part and plan revision whose step it was, where it is how a step of
    #: ordinary work went; empty for a test cut.
    job: str = ""
    #: The entry of the job's own record that it was taken from.
    entry: str = ""
    #: Time of day when it was written down, such as `14:05:30`: trials of one day keep their order by it.
    time: str = ""
    #: Told apart by content, so that two logs merge without doubling; empty until it is written.
    id: str = ""

    @property
    def is_cut(self) -> bool:
        """Whether something was cut: not a strike, a mark that the machine
        changed, or that an odd one was so.
        """
        return not (self.strikes or self.changed or self.keeps)

    def one_cut(self) -> dict[str, str]:
        """Its fields as typed, but `width` and `depth` those of one cut where the step took several."""
        typed = dict(self.step)
        for whole, part in (("width", "cut"), ("depth", "layer")):
            if typed.get(whole) and typed.get(part):
                typed[whole] = typed[part]
        return typed

    def of(self, limit: str) -> Asked | None:
        """What it asked of that limit, or None."""
        return next((one for one in self.asked if one.limit == limit), None)


def struck_out(records: Iterable[Trial]) -> dict[str, Trial]:
    """By the id of what is struck out the record that does so, the latest of several; a strike
    that is itself struck strikes nothing.
    """
    strikes: dict[str, list[Trial]] = {}
    for one in records:
        if one.strikes:
            strikes.setdefault(one.strikes, []).append(one)
    known: dict[str, Trial | None] = {}

    def by(name: str) -> Trial | None:
        # A strike names what it strikes by a hash of its words, so that no two can name each other.
        if name not in known:
            known[name] = None
            known[name] = next((one for one in reversed(strikes.get(name, [])) if by(one.id) is None), None)
        return known[name]

    return {name: found for name in strikes if (found := by(name)) is not None}


def in_time(records: Iterable[Trial]) -> list[Trial]:
    """Records in the order of time: a mark that the machine changed goes before
    what was cut at that very time.
    """
    return sorted(records, key=lambda one: (one.date, one.time, not one.changed))
