"""Asks whether a spot is wide enough in angle for the drill that follows."""

from __future__ import annotations

import math
from collections.abc import Iterator

from jobsheet.model.remark import Fix, Remark
from jobsheet.review.mending.fixes import set_field
from jobsheet.review.mending.line_texts import without_angle
from jobsheet.review.plan.hole_chains import HoleStep, holes_of
from jobsheet.review.rule import View, remark, rule
from jobsheet.units.show import trimmed

#: The narrowest spot that high-speed steel bears (trade teaching on spotting; workshop setting `spot-angle`).
NARROWEST = math.radians(90)
_HAIR = math.radians(0.5)


@rule("spot-angle-for-the-drill", "Spot wide enough for the drill", "rework")
def spot_angle_for_the_drill(view: View) -> Iterator[Remark]:
    """A drill should touch its spot near the middle, not at its corners. How wide a spot must be is a workshop setting.

    Because: In a narrow spot the corners of the drill meet first: they chip, carbide at once, and the drill is not guided.
    Not so: centre drill 60°, carbide drill 140°
    So: spot drill 90°, drill 118° of high-speed steel
    From: common practice
    """
    opinion = view.reckoned.shop.spot_angle
    if opinion == "any spot":
        return
    told: set[str] = set()
    for chain in holes_of(view.reckoned).chains:
        for spotted, drilled in zip(chain.steps, chain.steps[1:], strict=False):
            if spotted.does != "spot" or drilled.does != "drill" or spotted.key in told:
                continue
            have, wanted = spotted.cutter.point_angle, _wanted(drilled, opinion)
            if have is None or wanted is None or have >= wanted - _HAIR:
                continue
            told.add(spotted.key)
            message = (
                f"Spot with a wider angle: {_degrees(have)}° under a drill that asks for {_degrees(wanted)}°"
            )
            fix = None
            if spotted.cutter.kind != "centre drill":
                text = without_angle(spotted.cutter.text)
                wider = 90 if wanted <= NARROWEST + _HAIR else 120 if wanted <= math.radians(120) else 142
                fix = Fix(
                    f"Spot at {wider}°", set_field(spotted.key, "cutter", _with_angle(text, wider)), (spotted.key,)
                )  # fmt: skip
            yield remark(
                view, "spot-angle-for-the-drill", message, spotted.key, drilled.key, fix=fix, set_up=spotted.set_up
            )  # fmt: skip


def _wanted(drill: HoleStep, opinion: str) -> float | None:
    """The narrowest spot for a drill [rad]."""
    point = drill.cutter.point_angle
    if opinion == "never under the drill":
        return point
    if drill.cutter.material == "carbide" and point is not None:
        return max(point, NARROWEST)
    return NARROWEST


def _with_angle(text: str, angle: int) -> str:
    """A cutter's line with that angle behind its size; its place is another one then."""
    return f"{text.split(',', maxsplit=1)[0].strip()}, {angle}°"


def _degrees(angle: float) -> str:
    return trimmed(math.degrees(angle), 0)
