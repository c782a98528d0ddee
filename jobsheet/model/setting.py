"""Everything an operation sees beside its own fields; built by `reckoning/`, frozen, hashable."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.capacity import Snapshot
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.profile import Profile
from jobsheet.model.shop import Shop


class Grip(Struct, frozen=True, kw_only=True):
    """What holds the work: the force at the jaws or under all straps [N],
    friction, and how far it stands up [m].
    """

    kind: str
    force: float
    low: float
    high: float
    friction: float
    above: float | None = None
    jaw_depth: float | None = None
    #: How wide the jaws are [m]; None where no vice holds it.
    jaw_width: float | None = None
    #: What keeps round work from turning about its own axis [N m], and half its
    #: diameter [m]; None where it is not round.
    turning: float | None = None
    radius: float | None = None
    #: Whether jaws stand round the work, so that it can only turn in them or slip along them.
    around: bool = False
    #: Whether that axis stands up, so that a drill turns the work about it.
    upright: bool = False
    #: Of jaws round the work: how far it stands out of them, where no tailstock holds
    #: its end, and how long they grip [m].
    out: float | None = None
    gripped: float | None = None
    #: Whether something behind tall work takes what would tip it.
    held_up: bool = False
    #: How the force was worked out; `{}` in it stands for `over`, the lead of a screw or the bolt [m].
    working: str = ""
    over: float | None = None


class Setting(Struct, frozen=True, kw_only=True):
    """What stands around one operation. Lengths [m]."""

    machine: Machine
    material: Material
    shop: Shop = Shop()
    units: str = "mm"
    fluid: str = "brushed"
    #: The work as held, before this operation: along x, along y and up.
    extent: tuple[float, float, float] = (0.0, 0.0, 0.0)
    #: The stock under the face that is up, where it is no box.
    profile: Profile | None = None
    #: The largest hole that already stands at every one of this operation's places, or None.
    pilot: float | None = None
    #: What has come off the top since the cutter of this operation was touched on it:
    #: its depth dial reads so much more.
    wound: float = 0.0
    #: Scale or a cast skin on the face that this operation is the first to cut [m]; no kind
    #: and no limit reads it, only advice.
    skin: float = 0.0
    #: Steps from here to the bottom, for what goes through.
    thickness: float = 0.0
    #: What holds the work, or None where it is not known.
    grip: Grip | None = None
    #: How high the top of the work stands over the table [m], or None where it is not known.
    top: float | None = None
    #: What lies on the table, work and vice together [kg], or None.
    load: float | None = None
    #: What test cuts have taught of this machine, or None where nothing was tried or it is not asked yet.
    proof: Snapshot | None = None
