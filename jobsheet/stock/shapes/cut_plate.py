"""Plate that is cut out: its corners as seen from above, and how thick it is."""

from __future__ import annotations

from itertools import combinations

from jobsheet.model.quantity import Place, Places
from jobsheet.model.stock import Outline, Stock
from jobsheet.operations.entry import Entry
from jobsheet.stock.shape_kind import Box, ShapeKind, reckoned_size, size

Point = tuple[float, float]


def _points(stock: Stock) -> list[Point]:
    """The corners, the leftmost and the nearest at nought [m]."""
    assert stock.outline is not None
    found = [(place.x.value, place.y.value) for place in stock.outline.points]
    left, near = min(x for x, _ in found), min(y for _, y in found)
    return [(x - left, y - near) for x, y in found]


def _box(stock: Stock) -> Box:
    points = _points(stock)
    return (
        reckoned_size(max(x for x, _ in points), stock.height),
        reckoned_size(max(y for _, y in points), stock.height),
        stock.height,
    )


def _twice_area(points: list[Point]) -> float:
    """Twice the area, above zero where the corners go round against the clock."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, [*points[1:], points[0]], strict=True))


def _outline(stock: Stock) -> Outline:
    points = _points(stock)
    area = _twice_area(points) / 2
    turned = points if area > 0 else points[::-1]
    return Outline(axis=2, long=stock.height.value, outer=tuple(turned), area=abs(area))


def _words(stock: Stock) -> str:
    x, y, z = _box(stock)
    return f"plate {z.text}, cut out of {x.text} × {y.text}"


def _usual(stock: Stock) -> dict[str, object]:
    x, y = stock.length, stock.width
    nought = type(x)(0.0, "0")
    corners = ((nought, nought), (x, nought), (x, y), (nought, y))
    return {"outline": Places(tuple(Place(quantity, other) for quantity, other in corners))}


def _wrong(stock: Stock) -> tuple[str, str]:
    assert stock.outline is not None
    if len(stock.outline) < 3:
        return (
            "outline",
            "A plate has three corners or more; write them in turn, such as 0, 0; 80, 0; 80, 30; 0, 50",
        )
    points = _points(stock)
    if _crosses(points):
        return (
            "outline",
            "The outline crosses itself; write its corners in the order in which a saw goes round",
        )
    if abs(_twice_area(points)) < 1e-12:
        return "outline", "The corners lie in one line; write at least one that lies beside it"
    return "", ""


def _crosses(points: list[Point]) -> bool:
    """Whether two sides that are no neighbours meet."""
    sides = list(zip(points, [*points[1:], points[0]], strict=True))
    last = len(sides) - 1
    return any(
        _meet(sides[one], sides[other])
        for one, other in combinations(range(len(sides)), 2)
        if other - one > 1 and (one, other) != (0, last)
    )


def _meet(one: tuple[Point, Point], other: tuple[Point, Point]) -> bool:
    def side(a: Point, b: Point, c: Point) -> float:
        return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

    return side(*one, other[0]) * side(*one, other[1]) < 0 and side(*other, one[0]) * side(*other, one[1]) < 0


SHAPE = ShapeKind(
    name="cut plate",
    entries=(
        Entry(
            name="outline", title="Corners, from above", asks="places",
            hint="x, y in turn: 0, 0; 80, 0; 80, 30; 0, 50",
        ),
        size("height", "Thickness", high="3 m"),
    ),
    box=_box, outline=_outline, words=_words, usual=_usual, wrong=_wrong,
)  # fmt: skip
