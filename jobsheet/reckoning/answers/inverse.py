"""The question turned round: how deep, how wide, how large a drill or tap this
machine takes here, and what stops it.

No second model: every candidate is reckoned by the same figures and limits as a step of a plan, and the
answer is the largest that they still pass. Where the spindle is not typed the speed is free: any step of the
machine that is not above the wanted one may carry the cut.
"""

from __future__ import annotations

from collections.abc import Callable
from math import floor
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import CalcError
from jobsheet.limits.verdict import is_tight
from jobsheet.machine.spindle import lowest, steps
from jobsheet.model.figure import Limit
from jobsheet.model.job import Operation
from jobsheet.model.quantity import Cutter, Depth, Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import roles
from jobsheet.reckoning import what_if
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.adviser.burden import not_tried
from jobsheet.reckoning.adviser.milling_cut import most_layer
from jobsheet.reckoning.what_if import Tried, tried
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: What is printed beside every answer that no recorded cut stands behind.
PLANNED = "planned limit, a chance of 1 in 10"
#: What it is where no test cut stands behind it either.
FROM_CLASS = "from class"
#: A cut deeper than so many diameters of the cutter is no cut (common practice).
DEEPEST = 3.0
#: The smallest depth or width that is asked about [m].
SMALLEST = 0.01e-3
#: How near the bisection comes to the end, as a share.
NEAR = 1e-4
#: And so much further it is asked once more, as a share.
BEYOND_IT = 0.05
#: A stepless drive is tried at these shares of the wanted speed too, to ten turns a minute.
SLOWER = (0.85, 0.7, 0.55, 0.4, 0.3, 0.2, 0.1)
TEN = 10 / 60

#: How a candidate is judged.
Judge = Callable[[Tried], bool]


class Answer(Struct, frozen=True, kw_only=True):
    """How far it goes: `expected` while every limit is as expected, `tight` while none is
    beyond [m]; None where nothing is.

    `stopped` is the limit that is beyond next, `hardened` the one that is no longer as expected next; where
    it is the cutter's own size that ends it, `end` says so. `untried` is where a limit that was not tried
    here (chatter) begins to ask more than nine of ten machines carry, when that comes first;
    `anyway` are limits that are tight however little is asked. `at` is the cut at `expected`, or at
    `tight` where nothing is as expected.
    """

    what: str
    expected: float | None
    tight: float | None
    expected_shown: str = ""
    tight_shown: str = ""
    stopped: Limit | None = None
    hardened: Limit | None = None
    end: str = ""
    untried: float | None = None
    untried_shown: str = ""
    untried_limit: Limit | None = None
    at: Tried | None = None
    anyway: tuple[Limit, ...] = ()
    units: str = "mm"
    words: str = PLANNED

    @property
    def plan(self) -> float | None:
        """What to plan with [m]: as expected, and no more than nine of ten such machines carry."""
        known = self.expected if self.expected is not None else self.tight
        if known is None or self.untried is None:
            return known
        return min(known, self.untried)

    @property
    def plan_shown(self) -> str:
        """The same as text."""
        return length_shown(self.plan, self.units)

    @property
    def untried_words(self) -> str:
        """How far nine of ten such machines carry it."""
        return f"not tried here; nine of ten carry {self.untried_shown or 'less'}"

    @property
    def stops(self) -> str:
        """What stops it, in words."""
        return in_words(self.stopped or (None if self.end else self.hardened), self.end)


def in_words(limit: Limit | None, end: str) -> str:
    """What stops it: a limit in words, or where there is none what else ends it."""
    return f"{limit.title.lower()}: {limit.sentence or limit.shown}" if limit is not None else end


# --- one candidate ------------------------------------------------------------------------------------------


def speeds_for(fields: object, kind: str, setting: Setting) -> tuple[float, ...]:
    """The speeds at which a cut may be tried [rev/s], the wanted one first, then slower ones; none
    where one is typed or none is set.
    """
    if not hasattr(fields, "spindle") or fields.spindle is not None:
        return ()
    found = tried(kind, fields, setting)
    wanted, known = found.value("wanted_speed"), steps(setting.machine)
    if known:
        allowed = [step.speed for step in known if wanted is None or step.speed <= wanted * (1 + 1e-9)]
        return tuple(reversed(allowed)) or (lowest(setting.machine),)
    chosen = found.value("spindle_speed")
    if chosen is None:
        return ()
    slower = (floor(chosen * share / TEN + 1e-9) * TEN for share in SLOWER)
    return tuple(dict.fromkeys((chosen, *(speed for speed in slower if speed >= lowest(setting.machine)))))


