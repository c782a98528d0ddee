"""Everything an operation sees beside its own fields; built by `reckoning/`, frozen, hashable."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.proof import Snapshot


class Shop(Struct, frozen=True, kw_only=True):
    """The workshop's own numbers; a person may change each.

    Sources: pace, pushes and wrench forces are cutting-data sections 1.13, 1.15 and 1.6
    (common practice, published levels for levers); wear is 1.3 and 1.4. Holding is 1.14, the crank 1.15,
    a chuck's grip on a tap 1.6 (estimate). Length of a holder, run-in and times are common practice.
    `proof_ageing` is what a year adds to the spread of a learned capacity (of its logarithm: about a tenth; common
    practice, no source), `proof_chance` that with which the next test cut may end badly (design, Proving).
    """

    slowest_pace: float = 8 / 60
    fastest_pace: float = 50 / 60
    easy_push: float = 100.0
    strong_push: float = 200.0
    lever_efficiency: float = 0.85
    easy_wrench: float = 30.0
    strong_wrench: float = 60.0
    wear_milling: float = 1.1
    wear_drilling: float = 1.3
    holding_factor: float = 2.5
    holding_factor_high: float = 4.0
    friction: float = 0.12
    stiff_crank: float = 45.0
    stuck_crank: float = 90.0
    holder_length: float = 0.06
    chuck_torque: float = 4.0
    run: float = 0.005
    set_up_time: float = 15 * 60.0
    tool_change_time: float = 2 * 60.0
    measuring_time: float = 90.0
    proof_ageing: float = 0.10
    proof_chance: float = 0.10

    def out_of_hand(self, pace: float) -> int:
        """1 where a handle turns faster than a hand keeps even [rev/s], −1 where slower, 0 between.

        A bound itself is between, also where it was reached by way of inches and is off by a rounding.
        """
        if pace > self.fastest_pace * (1 + 1e-9):
            return 1
        return -1 if pace < self.slowest_pace * (1 - 1e-9) else 0


class Grip(Struct, frozen=True, kw_only=True):
    """What holds the work: the force at the jaws or under all straps [N], friction, and how far it stands up [m]."""

    kind: str
    force: float
    low: float
    high: float
    friction: float
    above: float | None = None
    jaw_depth: float | None = None
    working: str = ""


class Setting(Struct, frozen=True, kw_only=True):
    """What stands around one operation. Lengths [m]."""

    machine: Machine
    material: Material
    shop: Shop = Shop()
    units: str = "mm"
    fluid: str = "brushed"
    #: The work as held, before this operation: along x, along y and up.
    extent: tuple[float, float, float] = (0.0, 0.0, 0.0)
    #: The largest hole that already stands at every one of this operation's places, or None.
    pilot: float | None = None
    #: Steps from here to the bottom, for what goes through.
    thickness: float = 0.0
    #: What holds the work, or None where it is not known.
    grip: Grip | None = None
    #: How high the top of the work stands over the table [m], or None where it is not known.
    top: float | None = None
    #: What lies on the table, work and vise together [kg], or None.
    load: float | None = None
    #: What test cuts have taught of this machine, or None where nothing was tried or it is not asked yet.
    proof: Snapshot | None = None
