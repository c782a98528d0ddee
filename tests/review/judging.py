"""What a fix did to a plan, judged without any code that tries fixes: remarks,
limits, problems and the finished part.
"""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import Any, NamedTuple

import yaml

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.review.engine import reviewed
from jobsheet.review.plan.solid_facts import facts_of
from jobsheet.stages.course import course_of
from jobsheet.stages.solids import shared

SPOILT = Path(__file__).parent / "spoilt"
#: Rules that are about the shape of the part, or about the order from which it follows.
ABOUT_SHAPE = frozenset(
    (
        "bore-for-a-close-position", "chamfer-before-tap", "face-before-holes", "face-before-its-use", "find-the-zero-here",
        "first-cut-under-the-skin",
        "passes-reach-the-size", "ream-or-bore-a-close-hole", "reaming-allowance", "room-below-the-thread", "say-what-the-depth-means",
        "spot-angle-for-the-drill", "spot-before-drilling", "tap-drill-before-tap", "thread-height-in-bounds",
        "undersize-cutter-for-a-close-slot", "zero-on-the-datum-faces",
    )
)  # fmt: skip
BAD = {"tight": 1, "beyond": 2}
#: Facets of round shapes that are cut in another order [mm³].
SAME = 1.0


class Judged(NamedTuple):
    """A plan as it stands: every remark's place, every limit's rank, steps that
    cannot be calculated, the part.
    """

    job: Any
    reckoned: Any
    facts: Any
    remarks: Any
    places: Counter
    limits: dict
    problems: set
    part: Any


def judged(job: Any) -> Judged:
    """Reckoned anew from nothing, read with the solids."""
    reckoned = Reckoner().reckon(job)
    facts = facts_of(reckoned.job, reckoned)
    read = reviewed(job, reckoned, facts)
    remarks = [*read.open, *(one for one, _ in read.aside)]
    outcomes = reckoned.operations.items()
    return Judged(
        job, reckoned, facts, remarks, Counter(map(place, remarks)),
        {(key, limit.name): BAD.get(limit.verdict, 0) for key, outcome in outcomes for limit in outcome.limits},
        {key for key, outcome in outcomes if outcome.problem},
        shared().stages(course_of(reckoned.job, reckoned.settings))[-1].solid,
    )  # fmt: skip


def place(remark: Any) -> tuple[str, str]:
    """Rule and step."""
    return remark.rule, remark.operations[0] if remark.operations else remark.set_up


def wrong(before: Judged, after: Judged, remark: Any) -> list[str]:
    """All that is worse after a fix of that remark; nothing where it mended the plan."""
    found = []
    if after.places[place(remark)] >= before.places[place(remark)]:
        found.append("the remark is still there")
    new = [one for one in _new(before, after) if one != place(remark)]
    if new:
        found.append(f"new remarks {new}")
    steps = {key for key, _ in before.limits}
    worse = [
        one
        for one, rank in after.limits.items()
        if rank
        > (before.limits.get(one, 0) if one[0] in steps else 1)  # of an added step nothing may be beyond
    ]
    if worse:
        found.append(f"worse limits {worse}")
    if _bare(before, after):
        found.append(f"without a tool {_bare(before, after)}")
    if after.problems - before.problems:
        found.append(f"cannot be calculated {after.problems - before.problems}")
    # Cut in another order, a depth counts from another face: that is what remarks on the order are about.
    ordered = [step.key for _, step in before.job.operations()] == [
        step.key for _, step in after.job.operations()
    ]
    off = (before.part - after.part).volume() + (after.part - before.part).volume()
    if ordered and off > SAME and remark.rule not in ABOUT_SHAPE:
        found.append(f"another part by {off:.1f} mm³")
    return found


def _bare(before: Judged, after: Judged) -> set[str]:
    """Steps that have lost their tool, or are gone themselves though they took metal."""
    had = {
        step.key for _, step in before.job.operations() if getattr(step.fields, "cutter", None) is not None
    }
    air = {fact.key for fact in before.facts if fact.kind == "cuts-air"}
    has = {step.key for _, step in after.job.operations() if getattr(step.fields, "cutter", None) is not None}
    return had - has - air


def _new(before: Judged, after: Judged) -> list[tuple[str, str]]:
    """Places with more remarks than before; one that an added step takes over
    from a step of its set-up is not new.
    """
    homes = {step.key: set_up.key for set_up, step in after.job.operations()}
    old = {step.key for _, step in before.job.operations()}
    gone = Counter((rule, homes.get(key, key)) for rule, key in (before.places - after.places).elements())
    found = []
    for rule, key in (after.places - before.places).elements():
        home = (rule, homes.get(key, key))
        if key not in old and gone[home] > 0:
            gone[home] -= 1
        else:
            found.append((rule, key))
    return found


def spoilt_plans() -> list[dict[str, Any]]:
    """Every plan of the folder, in order."""
    return [
        case
        for path in sorted(SPOILT.glob("*.yaml"))
        for case in yaml.load(path.read_text(encoding="utf-8"), yaml.CBaseLoader)
    ]
