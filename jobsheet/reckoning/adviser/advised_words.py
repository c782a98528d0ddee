"""The reasons behind a recommendation, its rivals, and what else would do where nothing of this kind goes."""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.model.setting import Setting
from jobsheet.operations.names import show
from jobsheet.operations.shared.advice import Advice
from jobsheet.reckoning.adviser.advised import Candidate
from jobsheet.reckoning.adviser.burden import over
from jobsheet.reckoning.adviser.layer_lines import A_HAIR
from jobsheet.reckoning.adviser.start_values import OVER

#: So many rivals are named.
_RIVALS = 2


def reasons(
    best: Candidate, start: Suggestion | None, speeds: tuple[float, float | None], setting: Setting
) -> Iterator[Advice]:
    """Every value with why it is that, and where that comes from; `speeds` are the
    fastest tried and the one to start from.
    """
    for name, text in best.texts:
        if name == "spindle":
            yield Advice(name, text, _speed_why(best, speeds), "common-practice")
        elif name in ("feed_per_tooth", "feed"):
            why, source = _feed_why(best, start, setting)
            yield Advice(name, text, why, source)
        elif name == "layer":
            yield Advice(name, text, _layer_why(best), "common-practice")
        elif name == "peck":
            yield Advice(
                name,
                text,
                "to clear the chips" if text else "in one go: not deep enough for pecks",
                "common-practice",
            )
        else:
            passes = best.found.count("passes")
            yield Advice(name, text, f"{passes} passes in all, the fewest that go" if passes > 1 else "in one pass", "common-practice")  # fmt: skip


def _speed_why(best: Candidate, speeds: tuple[float, float | None]) -> str:
    fastest, wanted = speeds
    if best.speed >= fastest * (1 - A_HAIR):
        return (
            f"the fastest at or under {OVER:g} × the speed to start from"
            if wanted is None or best.speed <= wanted * OVER
            else "the slowest there is"
        )
    return "slower than the cutter may: a faster one carries less or asks more of the hand"


def _feed_why(best: Candidate, start: Suggestion | None, setting: Setting) -> tuple[str, str]:
    if start is None:
        return "", "common-practice"
    if best.feed >= start.value * 0.97:
        return start.why, start.source
    table = show("feed_per_tooth", start.value, setting.units)  # a feed per turn is written just so
    pace = best.found.value("handle_pace")
    if pace is not None and pace >= setting.shop.fastest_pace * 0.97:
        return (
            f"as much as a hand winds evenly at {best.speed * 60:.0f} rpm; by the table {table}",
            "common-practice",
        )
    return f"lowered until every limit allows it; by the table {table}", "common-practice"


def _layer_why(best: Candidate) -> str:
    layers = best.found.count("layers")
    if layers == 1:
        return "at once: every limit allows it"
    return f"{layers} layers, the fewest that every limit allows"


def rivals(best: Candidate, candidates: tuple[Candidate, ...]) -> tuple[str, ...]:
    """Other cuts that go as well by the limits, at another speed, in words with what they cost."""
    found: list[str] = []
    seen = {best.speed}
    for candidate in sorted(candidates, key=lambda each: (each.burden, each.passes, each.seconds)):
        if candidate.burden != best.burden or candidate.speed in seen:
            continue
        seen.add(candidate.speed)
        found.append(words_of(candidate))
        if len(found) == _RIVALS:
            break
    return tuple(found)


def words_of(candidate: Candidate) -> str:
    """`560 rpm, 0.055 mm, layer 2 mm: 4 passes, 6 min`."""
    texts = ", ".join(f"layer {text}" if name == "layer" else f"{text} wide" if name in ("cut", "width") else text for name, text in candidate.texts if text)  # fmt: skip
    count = f"{candidate.passes} passes, " if candidate.passes > 1 else ""
    return f"{texts}: {count}{candidate.found.shown('cutting_time')}"


#: What else would do for a hole, by the tool that does not do it.
_OTHER_HOLES = {
    "drill": "Drill in stages, or bore what is left; a smaller drill first, or a machine with more torque",
    "slot drill": "Drill a hole first and let the cutter down into it, or a smaller cutter",
    "end mill": "Drill a hole first and let the cutter down into it, or a smaller cutter",
}


def other_way(best: Candidate, skin: float = 0.0) -> str:
    """What else would do where a limit stays beyond; nothing where none does. A
    skin [m] is what no cut may stay within.
    """
    beyond = {limit.name for limit in best.found.limits if over(limit)}
    if not beyond:
        return ""
    if skin and best.found.value("feed_per_turn") is None:
        return (
            f"No width goes under the skin ({skin * 1e3:.3g} mm deep at least) with every limit: take the skin off by grinding,"
            f" filing or pickling first, or take a smaller cutter or a heavier machine"
        )
    if best.found.value("feed_per_turn") is not None:
        return _OTHER_HOLES.get(
            best.fields.cutter.kind, "A smaller tool, or a machine with more torque and a slower spindle"
        )
    if beyond & {"speed-range", "cutting-speed"}:
        return "A smaller cutter, or a machine that turns slower"
    if beyond & {"hand-pace"}:
        return "A cutter with other teeth, or a machine with a power feed"
    return "A smaller cutter, a saw for the bulk, or a heavier machine"
