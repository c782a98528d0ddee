"""Values that keep the spelling they were typed in.

The number is in SI and is what everything reckons with; the text is what is saved and printed.
Two values are the same only if both agree, so that `25 thou` is never silently turned into `0.635 mm`.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct


class Quantity(Struct, frozen=True):
    """A size with its unit: `value` in the SI unit of its entry, `text` as typed."""

    value: float
    text: str


class Depth(Struct, frozen=True):
    """A depth, or `through`, whose value depends on the work: then `value` is None."""

    value: float | None
    text: str

    @property
    def through(self) -> bool:
        """Whether it goes out at the other side."""
        return self.value is None


class Size(Struct, frozen=True):
    """A size to be measured with its limits [m], such as `40 ±0.03` or `16 H7`."""

    nominal: float
    low: float
    high: float
    text: str

    @property
    def said(self) -> str:
        """The size as it was typed, without how it is measured."""
        return self.text


class Measured(Size, frozen=True):
    """A size [m] with how it is measured; `text` is the whole line, `size` that of the size alone.

    `goes` is checked by the two ends of a gauge, `between` is measured, cut and measured once more, `spread`
    is measured at more than one place: `where` has the words. `asks` has what else is measured: `square` or
    `place`, with what is allowed [m] and the datum. Without a size all of it is nought.
    """

    size: str = ""
    instrument: str = ""
    where: str = ""
    when: str = ""
    goes: bool = False
    between: bool = False
    spread: bool = False
    asks: tuple[tuple[str, float, str], ...] = ()

    @property
    def said(self) -> str:
        """The size as it was typed; what is asked in its place where there is none."""
        return self.size or self.text

    @property
    def sized(self) -> bool:
        """Whether a size is said, not only squareness or a place."""
        return self.nominal > 0


class Several(Struct, frozen=True):
    """Some of a few words, such as `rear, left`, in the order they are written."""

    items: tuple[str, ...]
    text: str

    def __contains__(self, word: object) -> bool:
        return word in self.items

    def __iter__(self) -> Iterator[str]:
        return iter(self.items)

    def __len__(self) -> int:
        return len(self.items)


class Tolerances(Struct, frozen=True, kw_only=True):
    """What is asked of a surface or hole beside its size, in one line: form and place [m],
    finish Ra [m], the gauge in words.
    """

    text: str
    square: float | None = None
    parallel: float | None = None
    flat: float | None = None
    position: float | None = None
    finish: float | None = None
    gauge: str = ""


class Thread(Struct, frozen=True):
    """A thread: major diameter and pitch [m]; both series have flanks at 60°."""

    major: float
    pitch: float
    fine: bool
    text: str


#: Places nearer than this are one place [m]: a micrometre, far finer than any dial (common practice).
SAME_PLACE = 1e-6


def spot(x: float, y: float) -> tuple[int, int]:
    """Where a point is [m], as a key that is the same for all that is one place."""
    return round(x / SAME_PLACE), round(y / SAME_PLACE)


class Place(Struct, frozen=True):
    """A point in set-up coordinates [m], from the zero that the set-up names."""

    x: Quantity
    y: Quantity

    @property
    def text(self) -> str:
        """As it is typed in one line."""
        return f"{self.x.text}, {self.y.text}"

    @property
    def spot(self) -> tuple[int, int]:
        """Where it is, as a key."""
        return spot(self.x.value, self.y.value)


class Pattern(Struct, frozen=True):
    """Places that were written as one pattern in words."""

    points: tuple[Place, ...]
    text: str


class Places(Struct, frozen=True):
    """Where a hole operation works: single places and patterns, in the order they are written."""

    items: tuple[Place | Pattern, ...]

    @property
    def points(self) -> tuple[Place, ...]:
        """Every place, patterns spread out."""
        places: list[Place] = []
        for item in self.items:
            places.extend((item,) if isinstance(item, Place) else item.points)
        return tuple(places)

    @property
    def text(self) -> str:
        """As it is typed in one line."""
        return "; ".join(item.text for item in self.items)

    def __iter__(self) -> Iterator[Place]:
        return iter(self.points)

    def __len__(self) -> int:
        return len(self.points)


class Cutter(Struct, frozen=True, kw_only=True):
    """A cutter as written in words, such as `face mill 50 mm, 4 teeth, carbide, drawer 2 no. 7`.

    Lengths in metres, angles in radians, marked speed in rev/s. What was not written is None.
    `state` is `sharp`, `used`, `dull` or nothing, which counts as used.
    """

    kind: str
    text: str
    diameter: float | None = None
    size: str = ""
    teeth: int | None = None
    material: str = "HSS"
    point_angle: float | None = None
    split_point: bool = False
    helix: float | None = None
    stick_out: float | None = None
    flutes: float | None = None
    marked_speed: float | None = None
    entering: float | None = None
    rake: float | None = None
    nose: float | None = None
    state: str = ""
    holder: str = ""
    place: str = ""
    style: str = ""
    extra: tuple[str, ...] = ()
