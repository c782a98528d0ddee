"""The minutes around the cut: setting up, changing tools, measuring, work by hand; and those in the cut."""

from __future__ import annotations

from msgspec import Struct

from jobsheet.model.job import SetUp
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.reckoner import Reckoned


class Minutes(Struct, frozen=True, kw_only=True):
    """Times of one set-up or of a whole job [s]."""

    set_up: float = 0.0
    change: float = 0.0
    measure: float = 0.0
    bench: float = 0.0
    cut: float = 0.0

    @property
    def around(self) -> float:
        """Everything beside the cut [s]."""
        return self.set_up + self.change + self.measure + self.bench

    @property
    def whole(self) -> float:
        """All of it [s]."""
        return self.around + self.cut

    def __add__(self, other: Minutes) -> Minutes:
        return Minutes(
            set_up=self.set_up + other.set_up,
            change=self.change + other.change,
            measure=self.measure + other.measure,
            bench=self.bench + other.bench,
            cut=self.cut + other.cut,
        )


def minutes_of(set_up: SetUp, reckoned: Reckoned) -> Minutes:
    """The times of one set-up: its own minutes or the workshop's, a change for
    each other tool in the spindle.

    The workshop's stand for nothing as long as no step is planned in it.
    """
    shop = reckoned.shop
    usual = shop.set_up_time if set_up.operations else 0.0
    held = set_up.minutes.value if set_up.minutes is not None else usual
    changes, measures, bench, cut, last = 0, 0, 0.0, 0.0, ""
    for operation in set_up.operations:
        cutter = getattr(operation.fields, "cutter", None)
        if cutter is not None and cutter.text != last:
            changes, last = changes + 1, cutter.text
        measures += getattr(operation.fields, "measure", None) is not None
        figures = reckoned.operations[operation.key].figures
        if figures is not None:
            bench += figures.number("bench_minutes")
            cut += figures.number("cutting_time")
    return Minutes(
        set_up=held,
        change=changes * shop.tool_change_time,
        measure=measures * shop.measuring_time,
        bench=bench,
        cut=cut,
    )


class ByKind(Struct, frozen=True, kw_only=True):
    """Planned times by kind of work [s]: changing tools and measuring are of the
    kind of the step that asks for it.
    """

    set_up: float = 0.0
    milling: float = 0.0
    holes: float = 0.0
    hand: float = 0.0


def by_kind(set_up: SetUp, reckoned: Reckoned) -> ByKind:
    """The times of one set-up by kind of work; their sum is that of `minutes_of`."""
    seconds = {"milling": 0.0, "holes": 0.0, "hand": 0.0}
    whole = minutes_of(set_up, reckoned)
    shop, last = reckoned.shop, ""
    for operation in set_up.operations:
        groups = kind_of(operation.kind).groups
        by_hand = "bench" in groups or "finding" in groups
        at = "hand" if by_hand else "milling" if "milling" in groups else "holes"
        cutter = getattr(operation.fields, "cutter", None)
        if cutter is not None and cutter.text != last:
            seconds[at], last = seconds[at] + shop.tool_change_time, cutter.text
        if getattr(operation.fields, "measure", None) is not None:
            seconds[at] += shop.measuring_time
        figures = reckoned.operations[operation.key].figures
        if figures is not None:
            seconds["hand"] += figures.number("bench_minutes")
            seconds[at] += figures.number("cutting_time")
    return ByKind(set_up=whole.set_up, **seconds)


def minutes_of_job(reckoned: Reckoned) -> Minutes:
    """The times of the whole job."""
    total = Minutes()
    for set_up in reckoned.job.set_ups:
        total = total + minutes_of(set_up, reckoned)
    return total
