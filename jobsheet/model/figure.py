"""What is computed for one operation, and how each number is named and shown."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from msgspec import Struct


class Step(Struct, frozen=True):
    """One formula as it was used: enough to show it worked, with its source."""

    figure: str
    formula: str
    inputs: tuple[tuple[str, Any], ...]
    result: float


class Figure(Struct, frozen=True):
    """One number [SI unit], ready to be shown; the band is where the truth lies nine times in ten."""

    name: str
    value: float
    unit: str
    shown: str
    low: float | None = None
    high: float | None = None


class EdgeSpeed(Struct, frozen=True, kw_only=True):
    """How fast an edge may run [m/s]: where it starts, the fastest, and the slowest at which
    it still cuts, where that is known.

    `source` is where the fastest stands; empty where it is only so much above the start. `work` is what is
    done: `mill`, `drill`, `ream` or `tap`.
    """

    start: float
    top: float
    source: str
    work: str
    least: float | None = None


class Figures(Struct, frozen=True):
    """All figures of one operation, in the order they are read, with their working and caveats."""

    items: tuple[Figure, ...] = ()
    working: tuple[Step, ...] = ()
    caveats: tuple[str, ...] = ()
    #: A speed that was typed and that the machine has not [rev/s]: the nearest was taken instead.
    missing_speed: float | None = None
    #: Between two teeth nothing cuts: the peak of the torque counts beside its mean.
    gaps: bool = False
    #: How fast the edge may run; None where nothing is known of it, or nothing turns.
    edge: EdgeSpeed | None = None

    def get(self, name: str) -> Figure | None:
        """The figure of that name, or None where this kind has none."""
        for figure in self.items:
            if figure.name == name:
                return figure
        return None

    def value(self, name: str) -> float | None:
        """The value of that figure in SI, or None."""
        figure = self.get(name)
        return figure.value if figure else None

    def number(self, name: str) -> float:
        """The value of that figure in SI; nought where there is none."""
        figure = self.get(name)
        return figure.value if figure else 0.0

    def count(self, name: str) -> int:
        """How many that figure says, of layers, passes or strokes: one where there is none."""
        return max(1, round(self.number(name)))

    def shown(self, name: str, otherwise: str = "") -> str:
        """The figure as text, or what to show where there is none."""
        figure = self.get(name)
        return figure.shown if figure else otherwise


class Limit(Struct, frozen=True, kw_only=True):
    """One thing that can give out: what is asked of it and what it gives [both in `unit`].

    `low` and `high` are the capacity's band, nine times in ten; equal where it is known.
    """

    name: str
    title: str
    demand: float
    capacity: float
    unit: str
    share: float
    verdict: str
    low: float
    high: float
    #: That it gives out; None where it goes by a factor or simply fits. In words,
    #: with what happens: `1 in 12 stalls`.
    chance: float | None = None
    odds: str = ""
    shown: str = ""
    sentence: str = ""
    learned: bool = False
    #: What it rests on is what machines of the class carry: nothing of the kind was tried on this one.
    from_class: bool = False
    #: The size to begin at where it was not tried, in words: `0.8 mm deep`.
    begin: str = ""
    working: str = ""
    #: Trials under the bar: the share that each asked, and whether it was clean.
    evidence: tuple[tuple[float, bool], ...] = ()


#: From the mildest to the worst; `not tried` says where to begin.
VERDICTS = ("cut before", "expected", "not tried", "tight", "beyond")

NOTHING: Mapping[str, Figure] = {}
