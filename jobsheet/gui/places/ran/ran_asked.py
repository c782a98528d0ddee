"""What a set-up asks of who cut it: how each step went, the sizes that it makes with a
limit, and what was planned for both.
"""

from __future__ import annotations

from msgspec import Struct

from jobsheet.gui.desk.saved_plan import SavedPlan
from jobsheet.model.job import SetUp
from jobsheet.operations.registry import kind
from jobsheet.reckoning.minutes import minutes_of
from jobsheet.reckoning.runs_kept import step_words, steps_that_cut
from jobsheet.report.rows.measured import limits, measured, named
from jobsheet.units.show import plain
from jobsheet.units.table import INCH


class StepAsked(Struct, frozen=True, kw_only=True):
    """One step that cuts: its words as its row has them and as its entry has, and what was
    planned; `layers` is 1 where it has none.
    """

    key: str
    number: int
    icon: str
    words: str
    named: str
    spindle: str = ""
    depth: str = ""
    layers: int = 1

    @property
    def planned(self) -> str:
        """`300 rpm · 3 × 4 mm deep`."""
        return " · ".join(part for part in (self.spindle, f"{self.depth} deep" if self.depth else "") if part)

    @property
    def one_deep(self) -> str:
        """One layer, such as `4 mm`."""
        return self.depth.rpartition("×")[2].strip()


class SizeAsked(Struct, frozen=True, kw_only=True):
    """A size that a step makes, as the sheet names it, and its limits [m] as the sheet has them."""

    key: str
    number: int
    size: str
    low: float
    high: float
    words: str

    def out_by(self, found: float, units: str) -> str:
        """`0.02 over` or `0.02 under`; empty where it lies within. The limits themselves are still good."""
        unit = 1e-3 if units == "mm" else INCH
        off = found - self.high if found > self.high else found - self.low if found < self.low else 0.0
        # Closer than anybody measures is a rounding of the arithmetic.
        if abs(off) < 1e-8:
            return ""
        amount = plain(abs(off) / unit, 4 if units == "in" else 3).rstrip("0").rstrip(".")
        return f"{amount} {'over' if off > 0 else 'under'}"


class RanAsked(Struct, frozen=True, kw_only=True):
    """All that is asked of one set-up; planned minutes to set and to cut; `numbers` is
    what entries about it name as theirs.
    """

    set_up: SetUp
    numbers: tuple[int, ...]
    steps: tuple[StepAsked, ...]
    sizes: tuple[SizeAsked, ...]
    to_set: int
    to_cut: int


def asked_of(plan: SavedPlan, set_up: SetUp) -> RanAsked:
    """What the bench entry asks of that set-up: the same steps and sizes as its sheet."""
    minutes = minutes_of(set_up, plan.reckoned)
    return RanAsked(
        set_up=set_up,
        # What is said of the whole of a job with one set-up is said of that.
        numbers=(set_up.number, 0) if len(plan.job.set_ups) == 1 else (set_up.number,),
        steps=tuple(_step(plan, operation.key) for operation in steps_that_cut(set_up, plan.reckoned)),
        sizes=_sizes(plan, set_up),
        to_set=round(minutes.set_up / 60),
        to_cut=max(1, round((minutes.whole - minutes.set_up) / 60)),
    )


def _step(plan: SavedPlan, key: str) -> StepAsked:
    _, operation = plan.job.find(key)
    outcome = plan.reckoned.operations[key]
    row = next((row for row in outcome.rows if row.spindle), None)
    layers = outcome.figures.value("layers") if outcome.figures is not None else None
    return StepAsked(
        key=key, number=operation.number, icon=f"op-{kind(operation.kind).icon}", words=outcome.title,
        named=step_words(operation),
        spindle=f"{row.spindle} rpm" if row is not None else "",
        depth=f"{row.depth} {row.depth_unit}".strip() if row is not None and row.depth else "",
        layers=int(layers or 1),
    )  # fmt: skip


def _sizes(plan: SavedPlan, set_up: SetUp) -> tuple[SizeAsked, ...]:
    sizes = []
    for operation in set_up.operations:
        size = measured(operation)
        if size is None or not size.nominal or size.low == size.high:
            continue
        low, high = limits(size, plan.job.units)
        sizes.append(
            SizeAsked(key=operation.key, number=operation.number, size=named(size), low=size.low, high=size.high,
                      words=f"{low} to {high}")
        )  # fmt: skip
    return tuple(sizes)
