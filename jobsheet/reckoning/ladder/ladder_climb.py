"""Climbing a ladder on paper: which cut comes next, as if every one below it had
been clean, and how it is set.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping

from msgspec.structs import replace

from jobsheet.limits.verdict import is_tight
from jobsheet.machine.handles import dial_text, reading
from jobsheet.model.capacity import Capacity
from jobsheet.model.trials import LEARNED
from jobsheet.operations.names import show
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.shared.common import depth_handle, position_text
from jobsheet.proving.assumed import FINER_CHANCES, FINER_GROWTH
from jobsheet.reckoning.known_capacity import after_clean, last_clean
from jobsheet.reckoning.ladder import ladder_cuts as cuts
from jobsheet.reckoning.ladder import ladder_refused as refused_by
from jobsheet.reckoning.ladder.ladder_attempt import Made, attempt, base_texts, listed
from jobsheet.reckoning.ladder.ladder_sizes import ended
from jobsheet.reckoning.ladder.rung import Ladder, Rung


def climbed(ladder: Ladder, most: int) -> Ladder:
    """The rungs, each as if all below it had been clean."""
    from jobsheet.proving.chance import chance_over

    capacities = {capacity.limit: capacity for capacity in ladder.capacities}
    finer = set(capacities) if ladder.finer else set()
    about = [limit for limit in finer if capacities[limit].bad] or list(capacities)
    last = {
        limit: capacity.since or None if limit in finer else last_clean(capacity)
        for limit, capacity in capacities.items()
    }
    picker = _milling if ladder.milled else _from_list
    pick = picker(ladder)
    rungs: list[Rung] = []
    ends = f"{most} rungs fill a sheet: enter them, then plan again."
    while len(rungs) < most:
        growing = _growing(capacities, {limit: last[limit] for limit in about}, ladder.chance)
        targets = {
            limit: _next(
                ladder, capacity, last[limit] if limit in finer else growing.get(limit), finer=limit in finer
            )
            for limit, capacity in capacities.items()
        }
        if ladder.up_to:
            if _all_asked(rungs, ladder):
                ends = "This is what the job asks: once all of it was clean it has been cut before."
                break
            targets = {
                limit: _at_most(target, dict(ladder.up_to).get(limit)) for limit, target in targets.items()
            }
        spent = next((capacity for limit, capacity in capacities.items() if targets[limit] is None), None)
        if spent is not None:
            ends = ended(spent, ladder)
            break
        made, why = pick({limit: target for limit, target in targets.items() if target}, growing)
        if made is None:
            ends = why
            break
        rung = finished(ladder, made, len(rungs) + 1, capacities, growing, chance_over)
        rungs.append(rung)
        for asked in rung.asked:
            capacities[asked.limit] = after_clean(capacities[asked.limit], asked.share)
            last[asked.limit] = asked.share
    if not rungs:
        return replace(ladder, refused=ends)
    return replace(ladder, rungs=tuple(rungs), ends=ends)


def _all_asked(rungs: list[Rung], ladder: Ladder) -> bool:
    """Whether the last rung asks all that the job does."""
    asked = {asked.limit: asked.share for asked in rungs[-1].asked} if rungs else {}
    return bool(asked) and all(asked.get(limit, 0.0) >= share * NEARLY for limit, share in ladder.up_to)


def _at_most(target: float | None, wanted: float | None) -> float | None:
    return target if target is None or wanted is None else min(target, wanted * ABOVE)


#: A rung that asks so much of what the job does is as much as it: a dial sets no finer
#: (estimate). So much over it does no harm.
NEARLY, ABOVE = 0.98, 1.02


def _next(ladder: Ladder, capacity: Capacity, clean: float | None, *, finer: bool) -> float | None:
    """What the next rung may ask of that limit."""
    from jobsheet.proving.rungs import finer_share, next_share

    if finer:
        return finer_share(capacity, clean, ladder.chance)
    return next_share(capacity, clean, chance=ladder.chance, growth=ladder.growth)


def _growing(
    capacities: Mapping[str, Capacity], last: Mapping[str, float | None], chance: float
) -> dict[str, float]:
    """The limit that is nearest to giving out, with its last clean share: the
    one that grows by a step at most.

    The others only keep their chance: a spindle loaded to a twentieth may well be loaded to a tenth next.
    """
    from jobsheet.proving.chance import largest_share

    near = {
        limit: share / (largest_share(capacities[limit], chance) or math.inf)
        for limit, share in last.items()
        if share
    }
    if not near:
        return {}
    limit = max(near, key=lambda one: near[one])
    return {limit: last[limit] or 0.0}


Targets = Mapping[str, float]
#: From what each limit may be asked, and what the nearest was asked last, to the next
#: cut or the reason why there is none.
Pick = Callable[[Targets, Targets], "tuple[Made | None, str]"]


def _within(made: Made, targets: Targets) -> bool:
    """Whether no learned limit is asked for more than is allowed, and no other gives out."""
    asks = all(asked.share <= targets.get(asked.limit, math.inf) * (1 + 1e-6) for asked in made.asked)
    return asks and bool(made.asked) and not refused_by.by_limits(made.found)


def _grows(made: Made, clean: Targets) -> bool:
    """Whether it asks more than was cut cleanly already: anything else would teach nothing."""
    return all(asked.share > clean.get(asked.limit, 0.0) * HARDLY for asked in made.asked)


#: Less than this times the last clean cut is the same cut again (estimate: what a dial can be set to).
HARDLY = 1.02


def _milling(ladder: Ladder) -> Pick:
    """Sizes that grow. A ladder of widths may begin less deep."""
    units, grows = ladder.units, ladder.grows
    texts = base_texts(ladder)
    least = cuts.LEAST[units]
    deepest = cuts.most(ladder.process, grows, ladder.cutter)
    whole = kind_of(ladder.kind).entry("depth").read(texts["depth"], units).value if grows == "width" else 0.0  # type: ignore[union-attr]
    last = {"depth": 0.0, "width": 0.0}

    def at(size: float, name: str = grows) -> Made:
        lightened = {"width": cuts.size_text(least["width"], units)} if name != grows else {}
        text = cuts.size_text(size, units)
        return attempt(ladder, {**texts, **lightened, name: text}, text)

    def largest(targets: Targets, name: str, low: float, high: float) -> float:
        """The largest size between that is within the targets; below `low` where none is."""
        if _within(at(high, name), targets):
            return high
        for _ in range(20):
            middle = (low + high) / 2
            low, high = (middle, high) if _within(at(middle, name), targets) else (low, middle)
        return low

    def lighter(targets: Targets) -> Made | None:
        """The first rungs of a ladder of widths: the narrowest cut, less deep than the rest will be."""
        low = max(whole * cuts.LIGHTEST, least["depth"])
        if low >= whole or not _within(at(low, "depth"), targets):
            return None
        size = cuts.settled(largest(targets, "depth", low, whole), units, last["depth"])
        made = at(max(size, low), "depth")
        if size <= last["depth"] * (1 + 1e-6) or not _within(made, targets):
            return None
        last["depth"] = size
        return made

    def pick(targets: Targets, clean: Targets) -> tuple[Made | None, str]:
        start = max(last[grows], least[grows])
        bottom = at(start)
        if not _within(bottom, targets):
            if grows == "width" and not last["width"]:
                made = lighter(targets)
                if made is not None:
                    return made, ""
            return None, _why(bottom, targets, f"even {bottom.name}", ladder)
        first = not last[grows] and grows == "depth"
        most = largest(targets, grows, start, deepest)
        if (
            first
        ):  # with nothing cut yet it is what a plan may go to: one number, and no other limit at its edge
            easy = _easy_to(at, most, start)
            if _grows(at(max(cuts.settled(easy, units), start)), clean):
                most = easy
        for finest in (True,) if first or ladder.up_to else (False, True):
            size = max(cuts.settled(most, units, last[grows], finest=finest), start)
            made = at(size)
            if size > last[grows] * (1 + 1e-6) and _grows(made, clean):
                last[grows] = size
                return made, ""
        return None, _why(at(min(most * 1.25, deepest)), targets, "more", ladder)

    return pick


def _easy_to(at: Callable[[float], Made], most: float, least: float) -> float:
    """The largest size up to this at which no limit that is not learned is at its edge,
    but for those that are anyway [m].
    """
    anyway = {*LEARNED, *(limit.name for limit in at(least).found.limits if is_tight(limit))}

    def easy(size: float) -> bool:
        limits = at(size).found.limits
        return not any(
            is_tight(limit) or limit.verdict == "beyond" for limit in limits if limit.name not in anyway
        )

    if easy(most):
        return most
    low, high = least, most
    for _ in range(20):
        middle = (low + high) / 2
        low, high = (middle, high) if easy(middle) else (low, middle)
    return low


def _from_list(ladder: Ladder) -> Pick:
    """Drills that exist, or threads in real tap drills: the one that asks most and is still allowed.

    All at one speed, the one at which the first may be largest: with a speed of its own for each, a larger
    one on a slower belt would ask a smaller share of the torque than the one before it. Drills keep the feed
    of the first, so that only the size grows.
    """
    rows = listed(ladder)
    able: list[Made] = []
    last = 0.0

    def pick(targets: Targets, clean: Targets) -> tuple[Made | None, str]:
        nonlocal last, able
        if not last:
            first, able = _first_of(ladder, rows, targets, clean)
            if first is None:
                problem = next((made.found.problem for made in rows if made.found.problem), "")
                least = next((made for made in rows if made.asked), None)
                return None, _why(least, targets, least.name, ladder) if least is not None else problem
            last = first.asked[0].share
            return first, ""
        above = [made for made in able if made.asked[0].share > last * 1.02]
        fit = [made for made in above if _within(made, targets)]
        if not fit:
            return None, _why(
                above[0], targets, above[0].name, ladder
            ) if above else "There is no larger one."
        last = fit[-1].asked[0].share
        return fit[-1], ""

    return pick


def _first_of(
    ladder: Ladder, rows: list[Made], targets: Targets, clean: Targets
) -> tuple[Made | None, list[Made]]:
    """The first drill or thread, and all others at its speed; it asks nothing hard
    of hand, holding and cutter either.
    """
    own = {made.name: made.found.number("spindle_speed") for made in rows}
    best: Made | None = None
    spindle = ""
    for speed in sorted({speed for speed in own.values() if speed}, reverse=True):
        typed = f"{speed * 60:.6g} rpm"
        fit = [
            made
            for made in listed(ladder, typed)
            if _within(made, targets)
            and _grows(made, clean)
            and own[made.name] * SLOWEST <= speed <= own[made.name] * 1.001
            and made.found.easy
        ]
        if fit and (
            best is None or (fit[-1].cutter.diameter or 0) > (best.cutter.diameter or 0) * (1 + 1e-6)
        ):
            best, spindle = fit[-1], typed
    if best is None:
        return None, []
    return best, [made for made in listed(ladder, spindle, best.texts.get("feed", "")) if made.asked]


#: A drill may turn so much slower than is usual for it, to be on one belt with the larger ones (estimate).
SLOWEST = 0.5


def _why(made: Made, targets: Targets, name: str, ladder: Ladder) -> str:
    """Why a rung is not made: another limit, or too likely to end badly."""
    limit = refused_by.by_limits(made.found)
    if limit:
        return f"No rung after this: {limit[:1].lower()}{limit[1:]}" if name == "more" else limit
    over = next((asked for asked in made.asked if asked.share > targets.get(asked.limit, math.inf)), None)
    if over is None:
        return "There is no larger one that can be set."
    words = "slow the spindle" if over.limit == "spindle-torque" else "chatter"
    chance, growth = ladder.chance, ladder.growth
    if ladder.finer:
        chance, growth = min(0.5, FINER_CHANCES * chance), FINER_GROWTH
    lead = "Anything more" if name == "more" else f"{name[:1].upper()}{name[1:]}"
    return (
        f"{lead} is not tried: it would {words} with a chance of more than {chance * 100:.0f} %, "
        f"or ask more than {growth:g} times the last clean cut."
    )


def finished(
    ladder: Ladder,
    made: Made,
    number: int,
    capacities: Mapping[str, Capacity],
    last: Mapping[str, float | None],
    chance_over: Callable[..., float],
) -> Rung:
    """The rung as it is set at the machine, with its chance."""
    cut, setting, units = made.found, ladder.setting, ladder.units
    chances = [
        chance_over(capacities[asked.limit], asked.share) for asked in made.asked if asked.limit in capacities
    ]
    grown = [asked.share / before for asked in made.asked if (before := last.get(asked.limit))]
    speed = cut.number("spindle_speed")
    handle, grows = None, ladder.grows
    if grows == "width" and made.name != getattr(getattr(cut.fields, grows, None), "text", made.name):
        grows = "depth"  # one of the first rungs of a ladder of widths: only its depth grew
    size = getattr(cut.fields, grows, None) if grows != "size" else getattr(cut.fields, "depth", None)
    if grows == "width":
        handle = setting.machine.handle("y" if getattr(cut.fields, "along", "x") == "x" else "x")
    elif ladder.milled:
        handle = depth_handle(setting.machine)
    elif ladder.process == "drill":
        handle = setting.machine.handle("quill")
    value = size.value if size is not None else None
    dial = dial_text(handle, reading(handle, value)) if handle is not None and value is not None else ""
    length = cut.value("path_length") or cut.value("hole_depth")
    pace, seconds = cut.value("handle_pace"), cut.value("time_each")
    turn = cut.value("seconds_a_turn")
    words = ""
    if pace is not None and turn is not None:
        words = f"{pace * 60:.1f} turns a minute, {turn:.2f} s a turn"
    elif ladder.process == "drill" and seconds is not None:
        words = f"{seconds:.0f} s for the depth"
    depth, width = getattr(cut.fields, "depth", None), getattr(cut.fields, "width", None)
    return Rung(
        number=number, size=made.name, cutter=made.cutter, texts=tuple(made.texts.items()), asked=made.asked, figures=cut,
        chance=max(chances, default=0.0), growth=max(grown, default=0.0), depth=depth.text if depth is not None else "",
        width=width.text if width is not None else "", dial=dial, handle=handle.name if handle is not None and dial else "",
        spindle=cut.shown("spindle_speed"), position=position_text(setting, speed), pace=words, length=length,
        length_text=show("path_length", length, units) if length is not None else "", seconds=seconds,
    )  # fmt: skip
