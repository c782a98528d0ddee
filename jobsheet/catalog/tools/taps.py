"""What a tap's style does to its torque; rows with their source in `resources/taps.yaml`."""

from __future__ import annotations

from functools import cache

from jobsheet.catalog.reading.data import shipped

#: The style of the last tap of a hand set that is torque's worst; taper and plug share the plug's row.
_ROWS = {
    "": "plug", "plug": "plug", "taper": "plug", "taper and plug": "plug", "bottoming": "bottoming",
    "taper, plug and bottoming": "plug", "spiral flute": "spiral flute", "spiral point": "spiral point",
    "form": "plug",
}  # fmt: skip


@cache
def _table() -> dict[str, dict[str, str]]:
    data: dict[str, dict[str, str]] = shipped("taps.yaml")["factors"]
    return data


def tap_factor(style: str, metal: str, fine: bool) -> float:
    """The factor K of the tap maker's torque formula.

    Parameters
    ----------
    style : str
        As in `catalog.cutters.TAP_STYLES`
    metal : str
        `steel`, `iron and aluminium` or `brass`
    fine : bool
        A pitch finer than the coarse series
    """
    row = _table()[_ROWS[style]]
    return float(row[f"{metal}, {'fine' if fine else 'coarse'}"])


def condition_factor(condition: str) -> float:
    """How much more a worn or dry tap asks: common practice, in `resources/taps.yaml`."""
    return _condition_factors()[condition]


@cache
def _condition_factors() -> dict[str, float]:
    """Read once: every edit of a plan with a tap asks it."""
    return {name: float(row["factor"]) for name, row in shipped("taps.yaml")["conditions"].items()}
