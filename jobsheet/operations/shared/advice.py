"""Suggestions for speed, feed and depth: from catalogue, cutter, machine and fluid; shown as such, taken only by hand.

A suggestion is text as a person would type it, so that taking it is an edit like any other, and nothing
is ever reapplied by itself.
"""

from __future__ import annotations

import math
from typing import Any

from msgspec import Struct

from jobsheet.catalog.cuts.depths import side_depth, side_width, slot_depth
from jobsheet.catalog.cuts.feeds import (
    drill_feed,
    end_mill_feed,
    face_mill_feed,
    face_mill_width,
    feed_as_drill,
    reamer_feed,
)
from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.errors import JobsheetError
from jobsheet.model.figure import Figures
from jobsheet.model.setting import Setting
from jobsheet.operations.names import show
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.roles import Roles
from jobsheet.units.show import significant
from jobsheet.units.table import INCH


class Advice(Struct, frozen=True):
    """What might be written in a field: its name, the text to type, why, and where that comes from."""

    name: str
    text: str
    why: str
    source: str


#: A plunging end mill takes a quarter of a drill's feed (cutting-data section 3.4).
_PLUNGE = 0.25


def advice_for(
    kind: str, fields: Any, setting: Setting, figures: Figures | None = None
) -> tuple[Advice, ...]:
    """What the catalogue would write into the fields of this operation, each with its reason.

    Nothing where a table has no answer: a suggestion is never guessed. With the figures at hand a feed is
    not suggested beyond what a hand winds evenly at this speed.
    """
    found: list[Advice] = []
    names, plays = set(fields.__struct_fields__), kind_of(kind).plays(fields)
    cutter = getattr(fields, "cutter", None)
    if cutter is None or cutter.diameter is None:
        return ()
    # A feed of the table is another way of saying the same: beside it there is nothing to suggest.
    if "feed_per_tooth" in names and getattr(fields, "feed", None) is None:
        tooth = _by_hand(
            table_feed_per_tooth(cutter, setting, between_walls=plays.between_walls), fields, setting, figures
        )
        _add(found, "feed_per_tooth", setting, tooth)
    if "feed" in names and "feed_per_tooth" not in names:
        _add(found, "feed", setting, table_feed_per_turn(plays.feed, cutter, setting))
    if "layer" in names:
        _add(found, "layer", setting, _layer(plays, cutter, setting))
    if plays.mills == "flat" and cutter.kind == "face mill":
        _add(found, "width", setting, face_mill_width(cutter.diameter))
    if plays.mills == "wall":
        _add(found, "cut", setting, side_width(cutter.diameter))
        _add(found, "leave", setting, side_width(cutter.diameter, finish=True))
    return tuple(found)


def table_feed_per_tooth(cutter: Any, setting: Setting, *, between_walls: bool) -> Suggestion | None:
    """The feed per tooth that the catalogue has for this cutter in this kind of cut [m]; None where it has none."""
    if cutter.kind in ("face mill", "fly cutter"):
        return _of(lambda: face_mill_feed(setting.material))
    cut = "slot" if between_walls else "side"
    return _of(
        lambda: end_mill_feed(
            cutter.diameter, setting.material, carbide=cutter.material == "carbide", cut=cut
        )
    )


def _by_hand(
    suggestion: Suggestion | None, fields: Any, setting: Setting, figures: Figures | None
) -> Suggestion | None:
    """No more than the handle's fastest even pace gives at the speed that is set."""
    speed = figures.value("spindle_speed") if figures else None
    handle = setting.machine.handle(getattr(fields, "along", "x") or "x")
    if suggestion is None or not speed or handle is None or not fields.cutter.teeth:
        return suggestion
    most = setting.shop.fastest_pace * handle.travel / (fields.cutter.teeth * speed)
    if suggestion.value <= most:
        return suggestion
    table = show("feed_per_tooth", suggestion.value, setting.units)
    why = f"as much as a hand winds evenly at {speed * 60:.0f} rpm; by the table {table}"
    return Suggestion(most, min(suggestion.low, most), most, "common-practice", suggestion.outside, why)


def table_feed_per_turn(table: str, cutter: Any, setting: Setting) -> Suggestion | None:
    """The feed per turn of that table for this tool [m]; None where the catalogue has none."""
    if table == "ream":
        return _of(lambda: reamer_feed(cutter.teeth or 6))
    if table in ("counterbore", "countersink"):
        return _of(lambda: feed_as_drill(table, cutter.diameter, setting.material))
    if table == "plunge":
        drill = _of(lambda: drill_feed(cutter.diameter, setting.material))
        if drill is None:
            return None
        return drill.times(_PLUNGE, "a quarter of a drill's")
    if table == "drill":
        return _of(lambda: drill_feed(cutter.diameter, setting.material))
    return None


def _layer(plays: Roles, cutter: Any, setting: Setting) -> Suggestion | None:
    knee = setting.machine.stiffness_class == "knee"
    if plays.between_walls:
        return _of(lambda: slot_depth(cutter.diameter, setting.material, knee=knee))
    return _of(lambda: side_depth(cutter.diameter)) if plays.mills == "wall" else None


def _of(ask: Any) -> Suggestion | None:
    """The catalogue's answer, or None where it has none."""
    try:
        found: Suggestion = ask()
    except JobsheetError:
        return None
    return found


def down(number: float, digits: int = 2) -> float:
    """So many significant digits, never more than the number: a limit of the hand must not be rounded past."""
    step = 10.0 ** (math.floor(math.log10(number) + 1e-9) - digits + 1)
    return math.floor(number / step + 1e-9) * step


def _typed(number: float) -> str:
    """As a person would write it: two digits, and a third behind a one, so that the last is never worth more than 5 %."""
    leading = number / 10.0 ** math.floor(math.log10(number) + 1e-9)
    if leading >= 2 - 1e-9:
        return significant(down(number), 2)
    text = significant(down(number, 3), 3)
    return text.removesuffix("0").removesuffix(".") if "." in text else text


def _add(found: list[Advice], name: str, setting: Setting, suggestion: Suggestion | None) -> None:
    if suggestion is None or suggestion.value <= 0:
        return
    size, unit = (INCH, "in") if setting.units == "in" else (1e-3, "mm")
    text = f"{_typed(suggestion.value / size)} {unit}"
    why = f"{suggestion.why} (outside the table)" if suggestion.outside else suggestion.why
    found.append(Advice(name, text, why, suggestion.source))
