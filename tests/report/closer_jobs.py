"""A plate of slots that stand close, 100 by 60: as people write it, with more or less at its ends."""

from __future__ import annotations

from jobsheet.stages.course import course_of
from tests.report.plans import drill, job
from tests.report.seen_from_above import plan_of as plan_for

STOCK = ("100", "60", "12")


def slot(number: int, y: float, *, start: float = 30, end: float = 50, cutter: str = "slot drill 3") -> str:
    """A closed slot along x, 3 deep."""
    return (
        f"      - key: slot-{number}\n        number: {number}\n        kind: slot\n        cutter: {cutter}\n        ends:\n"
        f"          - [{start}, {y}]\n          - [{end}, {y}]\n        depth: 3\n        layer: 1\n"
        "        open ends: closed\n        feed: 60 mm/min\n        spindle: 2000 rpm\n"
    )


def side(number: int, where: str, *, width: float, depth: float) -> str:
    """Metal off one side."""
    return (
        f"      - key: side-{number}\n        number: {number}\n        kind: side-mill\n        cutter: end mill 20, 4 teeth\n"
        f"        way: conventional\n        side: {where}\n        width: {width}\n        depth: {depth}\n        layer: 2\n"
        "        feed: 60 mm/min\n        spindle: 300 rpm\n"
    )


def found(number: int) -> str:
    """The zero is found on the work as it is now."""
    return (
        f"      - key: found-{number}\n        number: {number}\n        kind: pick-up-edge\n"
        "        cutter: edge finder, 0.200 in tip\n        edges: A and B\n        spindle: 800 rpm\n"
    )


def comb(*, ends: str = "", holes: bool = False):
    """Two slots 3 wide and 4.5 apart; `ends`: the left one `off` by 2 before the zero is found, or a `step` at
    the right; with `holes` three of 2.5 that crowd far from the slots.
    """
    before = {
        "off": [side(10, "left", width=2, depth=12), found(15)],
        "step": [side(10, "right", width=20, depth=4)],
        "": [],
    }[ends]
    drilled = [drill(40, [(80, 40), (80, 43), (80, 46)], cutter="drill 2.5")] if holes else []
    return job([*before, slot(20, 20), slot(30, 24.5), *drilled], stock=STOCK)


def plan_of(**how):
    return plan_for(comb(**how))


def cuts_of(plan):
    """The cuts of its only set-up."""
    return course_of(plan.job, plan.reckoned.settings).cuts
