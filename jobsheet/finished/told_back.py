"""What was understood of a line, in shop words, for under its field: what it is,
how deep, where, counted from what.
"""

from __future__ import annotations

import math

from jobsheet.model.finished import Feature, Mouth, Shape
from jobsheet.model.quantity import Size
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

_AXIS_WORDS = ("length", "width", "height")


def shape_told(shape: Shape, units: str) -> str:
    """The sizes of the whole: `length 79.9 to 80.1, width 50, height 30 mm;
    bottom square to front within 0.03 mm`.
    """
    sizes = [
        f"{name} {_limits(size, units)}"
        for name, size in zip(_AXIS_WORDS, shape.sizes, strict=True)
        if size is not None
    ]
    parts = [f"{', '.join(sizes)} {units}"] if sizes else []
    if shape.as_bought:
        parts.append(
            f"{_joined(shape.as_bought)} {'stays' if len(shape.as_bought) == 1 else 'stay'} as bought"
        )
    told = [
        f"{form.face} {form.form}{f' to {_joined(form.to)}' if form.to else ''} within {_length(form.within, units)} {units}"
        for form in shape.forms
    ]
    if len(told) > 3:
        told = [
            f"{len(told)} faces square, parallel or flat within {_length(min(form.within for form in shape.forms), units)} {units}"
        ]
    parts += told
    parts += [f"{face} Ra {trimmed(value * 1e6, 3)} µm" for face, value in shape.finishes[:3]]
    return "; ".join(parts)


def told(feature: Feature, units: str) -> str:
    """One feature: `4 tapped holes M8, pitch 1.25, thread 16 deep, in the
    top; 4 places from left and front`.
    """
    parts = [f"{_what(feature, units)}{_how_deep(feature, units)}"]
    if feature.mouth is not None:
        parts.append(_mouth(feature.mouth, units))
    parts += _sizes(feature, units)
    where = [_where(feature)]
    if feature.what != "chamfer":
        where.insert(0, f"in the {feature.face}")
    parts.append(", ".join(one for one in where if one))
    if feature.within is not None:
        parts.append(f"places within {_length(feature.within, units)} {units}")
    if feature.finish is not None:
        parts.append(f"Ra {trimmed(feature.finish * 1e6, 3)} µm")
    return "; ".join(part for part in parts if part)


def short_of(feature: Feature) -> str:
    """Its name on a small picture, as a drawing writes it: `4 x M8`, `⌀16 H7`, `slot 12 H9`."""
    size = feature.size.text if feature.size is not None else ""
    many = f"{feature.count} x " if feature.count > 1 else ""
    if feature.what == "tapped hole":
        return f"{many}{size}"
    if feature.what == "hole":
        return f"{many}⌀{size}"
    if feature.what in ("pocket", "window") and feature.other is not None:
        return f"{many}{feature.what} {size} x {feature.other.text}"
    return f"{many}{feature.what} {size}"


def _what(feature: Feature, units: str) -> str:
    """`4 tapped holes M8, pitch 1.25 mm`, `slot 12 to 12.043 mm wide`."""
    name = (
        feature.what
        if feature.count == 1
        else f"{feature.count} {feature.what}{'es' if feature.what.endswith('x') else 's'}"
    )
    size = feature.size
    if size is None:
        return name
    if feature.what == "tapped hole" and feature.thread is not None:
        return f"{name} {feature.thread.text}, pitch {_length(feature.thread.pitch, units)} {units}"
    figure = f"{_limits(size, units)} {units}"
    if feature.what == "hole":
        return f"{name} ⌀ {figure}"
    if feature.what in ("pocket", "window") and feature.other is not None:
        return f"{name} {_limits(size, units)} x {figure.replace(_limits(size, units), _limits(feature.other, units))}"
    if feature.what == "chamfer":
        return f"{name} {figure} at {trimmed(math.degrees(feature.angle or 0), 2)}°"
    return f"{name} {figure} wide"


