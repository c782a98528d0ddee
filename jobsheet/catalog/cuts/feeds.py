"""Feeds to start from, by tool, diameter and metal; every row and its source in `resources/feeds.yaml`."""

from __future__ import annotations

from functools import cache
from typing import Any

from jobsheet.catalog.cuts.suggestion import Suggestion
from jobsheet.catalog.reading.data import shipped
from jobsheet.cutting.inputs import positive
from jobsheet.cutting.tables import along
from jobsheet.errors import NoSuchEntry
from jobsheet.model.material import Material
from jobsheet.units.grammar import read
from jobsheet.units.show import trimmed

#: Where a person's own material names no class of feed, its family says the nearest careful one (judgement).
_BY_FAMILY = {
    "steel": "alloy steel", "stainless": "stainless", "iron": "iron", "aluminium": "aluminium", "copper": "copper",
    "magnesium": "aluminium", "titanium": "titanium", "nickel": "nickel", "plastic": "plastic",
}  # fmt: skip
_MILLIMETRE = 1e-3
#: Sizes that are meant to be equal differ by rounding: 12.7 mm is 0.5 in.
_ROUNDING = 1e-9


@cache
def table() -> dict[str, Any]:
    """The whole of `resources/feeds.yaml`, all scalars text."""
    data: dict[str, Any] = shipped("feeds.yaml")
    return data


def feed_class(material: Material) -> str:
    """The class of feed of a metal: its own, or the nearest careful one of its family."""
    return material.feed_class or _BY_FAMILY.get(material.family, "hard steel")


def _length(text: str) -> float:
    return read(text, "length")


def drill_feed(diameter: float, material: Material) -> Suggestion:
    """Feed of a twist drill of high speed steel; a curve, so that a drill a little larger is fed a little more.

    Parameters
    ----------
    diameter : float
        Diameter of the drill [m]
    material : Material
        What is drilled

    Returns
    -------
    feed : Suggestion
        Feed per turn: the published curve times the factor of the metal's class, never more than takes half of a
        small drill's own strength [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.
    """
    positive(diameter=diameter)
    rows = table()["drills"]
    value = min(_power(rows["curve"], diameter), _length(rows["most"]))
    down, up = (float(share) for share in rows["spread"])
    kind = feed_class(material)
    factor = float(rows["factors"][kind])
    covers = rows["covers"]
    outside = not _length(covers["low"]) - _ROUNDING <= diameter <= _length(covers["high"]) + _ROUNDING
    curve = Suggestion(
        value, value * down, value * up, rows["source"], outside, "a curve through the published feeds"
    )
    asked = curve.times(factor, f"× {trimmed(factor, 2)} for {kind}" if factor != 1 else "")
    if material.work_hardens:
        asked = _not_less(asked, _length(rows["least"]["feed"]))
    small = rows["small"]
    harder = (float(small["kd"]) / material.kd_torque.value) ** float(small["kd power"])
    return _not_more(asked, _power(small, diameter) * harder, small["source"])


def _power(row: dict[str, str], diameter: float) -> float:
    """A feed that goes with a power of the diameter, both [m]."""
    grown: float = (diameter / _MILLIMETRE) ** float(row["power"])
    return float(row["feed"]) * grown * _MILLIMETRE


def _not_less(asked: Suggestion, least: float) -> Suggestion:
    """Never less than this [m]: a metal that hardens where an edge rubs."""
    if asked.low >= least:
        return asked
    why = asked.why
    if asked.value < least:
        why += "; not less, because this metal hardens where an edge rubs"
    value, top = max(asked.value, least), max(asked.high, least)
    return Suggestion(value, least, top, asked.source, asked.outside, why)


def _not_more(asked: Suggestion, most: float, source: str) -> Suggestion:
    """Never more than this [m]: what takes half of the drill's own strength, which is an estimate."""
    if asked.high <= most:
        return asked
    if asked.value <= most:
        return Suggestion(asked.value, asked.low, most, asked.source, asked.outside, asked.why)
    why = "as much as takes half of this drill's own strength, an estimate"
    return Suggestion(most, min(asked.low, most), most, source, asked.outside, why)


