"""A machine card: what one machine is and has. Lengths [m], speeds [rev/s],
torques [N·m], stiffness [N/m].
"""

from __future__ import annotations

from msgspec import Struct


class Marked(Struct, frozen=True):
    """A number with where it comes from: `plate`, `measured` or `guessed`."""

    value: float
    mark: str


class SpeedStep(Struct, frozen=True):
    """One speed the machine really has, as marked, and where belt or lever must stand."""

    speed: float
    marked: str
    position: str = ""
    measured: float | None = None


class SpeedRange(Struct, frozen=True, kw_only=True):
    """One range: stepped or stepless; its efficiency, base speed and drive cap.

    `base` is the speed at which the plate power is reached; None for a drive whose power is the
    same at every step.
    """

    name: str
    steps: tuple[SpeedStep, ...] = ()
    lowest: float | None = None
    highest: float | None = None
    efficiency: Marked
    base: float | None = None
    cap: Marked | None = None


class Spindle(Struct, frozen=True, kw_only=True):
    """The drive: plate power [W], how far it can be pushed for seconds, and its ranges."""

    drive: str
    change: str
    power: Marked
    short_peak: float
    ranges: tuple[SpeedRange, ...]
    reverses: bool
    slips: bool


class Handle(Struct, frozen=True, kw_only=True):
    """One handle: advance a turn, value of a line, backlash and crank radius [m]; the dial's unit.

    `efficiency` is that of its screw; `counts_up` says in words which way the dial grows.
    """

    name: str
    travel: float
    line: float
    dial: str
    backlash: float | None = None
    crank: float | None = None
    efficiency: Marked | None = None
    counts_up: str = ""


class Lever(Struct, frozen=True):
    """The quill lever: length, quill travel a turn [m], return spring [N]."""

    length: float
    travel: float
    spring: float


class Vice(Struct, frozen=True, kw_only=True):
    """A vice that belongs to the machine: jaws, how high it stands [m], mass [kg], and its screw."""

    name: str
    jaw_width: float
    jaw_depth: float
    opening: float | None = None
    bed_height: float | None = None
    mass: float | None = None
    lead: float | None = None
    efficiency: Marked | None = None
    usual_torque: float | None = None


class Table(Struct, frozen=True, kw_only=True):
    """The table: length and width [m], slots in words, what it may carry [kg]."""

    length: float | None = None
    width: float | None = None
    slots: str = ""
    load: float | None = None


class Machine(Struct, frozen=True, kw_only=True):
    """One machine card, whole as far as the figures need it."""

    name: str
    title: str
    kind: str
    card_date: str
    invented: bool
    column: str
    spindle: Spindle
    handles: tuple[Handle, ...]
    lever: Lever | None
    quill: bool
    stand: str = ""
    noise: float | None = None
    vice: str = ""
    vices: tuple[Vice, ...] = ()
    table: Table | None = None
    daylight: tuple[float, float] | None = None
    drag: Marked | None = None
    mass: float | None = None
    taper: str = ""
    drawbar: str = ""
    readout: str = ""
    power_feed: str = ""
    trammed: str = ""
    largest_drill: str = ""
    travel: tuple[tuple[str, float], ...] = ()
    frame: Marked | None = None
    stiffness_class: str = ""
    note: str = ""
    #: What of it nobody has measured yet, in the words of the card.
    assumed: str = ""

    def handle(self, name: str) -> Handle | None:
        """The handle of that axis (`x`, `y`, `z`, `quill`), or None."""
        for handle in self.handles:
            if handle.name == name:
                return handle
        return None
