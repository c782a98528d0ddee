"""A work material: its constants for forces, drilling and tapping, its speeds and its dangers."""

from __future__ import annotations

from msgspec import Struct


class Sourced(Struct, frozen=True):
    """A constant with the key of its source and how far it can be trusted."""

    value: float
    source: str
    trust: str


class Material(Struct, frozen=True, kw_only=True):
    """One row of the catalogue.

    kc11 [Pa] and mc [-] are Kienzle's constants for a chip of 1 mm; kd_torque and kd_thrust are the
    handbook's drilling constants (inch numbers, used unchanged); k_second [-] is the constant of the
    second, independent set of drilling lines; kp [W·s/mm³] is the energy of a volume; tap_kc [Pa] is
    the tap maker's. None where nobody gives one. Speeds are start values with a steady flow of fluid
    [m/s]; speed_sources says where each comes from. own is true where a person's own file had a say.
    """

    name: str
    title: str
    group: str
    family: str
    kc11: Sourced
    mc: Sourced
    kd_torque: Sourced
    kd_thrust: Sourced
    k_second: Sourced | None = None
    kp: Sourced | None = None
    tap_kc: Sourced | None = None
    tap_class: str = "steel"
    feed_class: str = ""
    hardness: str = ""
    speeds: tuple[tuple[str, float], ...] = ()
    speed_sources: tuple[tuple[str, Sourced], ...] = ()
    #: The top of the published range by the same names [m/s], where one is published.
    fastest: tuple[tuple[str, Sourced], ...] = ()
    also: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    chips: str = ""
    work_hardens: bool = False
    dry_by_nature: bool = False
    note: str = ""
    own: bool = False

    def speed(self, work: str) -> float | None:
        """The start speed for `mill`, `drill`, `ream`, `tap`, or `carbide`
        and one of the first three [m/s].
        """
        for name, value in self.speeds:
            if name == work:
                return value
        return None

    def fastest_of(self, work: str) -> Sourced | None:
        """The top of what is published for `mill`, `carbide mill` or `drill` [m/s], or None."""
        for name, sourced in self.fastest:
            if name == work:
                return sourced
        return None

    def speed_source(self, work: str) -> Sourced | None:
        """The same speed with its source and trust, or None."""
        for name, sourced in self.speed_sources:
            if name == work:
                return sourced
        return None
