"""Ways of making a hole with the tool that is named: every speed, feed and peck that may be tried."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from jobsheet.errors import JobsheetError
from jobsheet.model.setting import Setting
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared.advice import down as down_to
from jobsheet.reckoning.adviser.advised import Candidate
from jobsheet.reckoning.adviser.burden import burden_of
from jobsheet.reckoning.adviser.milling_cut import CLEAN, feed_text, part_text
from jobsheet.reckoning.adviser.remarks_drawn import of_drilling
from jobsheet.reckoning.adviser.start_values import (
    LEAST_DRILL,
    feed_of,
    roles_of,
    speed_first,
    speeds_of,
)
from jobsheet.reckoning.what_if import tried, with_texts
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: A feed is tried at these shares of its start value, a reamer's and a countersink's too.
_SHARES = (1.0, 0.85, 0.7, 0.55, 0.47, LEAST_DRILL)
#: A peck in diameters of the drill, the longest first (a tap and drill maker's
#: printed tips; common practice).
_PECKS = (1.5, 1.0, 0.5)
#: A strong push counts whole for so long [s] (limit quill push); a peck is never shorter than so many
#: diameters, nor than that [m] (common practice, no source).
LONGEST, SHORTEST, LEAST_PECK = 12.0, 0.2, 0.5e-3


def ways(
    kind: str, fields: object, setting: Setting, pinned: frozenset[str] = frozenset()
) -> Iterator[Candidate]:
    """What comes of each, in the order in which it is tried: in fewer strokes first,
    then the fastest speed, then the feed.
    """
    plays = roles_of(kind, fields)
    feeds = _feeds(plays, fields, setting, pinned)
    speeds = speeds_of(kind, fields, setting, pinned)
    if speed_first(setting.material):
        pairs = [(speed, feed) for feed in feeds for speed in speeds]
    else:
        pairs = [(speed, feed) for speed in speeds for feed in feeds]
    for pecks in _pecks(fields, plays, setting, pinned):
        clean = False
        for speed, feed in pairs:
            each = pecks if pecks is not None else _restful(fields, speed[0] * feed[0], setting)
            texts = (("spindle", speed[1]), ("feed", feed[1]), *each)
            candidate = _candidate(kind, fields, setting, plays, texts, speed[0], feed[0])
            if candidate is None:
                continue
            yield candidate
            if candidate.burden == CLEAN:
                clean = True
                break
        if clean:
            return


def _feeds(plays: Roles, fields: Any, setting: Setting, pinned: frozenset[str]) -> list[tuple[float, str]]:
    """Feeds per turn [m] with their texts, the highest first: the one that is
    typed, or from the catalogue's down.
    """
    if "feed" in pinned:
        return [(fields.feed.value, fields.feed.text)]
    start = feed_of(plays, fields, setting)
    if start is None:
        return []
    return [feed_text(start.value * share, setting.units) for share in _SHARES]


def _pecks(
    fields: Any, plays: Roles, setting: Setting, pinned: frozenset[str]
) -> tuple[tuple[tuple[str, str], ...] | None, ...]:
    """Pecks to be tried; None stands for one that lasts as long as an arm keeps up a strong push."""
    if plays.hole not in ("drill", "plunge") or "peck" in pinned:
        return ((),)
    one = (part_text(share * fields.cutter.diameter, 1, setting.units) for share in _PECKS)
    first = fields.peck.text if fields.peck is not None else ""  # pecks that are typed are never taken back
    last = () if setting.machine.lever is None else (None,)
    return ((("peck", first),), *((("peck", text),) for text in one), *last)


def _restful(fields: Any, down: float, setting: Setting) -> tuple[tuple[str, str], ...]:
    """A peck that lasts no longer than an arm keeps up a strong push at this rate [m/s], no
    longer than the shortest usual one.
    """
    size = INCH if setting.units == "in" else 1e-3
    most = min(down * LONGEST, _PECKS[-1] * fields.cutter.diameter)
    least = max(SHORTEST * fields.cutter.diameter, LEAST_PECK)
    return (("peck", f"{trimmed(down_to(max(most, least) / size), 4)} {setting.units}"),)


def _candidate(
    kind: str,
    fields: object,
    setting: Setting,
    plays: Roles,
    texts: tuple[tuple[str, str], ...],
    speed: float,
    feed: float,
) -> Candidate | None:
    try:
        made = with_texts(kind, fields, texts, setting.units)
    except JobsheetError:
        return None
    one = tried(kind, made, setting)
    if one.figures is None:
        return None
    return Candidate(
        fields=made, texts=texts, found=one, burden=burden_of(one, of_drilling(plays, one, setting)), speed=speed, feed=feed,
        passes=one.count("strokes"), seconds=one.number("cutting_time"),
    )  # fmt: skip
