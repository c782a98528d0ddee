"""Dividing head and rotary table: a share of a turn as whole turns and holes of a
circle, or as turns, degrees and minutes.

All in fractions: what is exact is exact, and what is not says by how much.
"""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from jobsheet.errors import CalcError, QuantityError
from jobsheet.units.lazily import pattern

#: Degrees of a whole turn.
ROUND = 360
_PLAIN = pattern(r"^\s*(\d+(?:[.,]\d+)?)\s*$")
_NUMBER = r"(\d+(?:[.,]\d+)?)\s*"
_SEXAGESIMAL = pattern(
    rf"^\s*(?:{_NUMBER}(?:°|deg(?:rees)?)\s*)?(?:{_NUMBER}(?:'|′|min)\s*)?(?:{_NUMBER}(?:\"|″|''|s)\s*)?$"
)


class Turns(Struct, frozen=True, kw_only=True):
    """Turns of the handle for one step: whole ones, then so many holes on a circle; how
    far it is off [degrees of the work].
    """

    whole: int
    holes: int
    circle: int
    error: Fraction

    @property
    def exact(self) -> bool:
        """Whether it comes out with nothing left."""
        return self.error == 0

    @property
    def words(self) -> str:
        """As it is said at the bench: `5 turns and 35 holes on 49`."""
        turns = f"{self.whole} turn{'' if self.whole == 1 else 's'}"
        if not self.holes:
            return turns
        holes = f"{self.holes} hole{'' if self.holes == 1 else 's'} on {self.circle}"
        return f"{turns} and {holes}" if self.whole else holes


class Division(Struct, frozen=True, kw_only=True):
    """A division with every way to set it; the first is on the largest circle,
    where a hole is reached most exactly.

    `angle` is one step [degrees, exact], `count` the steps in a turn where there is a whole number of them.
    """

    ratio: Fraction
    angle: Fraction
    count: int | None
    ways: tuple[Turns, ...]

    @property
    def turns(self) -> Turns:
        """The first way."""
        return self.ways[0]

    @property
    def sum_of_errors(self) -> Fraction:
        """What is left over after a whole turn of the work if every step is
        counted from the last [degrees].
        """
        return abs(self.turns.error) * (self.count or 1)


class Dial(Struct, frozen=True, kw_only=True):
    """A reading of a rotary table: whole turns of its handle, then degrees and minutes
    on the dial; the line and its error.

    `degrees` and `minutes` are what stands on the dial beyond the whole turns, `line` the one to stop at,
    counted from nought; `error` [degrees of the work] is where the line is, minus where it should be.
    """

    angle: Fraction
    turns: int
    degrees: int
    minutes: Fraction
    line: int
    line_turns: int
    error: Fraction


def read_angle(text: str) -> Fraction:
    """An angle in degrees, exact: `51.43`, `12° 30'`, `0° 5' 30"`.

    Raises
    ------
    QuantityError
        If it is none, or not above zero.
    """
    plain = _PLAIN.match(text)
    match = plain or _SEXAGESIMAL.match(text)
    if not match or not any(match.groups()) or len(text) > 40:
        raise QuantityError(f"“{text.strip()}” is not an angle; write 12.5° or 12° 30'.", 0, len(text))
    degrees, minutes, seconds = (
        Fraction((part or "0").replace(",", "."))
        for part in (match.groups() if plain is None else (match[1], None, None))
    )
    angle = degrees + minutes / 60 + seconds / 3600
    if not 0 < angle <= ROUND:
        raise QuantityError(f"“{text.strip()}” must lie above 0° and up to 360°.", 0, len(text))
    return angle


def divide(
    ratio: int | Fraction,
    circles: tuple[int, ...],
    *,
    count: int | None = None,
    angle: Fraction | None = None,
) -> Division:
    """Turns and holes for one step of a division.

    Parameters
    ----------
    ratio : int or Fraction
        Turns of the handle for one turn of the work
    circles : tuple of int
        Holes in each circle that is there
    count : int
        Steps in a whole turn; or
    angle : Fraction
        One step [degrees]

    Returns
    -------
    division : Division
        All exact ways, the largest circle first; where there is none, the nearest, with its error

    Raises
    ------
    CalcError
        If neither or both are given, or one of them has no meaning.
    """
    if (count is None) == (angle is None):
        raise CalcError("division", "not one thing", "a count or an angle, one of them")
    if count is not None and count < 1:
        raise CalcError("count", count, "at least 1")
    if ratio <= 0:
        raise CalcError("ratio", ratio, "above zero")
    if not circles or min(circles) < 1:
        raise CalcError("circles", "none", "at least one, with its number of holes")
    step = Fraction(ROUND, count) if count is not None else Fraction(angle or 0)
    if step <= 0:
        raise CalcError("angle", step, "above zero")
    asked = Fraction(ratio) * step / ROUND
    ways = [_way(asked, Fraction(ratio), circle) for circle in sorted(set(circles), reverse=True)]
    exact = [way for way in ways if way.exact]
    if not exact:
        ways.sort(key=lambda way: (abs(way.error), -way.circle))
    whole = ROUND / step
    return Division(
        ratio=Fraction(ratio),
        angle=step,
        count=int(whole) if whole.denominator == 1 else None,
        ways=tuple(exact or ways[:1]),
    )