def end_mill_feed(
    diameter: float, material: Material, *, carbide: bool = False, cut: str = "side"
) -> Suggestion:
    """Feed of an end mill a tooth, on a manual machine.

    Straight between the rows of the table. Below its smallest diameter the feed shrinks with the diameter,
    above its largest the line of the last two rows goes on; both are marked as outside.

    Parameters
    ----------
    diameter : float
        Diameter of the cutter [m]
    material : Material
        What is cut
    carbide : bool, optional
        Solid carbide instead of high speed steel
    cut : str, optional
        `side`, `slot` or `finish`: a side cut of up to 0.03 of the diameter

    Returns
    -------
    feed : Suggestion
        Feed per tooth [m]

    Raises
    ------
    CalcError
        If the diameter is not above zero.
    NoSuchEntry
        If there is no such cut.
    """
    positive(diameter=diameter)
    rows = table()["end mills"]["carbide" if carbide else "HSS"]
    if cut not in rows["cuts"]:
        raise NoSuchEntry(f"An end mill's cut is {', '.join(rows['cuts'])}, not “{cut}”.")
    kind = feed_class(material)
    column, factor = rows["classes"][kind]
    sizes = [float(size) for size in rows["diameters"]]
    points = tuple(zip(sizes, (float(feed) for feed in rows["columns"][column]), strict=True))
    size = diameter / _MILLIMETRE
    outside = not sizes[0] - 1e-6 <= size <= sizes[-1] + 1e-6
    feed = points[0][1] * size / sizes[0] if size < sizes[0] else along(points, size)
    down, up = (float(share) for share in rows["spread"])
    value = feed * _MILLIMETRE
    start = Suggestion(
        value, value * down, value * up, rows["source"], outside, f"table by diameter, column {column}"
    )
    if (of_class := float(factor)) != 1:
        start = start.times(of_class, f"× {trimmed(of_class, 2)} for {kind}")
    if (of_cut := float(rows["cuts"][cut])) != 1:
        start = start.times(of_cut, f"× {trimmed(of_cut, 2)} for a {cut} cut")
    return start


def face_mill_feed(material: Material) -> Suggestion:
    """Feed of a face mill with inserts, or of a fly cutter, a tooth [m], on a manual machine."""
    rows = table()["face mills"]
    column = rows["classes"][feed_class(material)]
    low, high = (_length(end) for end in rows["ranges"][column])
    return Suggestion((low + high) / 2, low, high, rows["source"], False, f"middle of the range for {column}")


def reamer_feed(flutes: int) -> Suggestion:
    """Feed of a machine reamer a turn [m], from its number of flutes."""
    positive(flutes=flutes)
    row = table()["reamers"]
    low, high = _length(row["low"]) * flutes, _length(row["high"]) * flutes
    return Suggestion((low + high) / 2, low, high, row["source"], False, "middle of the range for each flute")


def share(tool: str, of: str) -> Suggestion:
    """What a tool takes of a drill's `feed` or `speed` at the same diameter [-].

    For `counterbore`, `countersink` and `spot drill`; for `plunge`, what an end mill takes of its own when it is
    fed straight down. A spot drill's diameter is that of the spot it cuts.

    Raises
    ------
    NoSuchEntry
        If there is no such tool, or neither feed nor speed is asked for.
    """
    row = table()["shares"].get(tool, {}).get(of)
    if row is None:
        raise NoSuchEntry(
            f"There is no share of {of} for “{tool}”; there is for {', '.join(table()['shares'])}."
        )
    low, high = float(row["low"]), float(row["high"])
    whole = "its own" if tool == "plunge" else "the drill's"
    return Suggestion(
        (low + high) / 2, low, high, row["source"], False, f"share of {whole} {of} for a {tool}"
    )


def gentle_feed(tool: str, diameter: float, material: Material) -> Suggestion:
    """Where a hand starts with a tool that goes by the drill: its feed as `feed_as_drill` has it, and no more than is common [m]."""
    suggestion, row = feed_as_drill(tool, diameter, material), table()["shares"][tool]["feed"]
    if "start at most" not in row or suggestion.value <= (most := _length(row["start at most"])):
        return suggestion
    why = f"a {tool} is stopped by eye: begin gently; the drill's feed is where it ends"
    return Suggestion(
        most, min(suggestion.low, most), suggestion.high, row["start source"], suggestion.outside, why
    )


def feed_as_drill(tool: str, diameter: float, material: Material) -> Suggestion:
    """Feed of a `counterbore`, `countersink` or `spot drill` a turn [m], from a drill's of that diameter [m]."""
    part, drill = share(tool, "feed"), drill_feed(diameter, material)
    # A share with a range of its own is taken of the drill's start; a fixed one of the drill's whole range.
    low, high = (drill.value, drill.value) if part.low != part.high else (drill.low, drill.high)
    return Suggestion(
        drill.value * part.value,
        low * part.low,
        high * part.high,
        part.source,
        drill.outside,
        f"{drill.why}; {part.why}",
    )


def reamer_share(opinion: str) -> Suggestion:
    """What a reamer takes of a drill's start speed [-], by the workshop's opinion: `half` or `near drilling speed`."""
    row = table()["reamer speed"]
    value = float(row.get(opinion, row["half"]))
    return Suggestion(value, value, value, row["source"], False, "share of the drill's speed for a reamer")


def tap_speed(material: Material) -> Suggestion | None:
    """The speed at which a tap under power starts [m/s]: the slow end; None where there is none for this metal."""
    tap, drill = material.speed("tap"), material.speed("drill")
    if tap is None:
        return None
    rows = table()["tap speed"]
    most = read(rows["most"]["speed"], "cutting speed")
    slow = tap if drill is None else min(tap, drill * float(rows["shares"][feed_class(material)]))
    value = min(slow, most)
    source = rows["source"] if value < most else rows["most"]["source"]
    return Suggestion(value, value, max(tap, value), source, False, "the slow end of the published speeds")
