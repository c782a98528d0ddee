"""How the work is held, as facts: the base of the kinds in `holdings/`, and the
bodies that stand around the work.
"""

from __future__ import annotations

from typing import ClassVar

from msgspec import Struct

#: A point or a size in the frame of the work as it lies [m]: along to the right, across away from the person,
#: up; the left near lower corner of the work is at nought.
Point = tuple[float, float, float]


class Holding(Struct, frozen=True, kw_only=True):
    """What a kind of holding has in common with all; this one itself says that nothing holds the work."""

    kind: ClassVar[str] = ""

    #: The person's own words; no rule reads them.
    note: str = ""


NOTHING = Holding()


class Body(Struct, frozen=True, kw_only=True):
    """One thing that stands around the work: a box, or a cylinder along one of the three directions.

    `part` is what it is (`fixed jaw`, `moving jaw`, `bed`, `parallel`, `bar`, `packing`, `strap`, `stud`,
    `backing`, `table`, `stop`, `plate`, `vee`, `screw`, `chuck`, `dog`, `tail`, `jack`). A cylinder fills
    its box round the `axis` (0, 1 or 2). `sure` is whether its sizes were said or stand on a card; what is
    only usual warns but does not clash.
    """

    part: str
    low: Point
    high: Point
    axis: int | None = None
    sure: bool = True
    #: Of a vee that is seen from its end: where the point of the vee lies across
    #: and up [m], and half its angle [rad].
    vee: tuple[float, float, float] | None = None

    @property
    def size(self) -> Point:
        """Along, across and up [m]."""
        return tuple(high - low for low, high in zip(self.low, self.high, strict=True))  # type: ignore[return-value]


class Bar(Struct, frozen=True):
    """A round or six-sided bar as it lies: along which direction (0 right, 1 away, 2 up), half its size
    across [m], where its axis is [m].

    Of a hexagon it is half the size over its flats. The place of the axis holds
    where nothing of it was cut off too.
    """

    along: int
    radius: float
    middle: Point
    is_round: bool = True


class Around(Struct, frozen=True, kw_only=True):
    """What a kind of holding must know to say where its bodies are: the size of the work as it
    lies [m], the side (`near`, `far`, `left`, `right`) at which the fixed jaw is, the vice of the card,
    and the bar that the work is made of.
    """

    size: Point
    fixed: str = "far"
    jaw_width: float | None = None
    jaw_depth: float | None = None
    #: The stock itself where it is a round or six-sided bar.
    bar: Bar | None = None
