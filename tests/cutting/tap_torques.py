"""The torque of a tap as the tests of tapping ask it: millimetres and N/mm²."""

from __future__ import annotations

from jobsheet.cutting import tapping


def torque(major: float, hole: float, k: float = 1.35, kc: float = 3900) -> float:
    return tapping.tap_torque(kc * 1e6, k, major * 1e-3, hole * 1e-3)