def best(kind: str, fields: object, setting: Setting, judge: Judge) -> Tried:
    """The candidate at the fastest speed that passes; where none does, the one that is least over."""
    speeds = speeds_for(fields, kind, setting)
    if not speeds:
        return tried(kind, fields, setting)
    nearest: Tried | None = None
    for speed in speeds:
        one = tried(kind, what_if.at_speed(fields, speed), setting)
        if judge(one):
            return one
        if nearest is None or _over(one) < _over(nearest):
            nearest = one
    assert nearest is not None
    return nearest


def _over(one: Tried) -> float:
    """By how much the worst of its limits is over."""
    if one.figures is None:
        return float("inf")
    shares = [limit.share for limit in one.limits if limit.verdict == "beyond"]
    return max(shares) if shares else 0.0


def is_carried(one: Tried) -> bool:
    """No limit is beyond."""
    return one.carried


def is_easy(one: Tried) -> bool:
    """Every limit is as expected."""
    return one.easy


def easy_but(names: frozenset[str]) -> Judge:
    """Every limit is as expected, but those that are tight whatever is asked: a
    slow handle stays slow at any depth.
    """

    def judge(one: Tried) -> bool:
        return one.carried and all(not is_tight(limit) or limit.name in names for limit in one.limits)

    return judge if names else is_easy


def largest(make: Callable[[float], Tried], judge: Judge, low: float, high: float) -> float | None:
    """The largest value for which the judge says yes, by bisection; None where even the smallest is too much.

    What a cut asks does not rise everywhere with its width (the mean chip does not): where a little more is
    carried again, it is looked for beyond that.
    """
    if judge(make(high)):
        return high
    if not judge(make(low)):
        return None
    good = low
    while True:
        bad = high
        while bad > good * (1 + NEAR):
            middle = (good + bad) / 2
            good, bad = (middle, bad) if judge(make(middle)) else (good, middle)
        more = good * (1 + BEYOND_IT)
        if more >= high or not judge(make(more)):
            return good
        good = more


def length_shown(value: float | None, units: str) -> str:
    """A length rounded down, so that what is printed is still carried."""
    if value is None:
        return ""
    unit, step, decimals = (1e-3, 0.05, 2) if units == "mm" else (INCH, 0.001, 3)
    if value < 10 * step * unit:
        step, decimals = step / 10, decimals + 1
    return f"{trimmed(floor(value / unit / step + 1e-9) * step, decimals)} {units}"


def answer(
    what: str,
    make: Callable[[float, Judge], Tried],
    units: str,
    *,
    low: float,
    high: float,
    end: str,
) -> Answer:
    """The answer for an input that grows from low to high [m]; `make` reckons one value
    at the speed that suits the judge.
    """
    first = make(low, is_easy)
    anyway = tuple(limit for limit in first.limits if is_tight(limit))
    easy = easy_but(frozenset(limit.name for limit in anyway))
    expected = largest(lambda value: make(value, easy), easy, low, high)
    tight = largest(lambda value: make(value, is_carried), is_carried, expected or low, high)
    beyond, harder = (
        None if most is not None and most >= high else make(min((most or low) * (1 + 2 * NEAR), high), judge)
        for most, judge in ((tight, is_carried), (expected, easy))
    )
    at = (
        make(expected, easy)
        if expected is not None
        else make(tight, is_carried)
        if tight is not None
        else None
    )
    unknown, limit = _untried(make, low, tight or high)
    if unknown is not None and expected is not None and abs(unknown - expected) <= 2 * NEAR * expected:
        unknown = expected  # the same end, looked for twice
    problem = beyond.problem if beyond is not None else ""
    ended = end if tight is not None and tight >= high else problem
    hard = next(
        (
            each
            for each in harder.limits
            if (each.verdict == "beyond" or is_tight(each)) and each not in anyway
        ), None
    ) if harder is not None else None  # fmt: skip
    cut = at.governing if at is not None else None
    return Answer(
        what=what, expected=expected, tight=tight, expected_shown=length_shown(expected, units), tight_shown=length_shown(tight, units),
        stopped=beyond.stopped_by if beyond is not None else None, hardened=hard, anyway=anyway, end=ended, untried=unknown,
        untried_shown=length_shown(unknown, units), untried_limit=limit, at=at, units=units,
        words="cut before" if cut is not None and cut.verdict == "cut before" else PLANNED,
    )  # fmt: skip


