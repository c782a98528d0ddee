"""What the steps leave against what the part shall be, for the rules: each fault once, under the cause that explains it.

A face that is never cut explains a size that is too long; a size that is out explains depths and places that count over it.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from jobsheet.finished.finished_part import FinishedPart, finished_part
from jobsheet.finished.settled import AXES, AXIS, ENDS
from jobsheet.finished.told_back import short_of
from jobsheet.model.finished import SIZES, Feature
from jobsheet.model.identity import by_identity
from jobsheet.model.lying import OPPOSITE
from jobsheet.model.quantity import Size
from jobsheet.reckoning.reckoner import Reckoned
from jobsheet.reckoning.skin import is_untrue
from jobsheet.review.plan.faces import Plan, Step, plan_of
from jobsheet.review.plan.held import holding_roles
from jobsheet.review.plan.passes import passes_out
from jobsheet.review.rule import View
from jobsheet.stages.against_part import AGREES, Against, FaceFound, HoleFound, SizeFound, against
from jobsheet.stages.course import course_of

#: Stock that is longer by no more than this is often cleaned up at one end
#: alone [m] (common practice, no source).
ONE_END = 3e-3
#: A size planned within this share of its limits' width from one of them stands at their
#: edge (common practice, no source).
EDGE = 0.05
#: How deep a hole is: what a face that is out explains.
DEPTHS = ("too shallow", "too deep", "through the other side", "not through", "thread too shallow", "mouth too shallow", "mouth too deep")  # fmt: skip


class AsAsked(Struct, frozen=True):
    """A plan that cuts, its finished part, and how they agree."""

    plan: Plan
    part: FinishedPart
    found: Against

    def face(self, name: str) -> FaceFound:
        """What is found of a face."""
        return next(face_found for face_found in self.found.faces if face_found.face == name)

    def as_bought(self, face: str) -> bool:
        """Whether the drawing leaves a face as it is bought."""
        return self.part.shape is not None and face in self.part.shape.as_bought

    def size(self, axis: int) -> SizeFound | None:
        """What is found of the size along an axis; None where none is said."""
        return next((size_found for size_found in self.found.sizes if size_found.name == SIZES[axis]), None)

    def out(self, axis: int) -> float:
        """By how much a size is out [m]; nought where it is to size or not said."""
        size_found = self.size(axis)
        return size_found.out if size_found is not None else 0.0

    def steps(self, keys: tuple[str, ...]) -> tuple[Step, ...]:
        """Steps by their keys, in order."""
        return tuple(step for step in self.plan.steps if step.key in keys)


class Group(Struct, frozen=True, kw_only=True):
    """All places of one line at which the same is wrong, done by the same steps."""

    line: int
    feature: Feature
    places: tuple[HoleFound, ...]

    @property
    def first(self) -> HoleFound:
        """The first of them: the others are like it."""
        return self.places[0]

    @property
    def where(self) -> str:
        """Which places: `(2 of its 4 places)`, or nothing where it is all of them."""
        if len(self.places) == self.feature.count:
            return ""
        if len(self.places) == 1:
            return f" (place {self.first.place})"
        return f" ({len(self.places)} of its {self.feature.count} places)"


def as_asked(view: View) -> AsAsked | None:
    """How a plan agrees with its drawing; None where the drawing is not said, nothing is cut yet, or work leans."""
    if not view.job.finished:
        return None
    return _compared(view.reckoned)


@by_identity(8)
def _compared(reckoned: Reckoned) -> AsAsked | None:
    plan = plan_of(View(reckoned.job, reckoned))
    if not any(step.cuts for step in plan.steps) or leaning(plan):
        return None
    part = finished_part(reckoned.job)
    return AsAsked(plan, part, against(course_of(reckoned.job, reckoned.settings), part))


def leaning(plan: Plan) -> Step | None:
    """The first step that cuts work that leans: where it cuts is not followed, so nothing is known of what it leaves."""
    return next((step for step in plan.steps if step.cuts and holding_roles(step.set_up).tilted), None)


# --- faces and sizes ---


def left_raw(asked: AsAsked) -> Iterator[FaceFound]:
    """Faces that are never cut, come as nobody leaves them, and are not said to stay so; not an end that a shop leaves (`_may_stay`)."""
    for face_found in asked.found.faces:
        raw = face_found.state == "never cut" and is_untrue(asked.plan.job.stock, face_found.face)
        if raw and not _may_stay(asked, face_found.face):
            yield face_found


def _may_stay(asked: AsAsked, face: str) -> bool:
    """Whether a raw face is left where only the one opposite is cleaned up to size: nothing is asked of it but the size, which is reached."""
    axis, other, stock = AXIS[face], OPPOSITE[face], asked.plan.job.stock
    shape = asked.part.shape
    size = shape.sizes[axis] if shape is not None else None
    if shape is None or size is None or asked.out(axis) or not asked.face(other).steps:
        return False
    asks = {form.face for form in shape.forms} | {name for name, _ in shape.finishes}
    return face not in asks and is_untrue(stock, other) and stock.sizes[axis] - size.nominal <= ONE_END + 1e-9


def cut_as_bought(asked: AsAsked) -> Iterator[FaceFound]:
    """Faces that the drawing leaves as they are bought, and a step cuts."""
    kept = asked.plan.job.stock.stays
    for face_found in asked.found.faces:
        if (asked.as_bought(face_found.face) or face_found.face in kept) and face_found.steps:
            yield face_found


def sizes_out(asked: AsAsked) -> Iterator[tuple[int, SizeFound]]:
    """Sizes that the steps do not reach, each with its axis; not those that a raw face or the passes of a step explain."""
    explained = {AXIS[face_found.face] for face_found in (*left_raw(asked), *cut_as_bought(asked))}
    explained |= {AXIS[face] for step, *_ in passes_out(asked.plan) for face in step.makes}
    for axis in range(3):
        size_found = asked.size(axis)
        if size_found is not None and size_found.out and axis not in explained:
            yield axis, size_found


def at_the_edge(asked: AsAsked) -> Iterator[tuple[int, SizeFound]]:
    """Sizes that the steps bring to the very edge of their limits, though not to their nominal: nothing is left for dial and hand."""
    for axis in range(3):
        size_found = asked.size(axis)
        size = asked.part.shape.sizes[axis] if asked.part.shape is not None else None
        limits = asked.part.limits(size) if size is not None else None
        if size_found is None or size is None or limits is None or size_found.out or not size_found.steps:
            continue
        room = min(size_found.left - limits[0], limits[1] - size_found.left)
        if abs(size_found.left - size.nominal) > AGREES and room < EDGE * (limits[1] - limits[0]):
            yield axis, size_found


# --- holes ---


def holes(asked: AsAsked, *states: str) -> Iterator[Group]:
    """What is wrong with holes in one of these ways, all places of a line that are alike together."""
    groups: dict[tuple[int, str, tuple[str, ...]], list[HoleFound]] = {}
    for hole_found in asked.found.holes:
        if hole_found.state in states and not _explained(asked, hole_found):
            groups.setdefault((hole_found.line, hole_found.state, hole_found.steps), []).append(hole_found)
    for (line, _, _), places in groups.items():
        yield Group(line=line, feature=places[0].feature, places=tuple(places))


def all_shifted(asked: AsAsked) -> dict[str, tuple[Group, ...]]:
    """The set-ups in which holes of more than one line lie beside their places by the same: that is the zero, not the holes."""
    by_set_up: dict[str, list[Group]] = {}
    for group in holes(asked, "shifted"):
        steps = asked.steps(group.first.steps)
        if steps:
            by_set_up.setdefault(steps[0].set_up.key, []).append(group)
    return {
        key: tuple(groups)
        for key, groups in by_set_up.items()
        if len({group.line for group in groups}) > 1
        and max(hole_found.out for group in groups for hole_found in group.places)
        - min(hole_found.out for group in groups for hole_found in group.places)
        < AGREES
    }


def _explained(asked: AsAsked, hole_found: HoleFound) -> bool:
    """Whether a size that is out says it already: of the face the hole is cut into, or of one that its place counts over."""
    feature = hole_found.feature
    wrong_face = {AXIS[face_found.face] for face_found in (*left_raw(asked), *cut_as_bought(asked))}
    if hole_found.state in DEPTHS:
        return bool(asked.out(AXIS[feature.face])) or AXIS[feature.face] in wrong_face
    if hole_found.state == "missing":  # a tap without its hole: said of the tap
        return any(step.roles.hole == "tap" for step in asked.steps(hole_found.steps))
    if hole_found.state == "shifted":
        return not wrong_face.isdisjoint(AXES[feature.face]) or any(
            asked.out(axis) and abs(hole_found.out - abs(_off_nominal(asked, axis))) < 2 * AGREES
            for axis in AXES[feature.face]
        )
    return False


def _off_nominal(asked: AsAsked, axis: int) -> float:
    size = asked.part.shape.sizes[axis] if asked.part.shape is not None else None
    size_found = asked.size(axis)
    return size_found.left - size.nominal if size is not None and size_found is not None else 0.0


def misplaced(view: View) -> frozenset[str]:
    """The steps that work beside the place of a hole that the drawing has, and those that work at the place: said of that hole."""
    asked = as_asked(view)
    if asked is None:
        return frozenset()
    wrong = [hole_found for group in holes(asked, "shifted") for hole_found in group.places]
    return frozenset(key for hole_found in wrong for key in (*hole_found.steps, *hole_found.here))


# --- in words ---


def called(line: int, feature: Feature) -> str:
    """A line of the drawing in a sentence: `4 x M8 (line 2)`."""
    return f"{short_of(feature)} (line {line})"


def at_face(axis: int) -> str:
    """The two faces across a size in a sentence."""
    return " and ".join(f"the {face}" for face in ENDS[axis])


def as_typed(size: Size) -> str:
    """A size as it is typed."""
    return size.text.strip()
