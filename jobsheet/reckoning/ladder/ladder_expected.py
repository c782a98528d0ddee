"""What a ladder will cost and teach, said before its first cut: cuts, minutes, and how
wide what is known will be after it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from msgspec.structs import replace

from jobsheet.model.capacity import Capacity
from jobsheet.model.trials import ABOUT, MILLING, Asked
from jobsheet.operations.names import show
from jobsheet.proving.rungs import finer_share, next_share
from jobsheet.reckoning.known_capacity import after_clean, after_end
from jobsheet.reckoning.ladder.ladder_sizes import two_figures
from jobsheet.reckoning.ladder.rung import Expected, Ladder, Rung
from jobsheet.units.table import INCH

#: Minutes between two test cuts: back, set, look, write (estimate).
BETWEEN = 2.0
#: No ladder has more cuts.
MOST = 22


def with_expected(ladder: Ladder) -> Ladder:
    """The same ladder with what it will cost and teach; as it is where there are no rungs."""
    limit = ABOUT.get(ladder.process, "spindle-torque")
    known = ladder.capacity(limit)
    if not ladder.rungs or known is None:
        return ladder
    cuts, after = _climbed(ladder, known)
    timed = [rung.seconds for rung in ladder.rungs if rung.seconds is not None]
    each = sum(timed) / len(timed) / 60 if timed else 0.0
    before = known.high / known.low
    made = Expected(
        limit=limit, cuts=cuts, minutes=cuts * (each + BETWEEN), before=before, after=_wide(after)
    )
    return replace(ladder, expected=made)


def out_of_reach(ladder: Ladder) -> str:
    """Why such cuts never find the limit that they are about: another gives out
    long before it. Empty where they may.

    A tap is proved for itself: what it asks hangs on hole and thread, and on nothing else that is cut. What
    is asked is whether the last rung comes near to what one machine in ten would not carry.
    """
    limit = ABOUT.get(ladder.process, "spindle-torque")
    known = ladder.capacity(limit)
    if not ladder.rungs or known is None or ladder.up_to or known.spoke or ladder.process == "tap":
        return ""
    last = ladder.rungs[-1]
    asked = last.of(limit)
    first = next_share(known, None, ladder.chance, ladder.growth)
    if asked is None or first is None or asked.share >= first * NEAR:
        return ""
    what = "the motor" if limit == "spindle-torque" else "the frame"
    other = {
        "drill": "Slot or face cuts load it more",
        "face": "Slot cuts, or a wider pass, load it more",
        "side": "Slot cuts, or a wider one, load it more",
        "slot": "A larger cutter loads it more",
    }[ladder.process]
    stops = ladder.ends.rstrip(".")
    asks, carry = _beside(ladder, last, asked, first / asked.share)
    return (
        f"Such cuts never come near what {what} carries: the largest that can be made, {last.size}{asks}, where nine of ten machines "
        f"carry {carry}. {stops}. {other}."
    )


def _beside(ladder: Ladder, last: Rung, asked: Asked, factor: float) -> tuple[str, str]:
    """What the largest cut asks and what nine of ten carry: a torque, or the
    depth of such a cut that would ask it.
    """
    if asked.limit == "spindle-torque":
        torques = [show("torque", asked.demand * times, ladder.units) for times in (1.0, factor)]
        return f", asks {torques[0]}", torques[1]
    grown = getattr(last.fields, ladder.grows, None)
    if grown is None or grown.value is None:
        return "", f"{factor:.1f} times as much"
    unit, name = (1e-3, "mm") if ladder.units == "mm" else (INCH, "in")
    return "", f"{two_figures(grown.value * factor / unit)} {name}"


#: A last rung this near to where a ladder would begin still teaches (estimate).
NEAR = 0.9


def _climbed(ladder: Ladder, known: Capacity) -> tuple[int, Capacity]:
    """The cuts until the middle of what is thought is passed, the last of them a
    sign; or until the job's own demand.
    """
    if ladder.up_to:
        for rung in ladder.rungs:
            asked = rung.of(known.limit)
            known = after_clean(known, asked.share) if asked is not None else known
        return len(ladder.rungs), known
    middle = known.median
    last = (known.since or None) if ladder.finer else None
    for cuts in range(1, MOST + 1):
        if ladder.finer:
            share = finer_share(known, last, ladder.chance)
        else:
            share = next_share(known, last, ladder.chance, ladder.growth)
        if share is None:
            return max(cuts - 1, 1), known
        if share > middle:
            return cuts, after_end(known, share)
        known, last = after_clean(known, share), share
    return MOST, known


def _wide(capacity: Capacity) -> float:
    """High over low of nine in ten, from the cells."""
    ends, below = [], 0.0
    for wanted in (0.05, 0.95):
        below = 0.0
        for place, weight in capacity.cells:
            below += weight
            if below >= wanted:
                ends.append(place)
                break
    return math.exp(ends[1] - ends[0]) if len(ends) == 2 else 1.0


def words_of(expected: Expected) -> str:
    """What stands over the first rung: `About 5 cuts and 15 minutes; what is known within
    12 times is then known within 2.6.`
    """
    minutes = max(5, round(expected.minutes / 5) * 5)
    cuts = "One cut" if expected.cuts == 1 else f"About {expected.cuts} cuts"
    known = f"What such cuts may ask is known within {_times(expected.before)} now, nine times in ten"
    if expected.after > expected.before * _NARROWER:
        return f"{cuts} and {minutes} minutes. {known}; after them hardly better."
    return f"{cuts} and {minutes} minutes. {known}; after them within {_times(expected.after)}."


#: A band that is not narrower by this is as wide as it was, to whoever plans by it (estimate).
_NARROWER = 0.9


def _times(ratio: float) -> str:
    return f"a factor of {ratio:.0f}" if ratio >= 9.5 else f"a factor of {ratio:.1f}"


def takes_words(process: str, asked: Iterable[Asked], units: str) -> tuple[str, ...]:
    """What a test cut takes of the motor, of a drill or tap with its torque.

    What it asks of the frame is its depth itself, which stands beside it: a
    stiffness is nothing that a hand can set.
    """
    words = []
    for other in asked:
        if other.limit == "spindle-torque":
            torque = f"{show('torque', other.demand, units)}, " if process not in MILLING else ""
            words.append(f"{torque}motor {max(1, round(other.share * 100))} %")
    return tuple(words)
