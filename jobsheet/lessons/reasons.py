"""Reasons for an order that no rule of the review gives, because no plan is read for them yet,
and habits that are never a mistake.
"""

from __future__ import annotations

from msgspec import Struct


class Reason(Struct, frozen=True, kw_only=True):
    """Why one step comes before another, what it costs otherwise, and who says so."""

    title: str
    because: str
    severity: str
    source: str


#: By a name that is no rule's. Rows of the reference on the order of work, section 6.
REASONS = {
    "clean-out-before-tapping": Reason(
        title="Clean out before tapping",
        because="The tap runs into chips at the bottom of a blind hole and breaks.",
        severity="scrap",
        source="common practice",
    ),
    "clamped-before-the-cut": Reason(
        title="Clamped before the cut",
        because="What is not held yet is thrown by the cutter, or moves under it.",
        severity="hazard",
        source="common practice",
    ),
    "each-cut-in-its-own-hold": Reason(
        title="Each cut in its own hold",
        because="Where the holding changes in between, the cutter meets a clamp, or nothing holds the piece.",
        severity="hazard",
        source="common practice",
    ),
    "walls-after-their-middle": Reason(
        title="Walls after the middle",
        because="A light cut along the wall needs the middle out: else it is a heavy one, and the cutter is pushed aside.",
        severity="scrap",
        source="common practice",
    ),
    "shoulder-after-its-end": Reason(
        title="A shoulder after its end",
        because="Its width is taken from an end that still moves.",
        severity="scrap",
        source="common practice",
    ),
    "drilled-before-its-spot-goes": Reason(
        title="Drilled before its spot goes",
        because="The slot takes the spot away, and the drill then begins on a plain floor and wanders.",
        severity="scrap",
        source="common practice",
    ),
    "holes-before-their-screws": Reason(
        title="Holes before their screws",
        because="The screws that hold it go through these holes.",
        severity="rework",
        source="common practice",
    ),
    "zero-before-its-cut": Reason(
        title="Zero before its cut",
        because="The dials tell no place without a zero.",
        severity="scrap",
        source="common practice",
    ),
    "heavy-cut-before-the-holes": Reason(
        title="Heavy cuts before holes",
        because="No heavy cut passes a finished hole or thread, and its chips fall into none.",
        severity="habit",
        source="common practice",
    ),
    "chamfer-before-the-reamer": Reason(
        title="Chamfer before the reamer",
        because="The reamer takes the burr of the chamfer off inside the hole.",
        severity="habit",
        source="common practice",
    ),
}
