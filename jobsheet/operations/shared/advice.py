"""What may be written in a field, and the feeds of the catalogue from which it is worked out.

Advice is text as a person would type it, so that taking it is an edit like any other, and
nothing is ever reapplied by itself.
"""

from __future__ import annotations

import math
from typing import Any

from msgspec import Struct

from jobsheet.catalog.cuts.feeds import (
    drill_feed,
    end_mill_feed,
    face_mill_feed,
    gentle_feed,
    reamer_feed,
)
from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.errors import JobsheetError
from jobsheet.model.setting import Setting
from jobsheet.units.show import significant


class Advice(Struct, frozen=True):
    """What might be written in a field: its name, the text to type, why, and where that comes from."""

    name: str
    text: str
    why: str
    source: str


#: A plunging end mill takes a quarter of a drill's feed (cutting-data section 3.4).
_PLUNGE = 0.25


def table_feed_per_tooth(cutter: Any, setting: Setting, *, between_walls: bool) -> Suggestion | None:
    """The feed per tooth that the catalogue has for this cutter in this kind of
    cut [m]; None where it has none.
    """
    if cutter.kind in ("face mill", "fly cutter"):
        return _of(lambda: face_mill_feed(setting.material))
    cut = "slot" if between_walls else "side"
    return _of(
        lambda: end_mill_feed(
            cutter.diameter, setting.material, carbide=cutter.material == "carbide", cut=cut
        )
    )


def table_feed_per_turn(table: str, cutter: Any, setting: Setting) -> Suggestion | None:
    """The feed per turn of that table for this tool [m]; None where the catalogue has none."""
    if table == "ream":
        return _of(lambda: reamer_feed(cutter.teeth or 6))
    if table in ("counterbore", "countersink", "spot drill"):
        return _of(lambda: gentle_feed(table, cutter.diameter, setting.material))
    if table == "plunge":
        drill = _of(lambda: drill_feed(cutter.diameter, setting.material))
        if drill is None:
            return None
        return drill.times(_PLUNGE, "a quarter of a drill's")
    if table == "drill":
        return _of(lambda: drill_feed(cutter.diameter, setting.material))
    return None


def _of(ask: Any) -> Suggestion | None:
    """The catalogue's answer, or None where it has none."""
    try:
        suggestion: Suggestion = ask()
    except JobsheetError:
        return None
    return suggestion


def down(number: float, digits: int = 2) -> float:
    """So many significant digits, never more than the number: a limit of the
    hand must not be rounded past.
    """
    step = 10.0 ** (math.floor(math.log10(number) + 1e-9) - digits + 1)
    return math.floor(number / step + 1e-9) * step


def typed_number(number: float) -> str:
    """As a person would write it: two digits, and a third behind a one, so that the
    last is never worth more than 5 %.
    """
    leading = number / 10.0 ** math.floor(math.log10(number) + 1e-9)
    if leading >= 2 - 1e-9:
        return significant(down(number), 2)
    text = significant(down(number, 3), 3)
    return text.removesuffix("0").removesuffix(".") if "." in text else text
