"""The largest drill, tap and face mill that a machine takes in a metal, and
what stops the next larger one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Any, TypeVar

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.cuts.feeds import drill_feed, face_mill_feed
from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.catalog.tools.drill_sets import DrillSize, drill_set
from jobsheet.catalog.tools.drills import read_drill_size
from jobsheet.catalog.tools.threads import ThreadRow, read_thread, thread_table
from jobsheet.catalog.tools.webs import pilot as usual_pilot
from jobsheet.model.figure import Limit
from jobsheet.model.quantity import Depth, Place, Places, Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations import written
from jobsheet.operations.names import show
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.thread_work import wrench_length
from jobsheet.reckoning.adviser.start_values import LEAST_DRILL, LEAST_TOOTH
from jobsheet.reckoning.answers.inverse import PLANNED, Judge, best, in_words, is_carried, is_easy
from jobsheet.reckoning.what_if import Tried
from jobsheet.units.show import trimmed

BY_HAND_ONLY, BY_HAND, UNDER_POWER = "by hand only", "by hand", "under power"
WITH_A_HEAD = "by hand or with a tapping head that slips"
#: A hole as it is asked about: so many diameters deep (common practice).
HOLE_DEPTH = 2.0
#: Between its start value and the least a feed is tried at this share too.
LOWER = 0.65
#: Into so many parts a list is sampled.
SAMPLES = 16
_HERE = Places((Place(Quantity(0.01, "10 mm"), Quantity(0.01, "10 mm")),))
Row = TypeVar("Row")


class Largest(Struct, frozen=True, kw_only=True):
    """The largest tool that goes: by its name, while all is as expected and while
    nothing is beyond; what stops the next.

    `way` is how it goes (`under power`, `by hand only` …) where there is more than one.
    """

    what: str
    expected: str = ""
    expected_size: float | None = None
    tight: str = ""
    tight_size: float | None = None
    stopped: Limit | None = None
    hardened: Limit | None = None
    end: str = ""
    way: str = ""
    note: str = ""
    at: Tried | None = None
    words: str = PLANNED

    @property
    def stops(self) -> str:
        """What stops the next larger one, in words."""
        return in_words(self.stopped or (None if self.end else self.hardened), self.end)


def _most(rows: Sequence[Row], make: Callable[[Row, Judge], Tried], judge: Judge) -> int:
    """The index of the last row for which the judge says yes; −1 where none is.

    The rows are sampled first, for it does not only grow harder with size: the smallest drills break in the
    hand, and a larger cutter turns slower. From the last sample that passes on it is bisected.
    """
    last = len(rows) - 1
    samples = (
        sorted({round(last * part / SAMPLES) for part in range(SAMPLES + 1)}, reverse=True) if rows else []
    )
    bad = len(rows)
    for good in samples:
        if judge(make(rows[good], judge)):
            break
        bad = good
    else:
        return -1
    while bad - good > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if judge(make(rows[middle], judge)) else (good, middle)
    return good


def _largest(
    what: str,
    rows: Sequence[Row],
    make: Callable[[Row, Judge], Tried],
    named: Callable[[Row], tuple[str, float]],
    *,
    last: str = "the largest there is",
    asked: Callable[[Row, Judge], Tried] | None = None,
    **more: Any,
) -> Largest:
    """The largest row of a list that grows, for both judges; `asked` reckons it
    only as lightly as it may be cut.
    """
    easy, carried = (_most(rows, asked or make, judge) for judge in (is_easy, is_carried))
    carried = max(carried, easy)
    beyond = make(rows[carried + 1], is_carried) if carried + 1 < len(rows) else None
    harder = make(rows[easy + 1], is_easy) if easy + 1 < len(rows) else None
    best_index = easy if easy >= 0 else carried
    at = make(rows[best_index], is_easy if easy >= 0 else is_carried) if best_index >= 0 else None
    first: tuple[str, float | None] = named(rows[easy]) if easy >= 0 else ("", None)
    most: tuple[str, float | None] = named(rows[carried]) if carried >= 0 else ("", None)
    problem = beyond.problem if beyond is not None else ""
    end = last if rows and carried == len(rows) - 1 else problem
    governed = at.governing if at is not None else None
    return Largest(
        what=what, expected=first[0], expected_size=first[1], tight=most[0], tight_size=most[1],
        stopped=beyond.stopped_by if beyond is not None else None, hardened=harder.hard if harder is not None else None,
        end=end, at=at, words="cut before" if governed is not None and governed.verdict == "cut before" else PLANNED, **more,
    )  # fmt: skip


def _drills(units: str) -> tuple[DrillSize, ...]:
    return drill_set("metric" if units == "mm" else "fractional")


def _drilled(size: DrillSize, setting: Setting, feed: float | None = None) -> Any:
    """A hole of this drill from solid or after the pilot of the setting, at its usual feed."""
    turn = drill_feed(size.diameter, setting.material).value if feed is None else feed
    depth = size.diameter * HOLE_DEPTH
    return kind_of(written.DRILL).fields(
        cutter=read_cutter(f"drill {size.name}", setting.units),
        at=_HERE,
        depth=Depth(depth, f"{depth * 1e3:.6g} mm"),
        feed=Quantity(turn, show("feed_per_turn", turn, setting.units)),
    )


def _drilled_best(size: DrillSize, setting: Setting, judge: Judge, feed: float | None = None) -> Tried:
    """The hole at the feed that is asked for; else at the usual one, or lower where that is too much."""
    if feed is not None:
        return best(written.DRILL, _drilled(size, setting, feed), setting, judge)
    usual = drill_feed(size.diameter, setting.material).value
    return first_passing(
        (best(written.DRILL, _drilled(size, setting, usual * share), setting, judge) for share in (1.0, LOWER, LEAST_DRILL)), judge
    )  # fmt: skip


def _lightly(size: DrillSize, setting: Setting, judge: Judge) -> Tried:
    """The hole at the lowest feed that still cuts: a lower feed asks less of spindle, drill and hand."""
    least = drill_feed(size.diameter, setting.material).value * LEAST_DRILL
    return best(written.DRILL, _drilled(size, setting, least), setting, judge)


def first_passing(ways: Iterable[Tried], judge: Judge) -> Tried:
    """The first that passes; where none does, the last."""
    way = None
    for way in ways:
        if judge(way):
            break
    assert way is not None
    return way


def largest_drill(setting: Setting, *, feed: float | None = None, pilot: bool = False) -> Largest:
    """The largest drill from solid; or, with `pilot`, after one of a third of its diameter.

    Parameters
    ----------
    feed : float, optional
        Feed per turn [m]; without it the usual one of each drill, or as little
        as still cuts where that is too much
    """

    def there(size: DrillSize) -> Setting:
        return replace(setting, pilot=usual_pilot(size.diameter).high if pilot else None)

    def make(size: DrillSize, judge: Judge) -> Tried:
        return _drilled_best(size, there(size), judge, feed)

    def asked(size: DrillSize, judge: Judge) -> Tried:
        return make(size, judge) if feed is not None else _lightly(size, there(size), judge)

    sizes = [size for size in _drills(setting.units) if size.diameter >= 1e-3]
    what = "largest drill after a pilot of a third" if pilot else "largest drill from solid"
    return _largest(what, sizes, make, lambda size: (size.name, size.diameter), asked=asked)


def drill_within(setting: Setting, judge: Judge) -> DrillSize | None:
    """The largest drill from solid that passes that judge at a feed that the adviser
    would choose; None where none does.
    """

    def make(size: DrillSize, judge: Judge) -> Tried:
        return _lightly(size, setting, judge)

    sizes = [size for size in _drills(setting.units) if size.diameter >= 1e-3]
    index = _most(sizes, make, judge)
    return sizes[index] if index >= 0 else None


def tap_within(setting: Setting, judge: Judge) -> str:
    """The largest coarse thread under power that passes that judge; empty where none does."""

    def make(row: ThreadRow, judge: Judge) -> Tried:
        return best(written.TAP, _tapped(row, setting, UNDER_POWER), setting, judge)

    rows = _threads(setting.units)
    index = _most(rows, make, judge)
    return _short(rows[index]) if index >= 0 else ""


# --- taps ---------------------------------------------------------------------------------------------------


def _threads(units: str) -> list[ThreadRow]:
    """The coarse threads of the tables, from small to large."""
    rows = [
        row
        for row in thread_table().values()
        if not row.fine
        and row.name.startswith("M") == (units == "mm")
        and (units == "mm" or row.name.endswith("UNC"))
    ]
    return sorted(rows, key=lambda row: row.major)


def _short(row: ThreadRow) -> str:
    """A coarse thread as it is called: `M8`, `5/16-18 UNC`."""
    return row.name.partition("x")[0] if row.name.startswith("M") else row.name


def _tapped(row: ThreadRow, setting: Setting, method: str, holder: str = "") -> Any:
    """A thread in the hole of its usual drill, right through: a blind one asks for more than torque."""
    name = row.name.removesuffix(" UNC")
    hole = read_drill_size(row.drill, setting.units)
    cutter = read_cutter(f"tap {name}, plug{f', in a {holder}' if holder else ''}", setting.units)
    return kind_of(written.TAP).fields(
        cutter=cutter, thread=read_thread(name), at=_HERE, depth=Depth(None, "through"), method=method,
        hole=Quantity(hole, row.drill),
    )  # fmt: skip


def _tap(setting: Setting, method: str, holder: str = "", **more: Any) -> Largest:
    def make(row: ThreadRow, judge: Judge) -> Tried:
        return best(written.TAP, _tapped(row, setting, method, holder), setting, judge)

    rows = _threads(setting.units)
    if method == BY_HAND:
        rows = [
            row for row in rows if wrench_length(read_thread(row.name.removesuffix(" UNC")), None) is not None
        ]
        more.setdefault("last", "the largest thread that a usual wrench is made for")
    return _largest("largest tap", rows, make, lambda row: (_short(row), row.major), **more)


def largest_tap(setting: Setting) -> Largest:
    """The largest coarse thread, in the order of cutting-data section 1.6: the first
    yes-or-no limit that says no is the answer.

    Does the spindle reverse; does drive or holder slip; is the slowest speed slow enough; only then torque
    and the tap's own strength. If it is no for one of the first two, tapping is by hand, whatever the torque.
    """
    spindle = setting.machine.spindle
    if not spindle.reverses:
        return _tap(setting, BY_HAND, way=BY_HAND_ONLY, note="this machine does not reverse")
    if not spindle.slips:
        head = _tap(setting, UNDER_POWER, "tapping head")
        name = head.expected or head.tight
        note = (
            f"nothing slips before the tap breaks; in a tapping head that slips up to {name}"
            if name
            else (f"nothing slips before the tap breaks; in a tapping head: {head.stops}")
        )
        return _tap(setting, BY_HAND, way=WITH_A_HEAD, note=note)
    power = _tap(setting, UNDER_POWER, way=UNDER_POWER)
    if power.tight_size is None:
        return _tap(setting, BY_HAND, way=BY_HAND_ONLY, note=power.stops)
    hand = _tap(setting, BY_HAND)
    return replace(power, note=f"by hand up to {hand.expected or hand.tight or '–'}")


# --- face mills ---------------------------------------------------------------------------------------------

#: Face mills that are sold, with their usual number of inserts (common practice).
_FACE_MILLS = {
    "mm": ((25, 2), (32, 3), (40, 3), (50, 4), (63, 5), (80, 6), (100, 7), (125, 8)),
    "in": ((1, 2), (1.25, 3), (1.5, 3), (2, 4), (2.5, 5), (3, 5), (4, 6), (5, 8)),
}


def widest_face_mill(setting: Setting, depth: float = 0.5e-3) -> Largest:
    """The widest face mill with inserts that takes a layer of this depth [m], six tenths of itself wide."""
    units = setting.units
    feed = face_mill_feed(setting.material).value
    rows = [
        f"face mill {trimmed(size, 3)} {units}, {teeth} teeth, carbide" for size, teeth in _FACE_MILLS[units]
    ]

    def faced(text: str, tooth: float, judge: Judge) -> Tried:
        cutter = read_cutter(text, units)
        wide = cutter.diameter or 0.0
        fields = kind_of(written.FACE).fields(
            cutter=cutter,
            depth=Quantity(depth, f"{depth * 1e3:.6g} mm"),
            feed_per_tooth=Quantity(tooth, show("feed_per_tooth", tooth, units)),
        )
        long, across, high = setting.extent
        return best(
            written.FACE, fields, replace(setting, extent=(max(long, wide), max(across, wide), high)), judge
        )

    def make(text: str, judge: Judge) -> Tried:
        shares = (1.0, LOWER, LEAST_TOOTH)
        return first_passing((faced(text, feed * share, judge) for share in shares), judge)

    return _largest(
        "widest face mill",
        rows,
        make,
        lambda text: (text.partition(",")[0], read_cutter(text, units).diameter or 0.0),
    )