def _how_deep(feature: Feature, units: str) -> str:
    if feature.through:
        return ", out at the other side"
    if feature.depth is None:
        return ""
    deep = _limits(feature.depth, units)
    if feature.what != "tapped hole":
        return f", {deep} {units} deep"
    if feature.hole_depth is None:
        return f", thread {deep} {units} deep, the hole below it as deep as the tap asks"
    return f", thread {deep} {units} deep in a hole of {_limits(feature.hole_depth, units)} {units}"


def _mouth(mouth: Mouth, units: str) -> str:
    size = f"{mouth.what} ⌀ {_limits(mouth.size, units)} {units}"
    if mouth.angle is not None:
        return f"{size}, {trimmed(math.degrees(mouth.angle), 2)}°"
    return (
        f"{size}, {_limits(mouth.depth, units)} {units} deep"
        if mouth.depth is not None
        else f"{size}, just cleaned up"
    )


def _sizes(feature: Feature, units: str) -> list[str]:
    """Length, corners, angle, shaft."""
    phrases = []
    if feature.other is not None and feature.what == "T-slot":
        high = f" x {_limits(feature.recess_depth, units)}" if feature.recess_depth is not None else ""
        phrases.append(f"recess {_limits(feature.other, units)}{high} {units}")
    if feature.length is not None:
        counts = {True: " over all", False: " between the centres of its ends", None: ""}[feature.over_all]
        phrases.append(f"{_limits(feature.length, units)} {units} long{counts}")
    if feature.radius is not None:
        phrases.append(f"corners of {_limits(feature.radius, units)} {units} radius")
    if feature.what == "dovetail" and feature.angle is not None:
        phrases.append(f"{trimmed(math.degrees(feature.angle), 2)}°")
    if feature.shaft is not None:
        phrases.append(f"in a shaft of {_limits(feature.shaft, units)} {units}")
    return phrases


def _where(feature: Feature) -> str:
    """Where it is, or that nobody says it."""
    if feature.what == "chamfer":
        if not feature.edges:
            return "which edges is not said"
        return "all edges" if feature.edges == ("all",) else f"edges of the {_joined(feature.edges)}"
    if feature.what == "step":
        return f"along the {_joined(feature.opens)}"
    opens = (
        f"{feature.opens[0]} to {feature.opens[1]}"
        if len(feature.opens) == 2
        else f"from the {feature.opens[0]} edge"
        if feature.opens
        else ""
    )
    if feature.across is not None:
        face = (
            feature.counted[1]
            if feature.counted and feature.opens[0] in ("left", "right")
            else feature.counted[0]
        )
        return f"{opens}, middle line {feature.across.text} from the {face}"
    if feature.circle is not None:
        return _circle(feature)
    if feature.places is None:
        return opens or "where is not said"
    count = len(feature.places)
    if feature.what in ("slot", "keyway", "T-slot", "dovetail") and count == 2:
        places = f"ends at {feature.places.points[0].text} and {feature.places.points[1].text}"
    else:
        places = f"at {feature.places.text}" if count == 1 else f"{count} places"
    return f"{places} from {_joined(feature.counted)}"


def _circle(feature: Feature) -> str:
    circle = feature.circle
    assert circle is not None
    middle = (
        f"{circle.middle.text} from {_joined(feature.counted)}"
        if circle.middle
        else f"the middle of the {feature.face}"
    )
    return f"on a circle of {circle.diameter.text} around {middle}, the first at {trimmed(math.degrees(circle.first), 3)}° from X towards Y"


def _joined(words: tuple[str, ...]) -> str:
    return " and ".join((", ".join(words[:-1]), words[-1])) if len(words) > 1 else "".join(words)


def _length(value: float, units: str) -> str:
    return trimmed(value / INCH, 5) if units == "in" else trimmed(value * 1e3, 4)


def _limits(size: Size | None, units: str) -> str:
    """`16 to 16.018`, or the size alone where it has no limits of its own."""
    if size is None:
        return ""
    if size.high - size.low < 1e-9:
        return _length(size.nominal, units)
    return f"{_length(size.low, units)} to {_length(size.high, units)}"
