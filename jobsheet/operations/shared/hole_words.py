"""How steps that make or change a hole are said: counts, depths and sizes in words."""

from __future__ import annotations

from jobsheet.model.quantity import Cutter, Depth, Quantity
from jobsheet.model.setting import Setting
from jobsheet.operations.shared import common


def length(value: float, setting: Setting) -> str:
    """A length with its unit, in the job's units."""
    return " ".join(common.millimetres(value, setting.units))


def holes_words(count: int) -> str:
    """`one hole`, `4 holes`."""
    return common.times(count, "one hole", "holes")


def where(depth: Depth) -> str:
    """`through`, or how deep."""
    return "through" if depth.through else f"{depth.text} deep"


def size_words(cutter: Cutter) -> str:
    """The size of a tool as it is written, without its millimetres: `16 H7`, `1/4 in`."""
    return cutter.size.removesuffix("mm").strip()


def bare(quantity: Quantity) -> str:
    """A size as it was typed, without its millimetres: the drawing's own spelling."""
    return quantity.text.strip().removesuffix("mm").strip()


def shorter(verb: str, count: int, size: str, deep: str) -> tuple[str, ...]:
    """The same step in three lengths: `Drill 2 holes 6.8, 20 deep`,
    `Drill 2 × 6.8, 20 deep`, `Drill 2 × 6.8`.
    """
    times = f"{count} × " if count > 1 else ""
    behind = f", {deep}" if deep and size else f" {deep}" if deep else ""
    whole = f"{verb} {holes_words(count)} {size}".rstrip()
    brief = f"{verb} {times}{size}".rstrip() if size else f"{verb} {holes_words(count)}"
    return tuple(dict.fromkeys((f"{whole}{behind}", f"{brief}{behind}", brief)))
