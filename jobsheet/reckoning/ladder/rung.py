"""A ladder of test cuts and its rungs, as values: what the window shows, the
sheet prints and an entry refers to.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct

from jobsheet.model.capacity import Capacity
from jobsheet.model.figure import Limit
from jobsheet.model.machine import Machine
from jobsheet.model.quantity import Cutter
from jobsheet.model.setting import Setting
from jobsheet.model.trials import Asked
from jobsheet.reckoning.what_if import Tried


class Rung(Struct, frozen=True, kw_only=True):
    """One test cut. `size` is what grew, in words; `texts` its fields as typed,
    `length` [m], `seconds` it should take.

    `chance` is that of ending badly, if every rung below it was clean; `growth` how much more it asks
    than the last clean cut, or 0 for the first.
    """

    number: int
    size: str
    cutter: Cutter
    texts: tuple[tuple[str, str], ...]
    asked: tuple[Asked, ...]
    figures: Tried
    chance: float = 0.0
    growth: float = 0.0
    depth: str = ""
    width: str = ""
    #: The dial of what grew, and which handle it is: `0 + 0.70`, `head`.
    dial: str = ""
    handle: str = ""
    spindle: str = ""
    position: str = ""
    pace: str = ""
    length: float | None = None
    length_text: str = ""
    seconds: float | None = None

    @property
    def fields(self) -> Any:
        """The fields of the cut, as its kind reads them."""
        return self.figures.fields

    @property
    def limits(self) -> tuple[Limit, ...]:
        """Demand and share of every limit, the nearest to giving out first."""
        return self.figures.limits

    def of(self, limit: str) -> Asked | None:
        """What it asks of a limit that is learned."""
        return next((asked for asked in self.asked if asked.limit == limit), None)

    @property
    def nearest(self) -> Asked | None:
        """The learned limit that it loads most, by its share of card or class."""
        return max(self.asked, key=lambda asked: asked.share, default=None)


class Expected(Struct, frozen=True, kw_only=True):
    """What a ladder will cost and teach, before its first cut: at the middle of
    what is thought of the machine.

    `minutes` with those between two cuts; `before` and `after` are high over low of
    nine in ten of the limit it is about.
    """

    limit: str
    cuts: int
    minutes: float
    before: float
    after: float


class Ladder(Struct, frozen=True, kw_only=True):
    """What is planned, from the bottom up. Where `refused` says why, there are no
    rungs; `ends` says why none follow.
    """

    machine: Machine
    process: str
    kind: str
    cutter: Cutter
    material: str
    units: str
    setting: Setting
    date: str
    holding: str = ""
    #: What grows: `depth`, `width` or `size`.
    grows: str = "depth"
    texts: tuple[tuple[str, str], ...] = ()
    rungs: tuple[Rung, ...] = ()
    refused: str = ""
    ends: str = ""
    start: tuple[str, ...] = ()
    stop: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    chance: float = 0.10
    growth: float = 1.25
    #: What a job asks of each learned limit: there a ladder for its steps ends. Empty
    #: where it is to find the machine's own.
    up_to: tuple[tuple[str, float], ...] = ()
    expected: Expected | None = None
    #: The step of a job whose own layers are the rungs, in words:
    #: `HM-103, step 70`. Empty where scrap is cut.
    inside: str = ""
    #: A second, finer ladder where the first ended: asked for, never of itself.
    finer: bool = False
    #: What is known of each learned limit before the first rung.
    capacities: tuple[Capacity, ...] = ()

    @property
    def title(self) -> str:
        """What is cut, in a few words."""
        return f"{self.process} cuts, {self.cutter.text}, {self.setting.material.title}"

    @property
    def milled(self) -> bool:
        """Whether a depth or a width grows, not the size of a drill or a thread."""
        return self.grows != "size"

    def capacity(self, limit: str) -> Capacity | None:
        """What is known of that limit before the first rung."""
        return next((capacity for capacity in self.capacities if capacity.limit == limit), None)
