"""Ways of milling a step: every speed, feed and width that may be tried, each in
as few layers as it goes with.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import ceil, floor, log10
from typing import Any

from msgspec import Struct

from jobsheet.errors import JobsheetError
from jobsheet.model.setting import Setting
from jobsheet.operations.roles import Roles
from jobsheet.operations.shared.advice import typed_number
from jobsheet.reckoning.adviser.advised import Candidate
from jobsheet.reckoning.adviser.burden import HOPELESS, Burden, burden_of
from jobsheet.reckoning.adviser.layer_lines import A_HAIR, evenly, layer_text
from jobsheet.reckoning.adviser.remarks_drawn import of_milling
from jobsheet.reckoning.adviser.start_values import LEAST_TOOTH, feed_of, roles_of, speed_first, speeds_of
from jobsheet.reckoning.what_if import Tried, tried, with_texts
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: A feed is tried at these shares of its start value too.
_FEEDS = (1.0, 0.8, 0.65, 0.5, 0.42, LEAST_TOOTH)
#: Thinner layers and narrower cuts than these are asked of nobody, nor so many of
#: them (common practice, no source).
THINNEST, NARROWEST, MOST = 0.1e-3, 0.04, 64
#: Never deeper in a slot than this share of the cutter, whatever the workshop says (issue
#: "Advice that can be acted on", 1).
DEEPEST_SLOT = 0.5
#: A face mill takes this share of its width at most (cutting-data section 3.3: 60 to 75 %, common practice).
WIDEST_FACE = 0.75
#: So many cuts side by side are tried one by one, more of them further apart.
_EACH, _GROWS = 8, 1.25
CLEAN: Burden = (0, 0, 0)


class Cutting(Struct, frozen=True, kw_only=True):
    """A step to be cut: its fields with nothing chosen but what is `pinned`, the skin on it and
    the height of a layer at most [m].

    `depth` is what is parted into layers [m]; None where it has none, or its layer is typed.
    """

    kind: str
    fields: Any
    setting: Setting
    plays: Roles
    depth: float | None
    most: float
    skin: float
    pinned: frozenset[str] = frozenset()


def cutting_of(
    kind: str, fields: Any, setting: Setting, skin: float = 0.0, pinned: frozenset[str] = frozenset()
) -> Cutting:
    """The step as the adviser sees it."""
    plays = roles_of(kind, fields)
    total = None
    if hasattr(fields, "layer") and "layer" not in pinned:
        total = fields.depth.value if fields.depth.value is not None else setting.thickness
    return Cutting(
        kind=kind, fields=fields, setting=setting, plays=plays, depth=total, skin=skin, pinned=pinned,
        most=most_layer(plays, fields.cutter.diameter, setting),
    )  # fmt: skip


def most_layer(plays: Roles, diameter: float, setting: Setting) -> float:
    """How deep one layer may be whatever carries it [m]: in a slot half of the cutter,
    or the workshop's own share of it.
    """
    if not plays.full_width:
        return float("inf")
    shop = setting.shop
    bench = (shop.slot_layer_bench,) if setting.machine.stiffness_class == "bench" else ()
    return min(DEEPEST_SLOT, shop.slot_layer, *bench) * diameter


def ways(cutting: Cutting) -> Iterator[Candidate]:
    """What goes best at each speed, feed and width, the fastest speeds first;
    nothing where the catalogue has no feed.
    """
    best: Candidate | None = None
    least: dict[float, Candidate] = {}
    widths = tuple(_widths(cutting))
    for speed, speed_text, tooth, tooth_text in _speeds_and_feeds(cutting):
        for texts, count in widths:
            if best is not None and best.burden == CLEAN and count > best.passes + 1:
                continue
            each = () if tooth_text is None else (("feed_per_tooth", tooth_text),)
            made = _in_layers(cutting, (("spindle", speed_text), *each, *texts), best, least.get(speed))
            candidate = _candidate(made, speed, tooth) if made is not None else None
            if candidate is None:
                continue
            yield candidate
            if _better(candidate, least.get(speed)):
                least[speed] = candidate
            if _better(candidate, best):
                best = candidate


def _better(candidate: Candidate, other: Candidate | None) -> bool:
    return other is None or (candidate.burden, candidate.passes) < (other.burden, other.passes)


def _candidate(
    made: tuple[Any, Burden, tuple[tuple[str, str], ...]], speed: float, tooth: float
) -> Candidate:
    one, burden, texts = made
    return Candidate(
        fields=one.fields, texts=texts, found=one, burden=burden, speed=speed, feed=tooth,
        passes=_passes(one), seconds=one.number("cutting_time"),
    )  # fmt: skip


# --- speeds and feeds ---


def _speeds_and_feeds(cutting: Cutting) -> Iterator[tuple[float, str, float, str | None]]:
    """Speeds with the feeds that a hand winds there, none under its least; where no
    speed has one, the least as it is.

    Of a feed that is typed there is no text: it stays.
    """
    setting, fields = cutting.setting, cutting.fields
    if not fields.cutter.teeth:
        return
    speeds = speeds_of(cutting.kind, in_width(cutting), setting, cutting.pinned)
    if not cutting.pinned.isdisjoint(("feed", "feed_per_tooth")):
        for speed, text in speeds:
            by_table = "feed" in cutting.pinned
            tooth = (
                fields.feed.value / (fields.cutter.teeth * speed) if by_table else fields.feed_per_tooth.value
            )
            yield speed, text, tooth, None
        return
    start = feed_of(cutting.plays, fields, setting)
    if start is None:
        return
    handle = setting.machine.handle(getattr(fields, "along", "x") or "x")
    any_feed = False
    for only_start in (True, False) if speed_first(setting.material) else (False,):
        for speed, text in speeds:
            pace = handle.travel / (fields.cutter.teeth * speed) if handle is not None else float("inf")
            least, most = setting.shop.slowest_pace * pace, setting.shop.fastest_pace * pace
            if start.value < least <= start.high:  # the published range goes on to where a hand winds evenly
                yield (speed, text, *feed_text(least, setting.units, up=True))
            for feed in _feeds(start.value, most, only_start=only_start):
                any_feed = True
                yield (speed, text, *feed_text(feed, setting.units))
        if any_feed:
            return
    speed, text = speeds[-1]
    yield (speed, text, *feed_text(start.value * LEAST_TOOTH, setting.units))


def in_width(cutting: Cutting) -> Any:
    """The fields in cuts no wider than the cutter: others cannot be reckoned at all."""
    texts, _ = next(_widths(cutting), ((), 1))
    try:
        return with_texts(cutting.kind, cutting.fields, texts, cutting.setting.units)
    except JobsheetError:
        return cutting.fields


def _feeds(start: float, most: float, *, only_start: bool) -> tuple[float, ...]:
    """Feeds per tooth [m], the highest first."""
    if only_start:
        return (start,) if start <= most * (1 + A_HAIR) else ()
    if most < start * LEAST_TOOTH:
        return ()
    top = min(start, most)
    return (top, *(start * share for share in _FEEDS if start * share < top * 0.97))


def feed_text(feed: float, units: str, *, up: bool = False) -> tuple[float, str]:
    """A feed as it is typed, never more than it is, or never less: value [m] and text."""
    size = INCH if units == "in" else 1e-3
    number = feed / size
    text = typed_number(number)
    if up and float(text) < number * (1 - A_HAIR):
        place = 10.0 ** floor(log10(number))  # of its first digit: two are typed, three behind a one
        text = typed_number(float(text) + place / (10 if number >= 2 * place else 100))
    return float(text) * size, f"{text} {units}"


# --- widths ---


def _widths(cutting: Cutting) -> Iterator[tuple[tuple[tuple[str, str], ...], int]]:
    """How a width may be parted into cuts side by side: texts, and how many, the fewest first."""
    fields, setting, units = cutting.fields, cutting.setting, cutting.setting.units
    diameter = fields.cutter.diameter
    if not cutting.pinned.isdisjoint(("cut", "width")):
        yield (), 1
        return
    if cutting.plays.mills == "wall":
        total = fields.width.value - (fields.leave.value if fields.leave is not None else 0.0)
        name, most = "cut", diameter
    elif cutting.plays.mills == "flat" and hasattr(fields, "width"):
        total = setting.extent[1] if fields.along == "x" else setting.extent[0]
        name, most = "width", WIDEST_FACE * diameter
    else:
        yield (), 1
        return
    if total <= 0:
        return
    count = ceil(total / most - A_HAIR)
    while True:
        text = "" if count == 1 and name == "cut" else part_text(total, count, units)
        yield ((name, text),), count
        count = count + 1 if count < _EACH else ceil(count * _GROWS)
        if total / count < max(NARROWEST * diameter, THINNEST, cutting.skin if name == "cut" else 0.0):
            return


def part_text(total: float, count: int, units: str) -> str:
    """A width as it is typed that makes so many of a whole [m], as round as that allows."""
    whole = total / (INCH if units == "in" else 1e-3)
    each = whole / count
    for decimals in (1, 2, 3, 4, 6):
        rounded = ceil(each * 10**decimals - 1e-6) / 10**decimals
        if ceil(whole / rounded - A_HAIR) == count and rounded <= each * 1.04:
            break
    return f"{trimmed(rounded, decimals)} {units}"


# --- layers ---


def _in_layers(
    cutting: Cutting,
    texts: tuple[tuple[str, str], ...],
    best: Candidate | None,
    here: Candidate | None,
) -> tuple[Any, Burden, tuple[tuple[str, str], ...]] | None:
    """The fewest layers in which no more is wrong than in the thinnest; None where it cannot be reckoned.

    None too where it can neither be preferred nor be named as a rival: more is wrong than with the best so
    far, or nothing is wrong in two passes more than what is known `here`, at the same speed, and clean too.
    """
    known: dict[int, tuple[Any, Burden, tuple[tuple[str, str], ...]]] = {}

    def burden(count: int) -> Burden:
        if count not in known:
            known[count] = _tried(cutting, texts, count)
        return known[count][1]

    least, most = _bounds(cutting)
    if best is not None and burden(least) != CLEAN:
        if here is not None and here.burden == CLEAN:
            side_by_side = _passes(known[least][0]) / least
            most = min(most, int((here.passes + 1) / side_by_side + A_HAIR))
        if most < least or burden(most) > best.burden:
            return None
    count = fewest(burden, least, most)
    if cutting.depth is not None and 1 < count < most and not evenly(cutting.depth, count, cutting.setting):
        one_more = _passes(known[count][0]) < 2 * count and evenly(cutting.depth, count + 1, cutting.setting)
        if one_more and burden(count + 1) <= burden(count):  # every layer then ends on a line
            count += 1
    return known[count] if known[count][1] != HOPELESS else None


def _passes(one: Tried | None) -> int:
    """All passes of it, side by side and in layers."""
    return one.count("passes") if one is not None else 1


def _bounds(cutting: Cutting) -> tuple[int, int]:
    """The fewest layers and the most that may be asked for."""
    if cutting.depth is None:
        return 1, 1
    least = max(1, ceil(cutting.depth / cutting.most - A_HAIR))
    thinnest = max(THINNEST, cutting.skin if cutting.plays.mills == "flat" else 0.0)
    return least, max(least, min(MOST, int(cutting.depth / thinnest + A_HAIR)))


def fewest(burden: Callable[[int], Burden], least: int, most: int) -> int:
    """The smallest count with no more wrong than with the largest, which is
    asked where the smallest is not clean.
    """
    if burden(least) == CLEAN:
        return least
    target = burden(most)
    high = least
    low = least - 1
    while burden(high) > target:
        low, high = high, min(high * 2, most)
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if burden(middle) <= target else (middle, high)
    return high


def _tried(
    cutting: Cutting, texts: tuple[tuple[str, str], ...], count: int
) -> tuple[Any, Burden, tuple[tuple[str, str], ...]]:
    setting = cutting.setting
    if cutting.depth is not None:
        texts = (*texts, ("layer", layer_text(cutting.depth, count, setting)))
    try:
        fields = with_texts(cutting.kind, cutting.fields, texts, setting.units)
    except JobsheetError:
        return None, HOPELESS, texts
    one = tried(cutting.kind, fields, setting)
    return one, burden_of(one, of_milling(cutting.plays, one, cutting.skin)), texts
