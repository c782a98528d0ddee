"""Units beyond the everyday table, by the units library; imported only when somebody uses one."""

from __future__ import annotations

from functools import cache
from typing import Any

#: Our unit strings in the library's words.
_NAMES = {"rev/s": "turn/s", "m/rev": "m", "-": "dimensionless", "m^3/s": "m**3/s", "m^3": "m**3"}


@cache
def registry() -> Any:
    """The library's registry; made once, some 0.2 s."""
    import pint

    return pint.UnitRegistry()


def convert(number: float, unit: str, wanted: str) -> float | None:
    """A number in some unit, in the SI unit wanted; None if there is no such
    unit or it measures something else.

    Only a name is handed over, never what was typed as a whole: the library reads `3,5 mm` as 35 mm.
    """
    if (
        not unit.replace("_", "")
        .replace("/", "")
        .replace("*", "")
        .replace("^", "")
        .replace(" ", "")
        .isalnum()
        or len(unit) > 40
    ):
        return None
    known = registry()
    try:
        return float(
            known.Quantity(number, known.Unit(unit))
            .to(_NAMES.get(wanted, wanted.replace("^", "**")))
            .magnitude
        )
    except Exception:  # noqa: BLE001 - the library raises a dozen kinds, all of which mean: no such unit here
        return None
