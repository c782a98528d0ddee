"""Pieces that are left on the work, or cut away from it, against the finished part: those
that no size and no hole explains.
"""

from __future__ import annotations

from collections.abc import Iterator

from jobsheet.model.finished import Feature
from jobsheet.review.plan.as_asked import AsAsked, cut_as_bought, left_raw
from jobsheet.review.plan.faces import Step
from jobsheet.review.rule import View
from jobsheet.stages.as_drawn import drawn, part_box
from jobsheet.stages.checks import Fact
from jobsheet.units.show import trimmed
from jobsheet.units.table import INCH

#: What is compared as a solid; holes are compared by their places and sizes.
SOLID = ("slot", "keyway", "pocket", "window", "step")


def large(fact: Fact, units: str) -> str:
    """How large a piece is over all: `60 × 10 × 1 mm`."""
    sides = [trimmed(one / (1e-3 if units == "mm" else INCH), 2) for one in fact.size]
    return f"{' × '.join(sides)} {units}"


def size_is_out(asked: AsAsked) -> bool:
    """Whether any size of the whole is out, or unknown because its line cannot be read:
    then every piece may come from that.
    """
    unread = any(unread.line == 0 for unread in asked.part.unread)
    faces = any(True for _ in (*left_raw(asked), *cut_as_bought(asked)))
    return unread or faces or any(asked.out(axis) for axis in range(3))


def left_in(view: View, asked: AsAsked) -> dict[int, Fact]:
    """Lines of slots, pockets and steps in which metal is left, each with its thickest piece.

    While a size of the whole is out, a piece may come from that: then only lines
    that no step can have milled.
    """
    facts: dict[int, Fact] = {}
    if any(unread.line == 0 for unread in asked.part.unread):
        return facts
    only_missing = size_is_out(asked)
    kinds = {line: feature.kind for line, feature in asked.part.features}
    faces = {line: feature.face for line, feature in asked.part.features}
    out = {step.lie.up for step in asked.plan.steps if zero_is_out(asked, step)}
    for fact in view.facts_of("left-on"):
        for line in fact.lines:
            if kinds.get(line) not in SOLID or faces[line] in out:
                continue
            if not only_missing or _never_milled(asked, kinds[line], faces[line]):
                facts.setdefault(line, fact)
    return facts


def _never_milled(asked: AsAsked, kind: str, face: str) -> bool:
    """Whether no step mills into that face, but for facing it; a step at an edge
    can be milled from the side too.
    """
    return not any(
        step.roles.mills and not step.makes and (kind == "step" or step.lie.up == face)
        for step in asked.plan.steps
    )


def milled_beside(view: View, asked: AsAsked, line: int) -> tuple[Step, ...]:
    """The steps that mill into the face of a line, but elsewhere, where nothing mills at its place."""
    face = dict(asked.part.features)[line].face
    keys = {key for fact in view.facts_of("cut-away") for key in fact.steps}
    return tuple(
        step
        for step in asked.steps(tuple(keys))
        if step.roles.mills and not step.makes and step.lie.up == face
    )


def mill(asked: AsAsked, fact: Fact) -> tuple[Step, ...]:
    """The steps of a fact that mill into a face, not over the whole of it."""
    return tuple(step for step in asked.steps(fact.steps) if step.roles.mills and not step.makes)


def cut_away(view: View, asked: AsAsked) -> Iterator[Fact]:
    """Pieces that steps cut from what the drawing keeps.

    None where the drawing lists no features, or one that is not compared: then
    nobody knows what they cut away for.
    """
    if size_is_out(asked) or not lists_all(asked):
        return
    wrong = {hole_found.feature.face for hole_found in asked.found.holes if hole_found.state != "made"}
    for fact in view.facts_of("cut-away"):
        steps = asked.steps(fact.steps)
        holes_there = wrong and all(step.roles.hole and step.lie.up in wrong for step in steps)
        if steps and not holes_there and not any(zero_is_out(asked, step) for step in steps):
            yield fact


def zero_is_out(asked: AsAsked, step: Step) -> bool:
    """Whether all holes of its set-up lie beside their places: then so does what it mills."""
    return step.set_up.key in {
        one.set_up.key
        for hole_found in asked.found.holes
        if hole_found.state == "shifted"
        for one in asked.steps(hole_found.steps)
        if all(
            other.state != "made" for other in asked.found.holes if set(other.steps) & set(hole_found.steps)
        )
    }


def lists_all(asked: AsAsked) -> bool:
    """Whether the lines of the drawing tell all that is cut into the part."""
    features = [feature for _, feature in asked.part.features if feature.kind != "chamfer"]
    return bool(features) and not asked.part.unread and not any(True for _ in not_compared(asked))


def not_compared(asked: AsAsked) -> Iterator[tuple[int, Feature, str]]:
    """Lines that can be read and are not compared, each with the reason."""
    course_end = asked.plan.steps[-1].cut.after.box
    for one in drawn(asked.part, part_box(course_end, asked.part)):
        if one.unclear and one.feature.kind != "chamfer":
            yield one.line, one.feature, one.unclear
