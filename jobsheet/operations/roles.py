"""What a kind of step is to everything that does not know it: rules, limits, answers, cabinet and ladder ask for roles, never for names."""

from __future__ import annotations

from msgspec import Struct

#: What a milling cut makes: the top over its whole face; a wall along a side; a groove as wide as its cutter;
#: a recess within its outline; a broken edge.
MILLS = ("flat", "wall", "groove", "recess", "edge")
#: What is done to the hole at each of its places.
HOLES = ("spot", "drill", "plunge", "bore", "ream", "counterbore", "countersink", "tap")
#: What is done beside cutting at the machine: by hand in words, sawing, checking how
#: the head stands, finding the zero.
BESIDE = ("bench", "saw", "tram", "find")
#: Published cutting speeds and tables of feeds, by the names that the catalogue gives them.
SPEEDS = ("mill", "drill", "ream", "tap")
FEEDS = ("drill", "ream", "counterbore", "countersink", "plunge")
#: The fields by which those that ask for a role read a step; a kind that has the role has them by these
#: names. What stands elsewhere among its fields is its own.
NEEDS: dict[str, tuple[str, ...]] = {
    "flat": ("cutter", "depth", "along", "measure"),
    "wall": ("cutter", "depth", "width", "cut", "leave", "path", "measure"),
    "groove": ("cutter", "depth", "measure"),
    "recess": ("cutter", "depth", "centre", "length", "width", "leave", "measure"),
    "edge": ("cutter", "edges"),
    "spot": ("cutter", "at", "depth"),
    "drill": ("cutter", "at", "depth", "peck", "feed", "spindle", "cutting_speed"),
    "plunge": ("cutter", "at", "depth"),
    "bore": ("cutter", "at", "depth", "to"),
    "ream": ("cutter", "at", "depth"),
    "counterbore": ("cutter", "at", "depth", "spindle"),
    "countersink": ("cutter", "at", "to", "spindle"),
    "tap": ("cutter", "at", "depth", "thread", "hole"),
    "bench": ("what", "measure", "does"),
    "saw": ("what",),
    "tram": ("what",),
    "find": ("cutter", "edges", "tip", "inside"),
}


class Roles(Struct, frozen=True, kw_only=True):
    """What one step is to others; empty where it is nothing of that sort. A kind is at most one of `mills`, `hole`, `beside`."""

    mills: str = ""
    hole: str = ""
    beside: str = ""
    #: The published speed at which a cutter of its own diameter starts, and the share of it that this
    #: cut starts at. Empty where another diameter than the cutter's is cut (a cone, a bore), or a
    #: rule of its own watches the speed.
    speed: str = ""
    speed_share: float = 1.0
    #: The table by which its feed per turn is suggested.
    feed: str = ""
    #: The process of test cuts, or of ordinary work, that it is judged by
    #: (`model.trials.PROCESSES` and `WORKED`).
    process: str = ""
    #: Whether it opens a hole that must be there, and makes none from the solid.
    opens: bool = False
    #: Whether the cutter has metal on both sides, as wide as it is.
    full_width: bool = False
    #: Whether it begins in metal that is closed all round, so that something must let the cutter in.
    closed: bool = False
    #: Whether a key goes into it: cutters for that are ground to its width.
    keyed: bool = False
    #: Whether it leaves a loose piece in its middle.
    frees: bool = False
    #: What it does beside cutting (`operations/deeds.py`).
    does: tuple[str, ...] = ()
    #: Whether a tap is turned by hand, not by the spindle.
    by_hand: bool = False

    @property
    def name(self) -> str:
        """The one that it is of `mills`, `hole` and `beside`."""
        return self.mills or self.hole or self.beside

    @property
    def sizes(self) -> bool:
        """Whether it mills a face, a wall, a groove or a recess to a size; a broken edge is none."""
        return self.mills in ("flat", "wall", "groove", "recess")

    @property
    def between_walls(self) -> bool:
        """Whether it goes down into the work between walls that it makes itself."""
        return self.mills in ("groove", "recess")