def _untried(
    make: Callable[[float, Judge], Tried], low: float, high: float
) -> tuple[float | None, Limit | None]:
    """From where on a limit was not tried, if that is before `high`."""

    def over(one: Tried) -> Limit | None:
        return next((limit for limit in one.limits if not_tried(limit)), None)

    last = over(make(high, is_carried))
    if last is None:
        return None, None
    return largest(lambda value: make(value, is_carried), lambda tried: over(tried) is None, low, high), last


# --- passes -------------------------------------------------------------------------------------------------


def _milled(operation: Operation) -> bool:
    """Whether it is fed by a handle along the work; a plunge is not."""
    return bool(roles(operation).mills) and hasattr(operation.fields, "feed_per_tooth")


def with_depth(fields: Any, depth: float) -> Any:
    """The same cut so deep in one layer [m]."""
    text = f"{depth * 1e3:.9g} mm"
    made = Depth(depth, text) if isinstance(fields.depth, Depth) else Quantity(depth, text)
    return replace(fields, depth=made, **({"layer": None} if hasattr(fields, "layer") else {}))


def with_width(fields: Any, width: float) -> Any:
    """The same cut so wide in one pass [m]."""
    made = Quantity(width, f"{width * 1e3:.9g} mm")
    if hasattr(fields, "cut"):
        return replace(fields, width=made, cut=None, leave=None)
    return replace(fields, width=made)


def deepest_pass(operation: Operation, setting: Setting) -> Answer:
    """How deep this milling step may cut in one layer.

    Raises
    ------
    CalcError
        If the step is no milling cut with a depth.
    """
    fields, kind = operation.fields, operation.kind
    diameter = _diameter(operation, "depth")
    high, end = DEEPEST * diameter, f"{DEEPEST:g} times the cutter's diameter"
    most = most_layer(roles(operation), diameter, setting)
    if most < high:
        high, end = (
            most,
            f"{trimmed(most / diameter, 2)} of the cutter's diameter: deeper, a slot packs with chips",
        )
    return answer(
        "deepest pass", lambda depth, judge: best(kind, with_depth(fields, depth), setting, judge), setting.units,
        low=SMALLEST, high=high, end=end,
    )  # fmt: skip


def deepest_here(operation: Operation, setting: Setting) -> Answer:
    """How deep one layer may be at the speed, feed and width that are recommended for
    this step. Raises as `deepest_pass`.
    """
    advised = best_cut(operation, setting)
    if advised is None:
        return deepest_pass(operation, setting)
    return deepest_pass(replace(operation, fields=advised.fields), setting)


def widest_pass(operation: Operation, setting: Setting) -> Answer:
    """How wide this milling step may cut in one pass, at its own depth.

    Raises
    ------
    CalcError
        If the step is no milling cut with a width.
    """
    fields, kind = operation.fields, operation.kind
    diameter = _diameter(operation, "width")
    long, wide, high = setting.extent
    roomy = replace(setting, extent=(max(long, diameter), max(wide, diameter), high))
    return answer(
        "widest pass", lambda width, judge: best(kind, with_width(fields, width), roomy, judge), setting.units,
        low=SMALLEST, high=diameter, end="as wide as the cutter",
    )  # fmt: skip


def _diameter(operation: Operation, name: str) -> float:
    """The cutter's diameter [m]; refused where the step has no such size to ask about."""
    cutter: Cutter | None = getattr(operation.fields, "cutter", None)
    if not _milled(operation) or not hasattr(operation.fields, name) or cutter is None or not cutter.diameter:
        raise CalcError(
            "step", f"“{operation.number}”", f"a milling cut with a {name} and a cutter's diameter"
        )
    return cutter.diameter
