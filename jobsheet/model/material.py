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
    handbook's drilling constants (inch numbers, used unchanged); tap_kc [Pa] is the tap maker's.
    Speeds are start values with a steady flow of fluid [m/s].
    """

    name: str
    title: str
    group: str
    family: str
    kc11: Sourced
    mc: Sourced
    kd_torque: Sourced
    kd_thrust: Sourced
    kp: Sourced | None = None
    tap_kc: Sourced | None = None
    tap_class: str = "steel"
    speeds: tuple[tuple[str, float], ...] = ()
    also: tuple[str, ...] = ()
    hazards: tuple[str, ...] = ()
    chips: str = ""
    work_hardens: bool = False
    dry_by_nature: bool = False
    note: str = ""

    def speed(self, work: str) -> float | None:
        """The start speed for `mill`, `carbide mill`, `drill`, `ream` or `tap` [m/s], or None."""
        for name, value in self.speeds:
            if name == work:
                return value
        return None