def _way(asked: Fraction, ratio: Fraction, circle: int) -> Turns:
    """The nearest hole of a circle for so many turns of the handle."""
    holes = round(asked * circle)
    whole, rest = divmod(holes, circle)
    return Turns(
        whole=whole, holes=rest, circle=circle, error=(Fraction(holes, circle) - asked) * ROUND / ratio
    )


def places(division: Division, circle: int | None = None) -> tuple[Turns, ...]:
    """Every step counted from the zero on one circle, so that no error adds up; the last is the whole turn.

    Raises
    ------
    CalcError
        If the steps do not fill a whole turn.
    """
    if division.count is None:
        raise CalcError("angle", f"{float(division.angle):g}°", "a whole number of steps in a turn")
    holes = circle or division.turns.circle
    return tuple(
        _way(division.ratio * division.angle * step / ROUND, division.ratio, holes)
        for step in range(1, division.count + 1)
    )


def settings(
    angles: tuple[Fraction, ...], ratio: int | Fraction, circles: tuple[int, ...]
) -> tuple[Turns, ...]:
    """Every angle counted from the zero, all on the one circle of holes that comes nearest to all of them.

    Parameters
    ----------
    angles : tuple of Fraction
        From the zero [degrees]; not below zero
    ratio : int or Fraction
        Turns of the handle for one turn of the work
    circles : tuple of int
        Holes in each circle that is there; of those that are equally near the largest is taken

    Raises
    ------
    CalcError
        If one of them has no meaning.
    """
    if not circles or min(circles) < 1:
        raise CalcError("circles", "none", "at least one, with its number of holes")
    if ratio <= 0 or any(angle < 0 for angle in angles):
        raise CalcError("setting", "below zero", "angles and a ratio, none below zero")

    def ways(circle: int) -> tuple[Turns, ...]:
        return tuple(_way(Fraction(ratio) * angle / ROUND, Fraction(ratio), circle) for angle in angles)

    every = [ways(circle) for circle in sorted(set(circles), reverse=True)]
    return min(every, key=lambda each: max((abs(way.error) for way in each), default=Fraction(0)))


def on_table(angle: Fraction, ratio: int | Fraction, line: Fraction) -> Dial:
    """The reading of a rotary table for an angle from its zero.

    Parameters
    ----------
    angle : Fraction
        From the zero [degrees]; not below zero
    ratio : int or Fraction
        Turns of the handle for one turn of the table: 90 makes 4° a turn
    line : Fraction
        What a line of the handle's dial is [degrees of the table]
    """
    if angle < 0 or ratio <= 0 or line <= 0:
        raise CalcError("reading", "below zero", "an angle, a ratio and a line, none below zero")
    a_turn = Fraction(ROUND) / Fraction(ratio)
    turns, rest = divmod(angle, a_turn)
    lines = round(rest / line)
    line_turns = int(turns)
    if abs(a_turn - rest) < abs(lines * line - rest) or lines * line >= a_turn:
        line_turns, lines = line_turns + 1, 0
    return Dial(
        angle=angle, turns=int(turns), degrees=int(rest), minutes=(rest - int(rest)) * 60, line=lines,
        line_turns=line_turns, error=line_turns * a_turn + lines * line - angle,
    )  # fmt: skip


def angle_text(angle: Fraction) -> str:
    """Degrees, minutes and seconds, rounded to the second: `51° 25′ 43″`."""
    sign, seconds = ("−" if angle < 0 else ""), round(abs(angle) * 3600)
    degrees, rest = divmod(seconds, 3600)
    minutes, left = divmod(rest, 60)
    if left:
        return f"{sign}{degrees}° {minutes}′ {left}″"
    return f"{sign}{degrees}° {minutes}′" if minutes else f"{sign}{degrees}°"
