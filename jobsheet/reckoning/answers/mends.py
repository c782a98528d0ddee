"""Other cutters for a pace that no hand winds evenly: other teeth, another size; each with its
figures. Speed and feed are the adviser's.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.model.figure import Figures
from jobsheet.model.job import Operation
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.advice import table_feed_per_tooth
from jobsheet.reckoning.what_if import Tried, tried, with_texts
from jobsheet.units.lazily import pattern
from jobsheet.units.show import significant, trimmed
from jobsheet.units.table import INCH

_TEETH = pattern(r"\b\d+(\s*-?\s*)(teeth|tooth|flutes?|inserts?|edges?)\b", re.IGNORECASE)
#: Teeth that milling cutters are sold with, and the diameters that workshops have (common practice).
_COMMON_TEETH = (2, 3, 4, 5, 6, 8)
#: Those of a kind (common practice, no source): a fly cutter has one bit, a slot drill two or three edges that
#: meet in its middle, and a saw has the teeth that it has.
_TEETH_OF = {"fly cutter": (), "slot drill": (2, 3), "slitting saw": ()}
_DIAMETERS = {
    "mm": (3, 4, 5, 6, 8, 10, 12, 16, 20, 25, 32, 40, 50, 63, 80),
    "in": (0.125, 0.1875, 0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5, 3),
}
_FRACTIONS = {
    0.125: "1/8",
    0.1875: "3/16",
    0.25: "1/4",
    0.3125: "5/16",
    0.375: "3/8",
    0.5: "1/2",
    0.625: "5/8",
    0.75: "3/4",
}
#: A step this much above the speed that the cutting speed asks for is still offered (common practice).
_OVER = 1.10
#: So many of each sort are offered: the nearest to what is there.
_OFFERED = 2


class Mend(Struct, frozen=True, kw_only=True):
    """One thing that mends it: its label, what to type, and what comes of
    it [rev/s, m/s, m, share of the torque].
    """

    sort: str
    label: str
    edits: tuple[tuple[str, str], ...]
    pace: float
    cutting_speed: float
    feed_per_tooth: float
    torque_share: float | None
    verdict: str


def out_of_hand(figures: Figures | None, setting: Setting) -> int:
    """1 where the pace is faster than a hand keeps even, −1 where slower, 0
    where it is right or nothing is wound.
    """
    pace = figures.value("handle_pace") if figures is not None else None
    return setting.shop.out_of_hand(pace) if pace is not None else 0


def mends_for(operation: Operation, setting: Setting, figures: Figures | None) -> tuple[Mend, ...]:
    """What mends a pace beyond the hand's; or a chip that is thinner or thicker than the
    table has it, because of the hand.

    Each offer was reckoned whole: it winds evenly, and no limit is beyond that was not beyond before. Where
    the pace is even and the chip is right there is nothing to mend.
    """
    fields, kind = operation.fields, operation.kind
    cutter = getattr(fields, "cutter", None)
    if figures is None or cutter is None or not hasattr(fields, "feed_per_tooth") or not cutter.teeth:
        return ()
    wanted = _wanted(kind, fields, setting)
    chip = figures.number("feed_per_tooth")
    low, high, value = wanted if wanted is not None else (chip, chip, chip)
    typed = fields.feed_per_tooth.value if fields.feed is None and fields.feed_per_tooth is not None else None
    right = low * (1 - 1e-6) <= chip <= high * (1 + 1e-6)
    if not out_of_hand(figures, setting) and (
        typed is not None or right or not _beyond_reach(figures, value, setting)
    ):
        return ()
    # What is typed as a feed per tooth is what the person wants; a table feed says nothing of the chip.
    tooth = typed if typed is not None else chip if right else value
    base: tuple[tuple[str, str], ...] = ()
    if typed is None:
        base = (("feed", ""), ("feed_per_tooth", _tooth_text(tooth, setting.units)))
    before = {limit.name for limit in tried(kind, fields, setting).limits if limit.verdict == "beyond"}
    mends: list[Mend] = []
    for sort, offers in (
        ("teeth", _teeth(fields)),
        ("cutter", _cutters(fields, setting)),
    ):
        made = [
            mend
            for label, edits in offers
            if (mend := _mend(operation, setting, sort, label, (*base, *edits), before)) is not None
        ]
        mends += made[:_OFFERED]
    return tuple(mends)


def _beyond_reach(figures: Figures, tooth: float, setting: Setting) -> bool:
    """Whether the chip that the table wants [m] could not be wound evenly at this speed: then it
    is the hand that stands in the way.
    """
    pace, chip = figures.value("handle_pace"), figures.value("feed_per_tooth")
    return not pace or not chip or bool(setting.shop.out_of_hand(pace * tooth / chip))


def _wanted(kind: str, fields: Any, setting: Setting) -> tuple[float, float, float] | None:
    """The feed per tooth that the table gives: low, high and start [m]; None where it has none."""
    suggestion = table_feed_per_tooth(
        fields.cutter, setting, between_walls=kind_of(kind).plays(fields).between_walls
    )
    return (suggestion.low, suggestion.high, suggestion.value) if suggestion is not None else None


def _mend(
    operation: Operation,
    setting: Setting,
    sort: str,
    label: str,
    edits: tuple[tuple[str, str], ...],
    before: set[str],
) -> Mend | None:
    """The offer reckoned; None where it does not mend, or something new is beyond."""
    last = dict(edits)
    try:
        fields = with_texts(operation.kind, operation.fields, tuple(last.items()), setting.units)
    except JobsheetError:
        return None
    attempt: Tried = tried(operation.kind, fields, setting)
    pace, speed, tooth = (
        attempt.value("handle_pace"),
        attempt.value("cutting_speed"),
        attempt.value("feed_per_tooth"),
    )
    if pace is None or speed is None or tooth is None or out_of_hand(attempt.figures, setting):
        return None
    if {limit.name for limit in attempt.limits if limit.verdict == "beyond"} - before:
        return None
    torque, worst = attempt.limit("spindle-torque"), attempt.governing
    share = torque.share if torque is not None else None
    words = [
        label,
        f"{pace * 60:.1f} turns a minute",
        attempt.shown("cutting_speed"),
        f"{attempt.shown('feed_per_tooth')} a tooth",
    ]
    if share is not None:
        words.append(f"{share * 100:.0f} % of the torque")
    return Mend(
        sort=sort, label=f"{words[0]}: {', '.join(words[1:])}", edits=tuple(last.items()), pace=pace, cutting_speed=speed,
        feed_per_tooth=tooth, torque_share=share, verdict=worst.verdict if worst is not None else "unknown",
    )  # fmt: skip


def _teeth(fields: Any) -> Iterator[tuple[str, tuple[tuple[str, str], ...]]]:
    """The same cutter with other teeth, the nearest number first; its place in the
    cabinet is left out: it is another tool.
    """
    teeth = fields.cutter.teeth
    for other in sorted(
        _TEETH_OF.get(fields.cutter.kind, _COMMON_TEETH), key=lambda count: abs(count - teeth)
    ):
        if other == teeth:
            continue
        words = "1 tooth" if other == 1 else f"{other} teeth"
        yield f"a cutter with {words}", (("cutter", _with_teeth(fields.cutter, words)),)


def _elsewhere(cutter: Any) -> str:
    """The line of a cutter without its place: what is offered is another tool."""
    text: str = cutter.text
    return re.sub(rf",\s*{re.escape(cutter.place)}\s*$", "", text) if cutter.place else text


def _with_teeth(cutter: object, words: str) -> str:
    text = _elsewhere(cutter)
    if _TEETH.search(text):
        return _TEETH.sub(words, text, count=1)
    head, comma, rest = text.partition(",")
    return f"{head}, {words}{comma}{rest}"


def _cutters(fields: Any, setting: Setting) -> Iterator[tuple[str, tuple[tuple[str, str], ...]]]:
    """The same cutter in another diameter, at the speed that it asks for itself."""
    cutter = fields.cutter
    unit = 1e-3 if setting.units == "mm" else INCH
    size = (cutter.diameter or 0.0) / unit
    if not size or cutter.size not in cutter.text:
        return
    for other in sorted(_DIAMETERS[setting.units], key=lambda diameter: abs(diameter - size)):
        if abs(other - size) < 1e-9:
            continue
        written = f"{_FRACTIONS.get(other, trimmed(other, 3))} {setting.units}"
        text = _elsewhere(cutter).replace(cutter.size, written, 1)
        yield f"a cutter of {written}", (("cutter", text), ("spindle", ""))


def _tooth_text(value: float, units: str, *, up: bool | None = None) -> str:
    """A feed per tooth as it is typed; rounded down, or up, so that it stays on the right side."""
    from math import ceil, floor

    unit, step, decimals = (1e-3, 1e-3, 3) if units == "mm" else (INCH, 1e-4, 4)
    number = value / unit
    if number < 10 * step:
        return f"{significant(number)} {units}"
    if up is None:
        return f"{trimmed(round(number / step) * step, decimals)} {units}"
    count = ceil(number / step - 1e-9) if up else floor(number / step + 1e-9)
    return f"{trimmed(count * step, decimals)} {units}"
