"""The best cut of a step here: the one place that is asked for it, remembered by value.

Order of preference: nothing beyond and no remark drawn; nothing at its edge; the fewest passes; of
those the least time, and of as good as equal times the fastest speed with the highest feed. What is
typed for speed, feed, layer, width or peck counts for nothing: those are what is asked for.
Everything else of the step stays as it is.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Any

from msgspec.structs import replace

from jobsheet.limits.register import READS
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.reads import TO_READ, narrowed
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.advice import Advice
from jobsheet.reckoning.adviser import drilling_cut, milling_cut
from jobsheet.reckoning.adviser.advised import Advised, Candidate, Changed
from jobsheet.reckoning.adviser.advised_words import other_way, reasons, rivals
from jobsheet.reckoning.adviser.burden import burden_of
from jobsheet.reckoning.adviser.layer_lines import A_HAIR
from jobsheet.reckoning.adviser.remarks_drawn import of_drilling, of_milling
from jobsheet.reckoning.adviser.start_values import feed_of, roles_of, speeds_of
from jobsheet.reckoning.what_if import Tried, at_speed, tried
from jobsheet.remembered import remembered

#: What the adviser chooses; anything else of a step is the person's.
CHOSEN = ("spindle", "feed_per_tooth", "feed", "cutting_speed", "layer", "cut")
#: What is typed instead of what the adviser writes, and by what it says the same.
_SAID_BY = {"feed": "feed_per_tooth", "cutting_speed": "spindle"}
#: Times that differ by less are as good as equal; more passes must save that share of the
#: time (common practice, no source).
EQUAL, WORTH = 1.1, 1.5
#: So many times the fewest passes may be made where that saves as much; what is over by so
#: little more is as near (likewise).
MOST_MORE, NEAREST = 1.5, 1.05
#: So deep a face mill is taken at most, by the class of the machine [m] (holding and more
#: kinds, section C4: common practice).
DEEP_FACE = {"bench": 1.5e-3, "knee": 4e-3}
#: What differs by less is the same [m, rev/s].
_SAME = 1e-9
#: Stands where a feed must be and is asked for.
_ANY = Quantity(0.1e-3, "0.1 mm")


def best_cut(
    operation: Operation, setting: Setting, skin: float = 0.0, pinned: frozenset[str] = frozenset()
) -> Advised | None:
    """The best cut of this kind here; None for what is not fed under power, or of
    which the catalogue knows no feed.

    Parameters
    ----------
    skin : float
        Scale or a cast skin on what this cut makes first [m]; nought: as the setting has it
    pinned : frozenset of str
        Fields that are typed and stay as they are; the rest is chosen around them
    """
    fields = operation.fields
    plays = roles_of(operation.kind, fields)
    cutter = getattr(fields, "cutter", None)
    if cutter is None or not cutter.diameter or not (plays.mills or plays.feed):
        return None
    skin = skin or setting.skin
    kind, asked, around, typed = question(operation, setting, pinned)
    advised: Advised | None = _best(kind, asked, around, skin, typed)
    return advised


def question(
    operation: Operation, setting: Setting, pinned: frozenset[str] = frozenset()
) -> tuple[str, Any, Setting, frozenset[str]]:
    """All that the answer hangs on: the kind, the fields with nothing chosen, what
    is read around them, what is typed.
    """
    asked = unchosen(operation.kind, operation.fields, pinned)
    reads = (kind_of(operation.kind).looks_at(asked) | READS) - TO_READ
    return operation.kind, asked, narrowed(setting, reads), pinned


def unchosen(kind: str, fields: Any, pinned: frozenset[str] = frozenset()) -> Any:
    """The fields without all that the adviser chooses; the wording and the note count for nothing either."""
    plays = roles_of(kind, fields)
    without: dict[str, Any] = {name: None for name in CHOSEN if hasattr(fields, name)}
    if plays.mills == "flat" and hasattr(fields, "width"):
        without["width"] = None
    without["feed_per_tooth" if plays.mills else "feed"] = _ANY
    for name in pinned:
        without.pop(name, None)
    if "feed" in pinned and "feed_per_tooth" in without:
        without["feed_per_tooth"] = None
    without |= {name: "" for name in ("what", "note") if hasattr(fields, name)}
    return replace(fields, **without)


@remembered(128)
def _best(kind: str, fields: object, setting: Setting, skin: float, pinned: frozenset[str]) -> Advised | None:
    """The setting holds only what kind and limits read."""
    plays = roles_of(kind, fields)
    if plays.mills:
        ways = tuple(milling_cut.ways(milling_cut.cutting_of(kind, fields, setting, skin, pinned)))
    else:
        ways = tuple(drilling_cut.ways(kind, fields, setting, pinned))
    if not ways:
        return None
    best = chosen(ways)
    one = best.found
    wanted = tried(kind, at_speed(one.fields, None), setting).value("wanted_speed")
    speeds = speeds_of(kind, one.fields, setting)[0][0], wanted
    return Advised(
        values=tuple(advice for advice in reasons(best, feed_of(plays, fields, setting), speeds, setting) if advice.name not in pinned),
        fields=one.fields, found=one, passes=best.passes, seconds=best.seconds,
        rivals=rivals(best, ways), other_way=other_way(best, skin),
    )  # fmt: skip


def chosen(candidates: Iterable[Candidate]) -> Candidate:
    """The one that is preferred."""
    known = list(candidates)
    least = min(candidate.burden for candidate in known)
    known = [candidate for candidate in known if candidate.burden == least]
    if least[0]:  # nothing goes: the best is what is over by least
        nearest = min(worst_of(candidate.found) for candidate in known)
        known = [candidate for candidate in known if worst_of(candidate.found) <= nearest * NEAREST]
    counts = sorted({candidate.passes for candidate in known})
    few = [candidate for candidate in known if candidate.passes == counts[0]]
    quickest = min(candidate.seconds for candidate in few)
    for count in counts[1:]:  # a spindle that crawls saves passes and loses the hour
        more = [candidate for candidate in known if candidate.passes == count]
        if (
            count <= counts[0] * MOST_MORE + 1
            and min(candidate.seconds for candidate in more) * WORTH < quickest
        ):
            few, quickest = more, min(candidate.seconds for candidate in more)
    if all(map(_deep_face, few)):
        usual = [
            candidate
            for candidate in known
            if candidate.passes <= counts[0] + 1 and not _deep_face(candidate)
        ]
        few = usual or few
        quickest = min(candidate.seconds for candidate in few)
    few = [candidate for candidate in few if candidate.seconds <= quickest * EQUAL * (1 + A_HAIR)]
    return min(
        few,
        key=lambda candidate: (_deep_face(candidate), -candidate.speed, -candidate.feed, candidate.seconds),
    )


def _deep_face(candidate: Candidate) -> bool:
    """Whether a face mill goes deeper than anybody takes it on such a machine:
    wider and less deep is the better cut.
    """
    fields, most = candidate.fields, DEEP_FACE.get(candidate.found.setting.machine.stiffness_class)
    if most is None or fields.cutter.kind != "face mill":
        return False
    return bool(fields.depth.value / candidate.found.count("layers") > most * (1 + A_HAIR))


def worst_of(found: Tried) -> float:
    """By how much the worst of what is beyond is over; nought where nothing is."""
    return max((limit.share for limit in found.limits if limit.verdict == "beyond"), default=0.0)


def advice_on(operation: Operation, setting: Setting, skin: float = 0.0) -> Changed | None:
    """What to write into this step: only what makes it better, nothing where it is as good as
    the best; None where none is known.
    """
    skin = skin or setting.skin
    advised = best_cut(operation, setting, skin)
    if advised is None:
        return None
    plays = roles_of(operation.kind, operation.fields)

    def good(fields: object) -> bool:
        now = tried(operation.kind, fields, setting)
        if burden_of(now, drawn(plays, now, setting, skin)) > target:
            return False
        if worst_of(now) > worst_of(advised.found) * NEAREST:
            return False
        fewer = not plays.mills or now.count("passes") <= advised.passes
        quick = unhurried or now.number("cutting_time") <= advised.seconds * EQUAL
        return fewer and quick

    unhurried = finishes(
        plays, operation.fields
    )  # a finishing pass that clears everything need not be quicker
    target = burden_of(advised.found, drawn(plays, advised.found, setting, skin))
    values = {advice.name: advice for advice in _differing(operation, advised)}
    fields = replace(operation.fields, **{name: getattr(advised.fields, name) for name in values})
    for names in _together(tuple(values)):  # what stands already stays, where the step is as good with it
        kept = replace(fields, **{name: getattr(operation.fields, name) for name in names})
        if good(kept):
            fields = kept
            for name in names:
                del values[name]
    found = tried(operation.kind, fields, setting)
    return Changed(advised=advised, values=tuple(values.values()), fields=fields, found=found)


#: A cut as light as that is a finishing pass: a wall's width as a share of the cutter, a face's
#: depth [m] (cutting-data section 3.4, common practice: 0.02 to 0.05 of the diameter; a face's is
#: common practice without a source).
LIGHT_WALL, LIGHT_FACE = 0.05, 0.25e-3


def finishes(plays: Any, fields: Any) -> bool:
    """Whether it takes so little that it is there for size and finish, not to get metal off."""
    if plays.mills == "flat":
        return bool(fields.depth.value is not None and fields.depth.value <= LIGHT_FACE * (1 + A_HAIR))
    if plays.mills == "wall":
        return bool(
            fields.leave is None and fields.width.value <= LIGHT_WALL * fields.cutter.diameter * (1 + A_HAIR)
        )
    return False


def _together(names: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """The changes one by one, but two ways of saying the same together: with only one
    of them made both would stand there.
    """
    for name in names:
        other = _SAID_BY.get(name)
        if other in names:
            yield (name, str(other))
        elif name not in {_SAID_BY.get(name) for name in names}:
            yield (name,)


def _differing(operation: Operation, advised: Advised) -> Iterator[Advice]:
    """What the step has otherwise; a feed of the table gives way to one per
    tooth. What is kept first stands last.
    """
    for advice in reversed(advised.values):
        now, then = getattr(operation.fields, advice.name), getattr(advised.fields, advice.name)
        differs = now is not then if now is None or then is None else abs(now.value - then.value) > _SAME
        if differs:
            yield advice
    for name in _SAID_BY:
        if getattr(operation.fields, name, None) is not None and getattr(advised.fields, name) is None:
            yield Advice(name, "", "the spindle and the feed per tooth say it", "common-practice")


def drawn(plays: Any, found: Tried, setting: Setting, skin: float) -> int:
    """Remarks that it draws."""
    return of_milling(plays, found, skin) if plays.mills else of_drilling(plays, found, setting)
