"""A feature as one line in the order of a drawing: what reads it gives the same
feature again, and writes the same line.
"""

from __future__ import annotations

import math

from jobsheet.model.finished import Feature, Mouth, OnCircle
from jobsheet.units.show import trimmed


def written(feature: Feature) -> str:
    """The line of a feature.

    Sizes and places stand in it as they were typed; the words and their order are always the same.
    """
    parts = [_head(feature), *_depth(feature), *_run(feature), *_where(feature), *_rest(feature)]
    return " ".join(part for part in parts if part)


def _head(feature: Feature) -> str:
    many = f"{feature.count} x " if feature.count > 1 else ""
    size = feature.size.text if feature.size is not None else ""
    other = feature.other.text if feature.other is not None else ""
    if feature.what == "tapped hole":
        return f"{many}{size}"
    if feature.what in ("pocket", "window"):
        return f"{many}{feature.what} {size} x {other}"
    if feature.what == "chamfer":
        return f"{many}chamfer {size} x {_degrees(feature.angle or math.pi / 4)}"
    if feature.what == "T-slot":
        bolt = f" for {feature.thread.text}" if feature.thread is not None else ""
        recess = f" recess {other}" if other else ""
        high = f" x {feature.recess_depth.text}" if feature.recess_depth is not None else ""
        return f"{many}T-slot {size}{bolt}{recess}{high}"
    if feature.what == "dovetail":
        return f"{many}dovetail {_degrees(feature.angle or 0)}° {size}"
    return f"{many}{feature.what} {size}"


def _degrees(angle: float) -> str:
    return trimmed(math.degrees(angle), 4)


def _depth(feature: Feature) -> list[str]:
    """How deep, and how wide at its mouth."""
    found = []
    if feature.through and feature.what != "window":
        found.append("through")
    if feature.depth is not None:
        hole = f"/{feature.hole_depth.text}" if feature.hole_depth is not None else ""
        found.append(f"blind {feature.depth.text}{hole}" if hole else f"x {feature.depth.text} deep")
    if feature.radius is not None:
        found.append(f"R{feature.radius.text}")
    if feature.mouth is not None:
        found.append(_mouth(feature.mouth))
    return found


def _mouth(mouth: Mouth) -> str:
    if mouth.what == "countersink":
        return f"countersink {mouth.size.text} x {_degrees(mouth.angle or 0)}°"
    deep = f" x {mouth.depth.text}" if mouth.depth is not None else ""
    return f"{mouth.what} {mouth.size.text}{deep}"


def _run(feature: Feature) -> list[str]:
    """Where it is open, how long it is, and on what."""
    phrases = []
    if feature.what == "step":
        phrases += [f"{face} side" for face in feature.opens]
    elif len(feature.opens) == 2:
        phrases.append(f"{feature.opens[0]} to {feature.opens[1]}")
    elif feature.opens:
        phrases.append(f"from {feature.opens[0]} edge")
    if feature.length is not None:
        counts = {True: " over all", False: " between centres", None: ""}[feature.over_all]
        phrases.append(f"{feature.length.text} long{counts}")
    if feature.shaft is not None:
        phrases.append(f"shaft {feature.shaft.text}")
    if feature.edges:
        phrases.append(
            "all edges" if feature.edges == ("all",) else ", ".join(f"{face} edges" for face in feature.edges)
        )
    return phrases


def _where(feature: Feature) -> list[str]:
    """The places, and the faces that they count from and that it is cut into."""
    phrases = []
    if feature.what != "chamfer" and feature.face != "top":
        phrases.append(f"from {feature.face} face")
    if feature.across is not None:
        face = next((one for one in feature.counted if one not in _along(feature)), "")
        phrases.append(f"at {feature.across.text}{f' from {face}' if face else ''}")
    elif feature.circle is not None:
        phrases.append(_circle(feature.circle))
    elif feature.places is not None:
        points = feature.places.points
        ends = (
            feature.what in ("slot", "keyway", "T-slot", "dovetail")
            and len(points) == 2
            and feature.count == 1
        )
        phrases.append(f"from {points[0].text} to {points[1].text}" if ends else f"at {feature.places.text}")
    if feature.counted and feature.across is None:
        phrases.append(f"from {', '.join(feature.counted)}")
    return phrases


def _along(feature: Feature) -> tuple[str, ...]:
    """The faces on the axis that a slot runs along."""
    pairs = (("left", "right"), ("front", "rear"), ("bottom", "top"))
    return next((pair for pair in pairs if feature.opens and feature.opens[0] in pair), ())


def _circle(circle: OnCircle) -> str:
    middle = f" around {circle.middle.text}" if circle.middle is not None else ""
    return f"on PCD {circle.diameter.text}{middle}, first at {_degrees(circle.first)}°"


def _rest(feature: Feature) -> list[str]:
    found = []
    if feature.within is not None:
        found.append(f"within {trimmed(feature.within * 1e3, 6)} mm")
    if feature.finish is not None:
        found.append(f"Ra {trimmed(feature.finish * 1e6, 3)}")
    if feature.note:
        found.append(f"({feature.note})")
    return found
