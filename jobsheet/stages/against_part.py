"""What the steps leave against what the part shall be, by places and sizes alone: faces cut to size,
holes with their depth and thread.

No modeller is asked: this goes with the rules that run at once. Slots, pockets and steps are
compared as solids (`part_solid.py`).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from msgspec import Struct

from jobsheet.finished.finished_part import FinishedPart
from jobsheet.finished.settled import AXES, AXIS, ENDS
from jobsheet.model.finished import Feature
from jobsheet.model.lying import Box
from jobsheet.model.quantity import Size
from jobsheet.model.shape import Hole
from jobsheet.model.stock import FACES
from jobsheet.stages.as_drawn import CORE, part_box, places_on
from jobsheet.stages.course import Course, Cut, Sized, is_through

#: What is nearer than this agrees [m].
AGREES = 0.01e-3
#: A hole so near to a place is that hole set wrong, not another: its own size, at least so
#: far [m] (common practice, no source).
NEAR = 5e-3


class FaceFound(Struct, frozen=True, kw_only=True):
    """One face: `as bought`, `never cut` (the surface of the stock stays), `cut`, or `not said`; the
    steps that cut it, in their order.
    """

    face: str
    state: str
    steps: tuple[str, ...] = ()


class SizeFound(Struct, frozen=True, kw_only=True):
    """One size of the whole: `to size`, `too long` or `cut below`, by how much beyond its
    limit [m]; what is left, and its last steps.

    Without any limits of its own or general ones it must agree with its nominal.
    """

    name: str
    state: str
    left: float
    out: float
    steps: tuple[str, ...] = ()


class HoleFound(Struct, frozen=True, kw_only=True):
    """One place of a hole: what is wrong there, and by how much [m].

    `made`, `missing` (`steps` are then those that work there all the same, such as its tap),
    `other size` (found and asked diameter differ by `out`), `too shallow`, `too deep`,
    `through the other side`, `not through`, `no thread`, `thread too shallow`, `no mouth` (counterbore
    or countersink missing), `mouth too shallow`, `mouth too deep`, `mouth of another size`, `shifted`
    (by `out` from its place). `place` counts from 1.
    """

    line: int
    feature: Feature
    place: int
    state: str
    out: float = 0.0
    found: float = 0.0
    steps: tuple[str, ...] = ()
    #: The steps that work at the very place, where `steps` are those beside it.
    here: tuple[str, ...] = ()


class Bored(Struct, frozen=True, kw_only=True):
    """A round cut in the drawing's axes: where its axis is, from where to where it
    goes [m]; `cone` has no straight part.

    `floor` is how far below the top of the work it begins: its depth counts from there.
    """

    key: str
    axis: int
    at: tuple[float, float]
    low: float
    high: float
    diameter: float
    threaded: bool
    cone: bool
    floor: float = 0.0


class Against(Struct, frozen=True, kw_only=True):
    """All of it: faces, sizes, holes, and the features that are asked of the solids or
    have no place, by their line and why.
    """

    faces: tuple[FaceFound, ...]
    sizes: tuple[SizeFound, ...]
    holes: tuple[HoleFound, ...]
    others: tuple[tuple[int, str], ...]


def against(course: Course, part: FinishedPart) -> Against:
    """What a course of steps leaves against a finished part."""
    final = course.cuts[-1].after.box if course.cuts else course.stock
    box = part_box(final, part)
    bored = tuple(_bored(course))
    holes: list[HoleFound] = []
    others: list[tuple[int, str]] = []
    for line, feature in part.features:
        if feature.what not in ("hole", "tapped hole"):
            others.append((line, "asked of the solids"))
        elif not (points := places_on(feature, box)):
            others.append((line, "its place is not said"))
        else:
            for number, point in enumerate(points, 1):
                holes += _hole(part, line, feature, number, point, box, bored)
    return Against(
        faces=_faces(course, part),
        sizes=_sizes(course, part, final),
        holes=tuple(holes),
        others=tuple(others),
    )


# --- faces and sizes ---


def face_steps(course: Course, face: str) -> tuple[str, ...]:
    """The steps that move a face inward over the whole of it, in their order."""
    axis = AXIS[face]
    end = 1 if face == ENDS[axis][1] else 0
    return tuple(
        cut.key for cut in course.cuts if abs(cut.before.box[axis][end] - cut.after.box[axis][end]) > 1e-9
    )


def _faces(course: Course, part: FinishedPart) -> tuple[FaceFound, ...]:
    said = part.shape.sizes if part.shape is not None else (None, None, None)
    faces = []
    for face in FACES:
        steps = face_steps(course, face)
        kept = part.shape is not None and face in part.shape.as_bought
        if kept and not steps:
            state = "as bought"
        elif steps:
            state = "cut"
        else:
            state = "never cut" if said[AXIS[face]] is not None else "not said"
        faces.append(FaceFound(face=face, state=state, steps=steps))
    return tuple(faces)


def _sizes(course: Course, part: FinishedPart, final: Box) -> tuple[SizeFound, ...]:
    if part.shape is None:
        return ()
    sizes = []
    for axis, (name, size) in enumerate(zip(("length", "width", "height"), part.shape.sizes, strict=True)):
        if size is None:
            continue
        left = final[axis][1] - final[axis][0]
        out = _beyond(part, size, left)
        keys = {key for face in ENDS[axis] for key in face_steps(course, face)}
        steps = tuple(cut.key for cut in course.cuts if cut.key in keys)
        state = "to size" if out == 0 else "too long" if out > 0 else "cut below"
        sizes.append(SizeFound(name=name, state=state, left=left, out=out, steps=steps))
    return tuple(sizes)


def _beyond(part: FinishedPart, size: Size, value: float) -> float:
    """How far a value lies beyond the limits of a size, or off its nominal where it has none [m]; below
    nought on the low side, nought inside.
    """
    limits = part.limits(size)
    if limits is None:
        off = value - size.nominal
        return off if abs(off) > AGREES + 1e-9 else 0.0
    low, high = limits
    if value > high + 1e-9:
        return value - high
    return value - low if value < low - 1e-9 else 0.0


# --- holes ---


def _bored(course: Course) -> Iterator[Bored]:
    """Every round cut of the course."""
    for cut in course.cuts:
        for sized in cut.shapes:
            if isinstance(sized.shape, Hole) and sized.corners:
                yield _round_cut(cut, sized.shape, sized)


def _round_cut(cut: Cut, shape: Hole, sized: Sized) -> Bored:
    lie = cut.before
    point = lie.in_stock(*sized.corners[0])
    through = is_through(sized, lie.size[2])
    depth = sized.top + sized.depth if sized.depth is not None else None
    axis = AXIS[lie.up]
    low, high = lie.box[axis]
    if depth is not None and not through:
        low, high = (high - depth, high) if lie.up == ENDS[axis][1] else (low, low + depth)
    one, two = AXES[lie.up]
    return Bored(
        key=cut.key, axis=axis, at=(point[one], point[two]), low=low, high=high, diameter=shape.diameter,
        threaded=shape.threaded, cone=sized.depth == 0, floor=sized.top,
    )  # fmt: skip


def _hole(
    part: FinishedPart, line: int, feature: Feature, number: int, point: tuple[float, float, float],
    box: Box, bored: tuple[Bored, ...],
) -> list[HoleFound]:  # fmt: skip
    """What is found at one place."""
    one, two = AXES[feature.face]
    at = (point[one], point[two])
    same = tuple(cut for cut in bored if cut.axis == AXIS[feature.face])
    here = tuple(cut for cut in same if math.dist(cut.at, at) <= AGREES)
    asked = _Asked(part, line, feature, number, box, here)
    if not asked.straight:
        return [asked.not_here(at, same)]
    return [*asked.itself(), *asked.thread(), *asked.mouth()] or [asked.found("made")]


def _own_size(feature: Feature) -> float:
    """The diameter that is bored: of a thread its core [m]."""
    if feature.thread is not None:
        return feature.thread.major - CORE * feature.thread.pitch
    return feature.size.nominal if feature.size is not None else 0.0


class _Asked:
    """One place of a hole and all that is bored there: each question gives what is wrong, or nothing."""

    def __init__(
        self, part: FinishedPart, line: int, feature: Feature, number: int, box: Box, here: tuple[Bored, ...]
    ) -> None:
        self.part, self.line, self.feature, self.number, self.here = part, line, feature, number, here
        self.upper = feature.face == ENDS[AXIS[feature.face]][1]
        self.low, self.high = box[AXIS[feature.face]]
        self.straight = tuple(cut for cut in here if not cut.cone and not cut.threaded)

    def found(
        self, state: str, out: float = 0.0, value: float = 0.0, cuts: Sequence[Bored] | None = None
    ) -> HoleFound:
        """What is said of the place, with the steps that did it."""
        steps = tuple(dict.fromkeys(cut.key for cut in (self.here if cuts is None else cuts)))
        return HoleFound(
            line=self.line,
            feature=self.feature,
            place=self.number,
            state=state,
            out=out,
            found=value,
            steps=steps,
            here=tuple(dict.fromkeys(cut.key for cut in self.here)),
        )

    def not_here(self, at: tuple[float, float], same: Sequence[Bored]) -> HoleFound:
        """Nothing is bored at a place: the nearest hole of its size is this
        one set wrong, or it is missing.
        """
        size = _own_size(self.feature)
        alike = [cut for cut in same if not cut.cone and not cut.threaded]
        alike = [cut for cut in alike if abs(cut.diameter - size) < 0.25 * size]
        near = [cut for cut in alike if math.dist(cut.at, at) < max(NEAR, size)]
        if not near:
            return self.found("missing")
        nearest = min(near, key=lambda cut: math.dist(cut.at, at))
        return self.found(
            "shifted", math.dist(nearest.at, at), cuts=[cut for cut in near if cut.at == nearest.at]
        )

    def deep(self, cut: Bored) -> float:
        """How deep a cut goes below the finished face, or the floor that it begins in [m]."""
        return (self.high - cut.low if self.upper else cut.high - self.low) - cut.floor

    def through(self, cuts: Sequence[Bored]) -> bool:
        """Whether these together go through the finished part, from one side or from both."""
        at = self.low
        for cut in sorted(cuts, key=lambda bored: bored.low):
            if cut.low <= at + AGREES:
                at = max(at, cut.high)
        return at >= self.high - AGREES

    def itself(self) -> list[HoleFound]:
        """The hole itself: its size and its depth."""
        mouth = self.feature.mouth
        above = mouth.depth.nominal if mouth is not None and mouth.depth is not None else 0.0
        below = [cut for cut in self.straight if self.deep(cut) > above + AGREES or self.through([cut])]
        if not below:
            deepest = max(self.deep(cut) for cut in self.straight)
            return [self.found("not through" if self.feature.through else "too shallow", value=deepest)]
        own = [cut for cut in below if not self._is_mouth(cut)]
        below = own or below  # a mouth that is too deep is said of the mouth
        largest = max(below, key=lambda cut: cut.diameter)
        if out := self._other_size(largest.diameter):
            return [self.found("other size", out, largest.diameter, [largest])]
        return self._depth([cut for cut in below if cut.diameter >= largest.diameter - AGREES])

    def _is_mouth(self, cut: Bored) -> bool:
        """Whether a cut is the counterbore, by its diameter."""
        mouth = self.feature.mouth
        return mouth is not None and mouth.angle is None and not _beyond(self.part, mouth.size, cut.diameter)

    def _other_size(self, diameter: float) -> float:
        """How far a diameter is from what is asked [m]; below a thread all between its core and
        its flanks' middle is a hole for it.
        """
        thread, size = self.feature.thread, self.feature.size
        if thread is None:
            return _beyond(self.part, size, diameter) if size is not None else 0.0
        core = _own_size(self.feature)
        return 0.0 if core - AGREES <= diameter < thread.major else diameter - core

    def _depth(self, full: Sequence[Bored]) -> list[HoleFound]:
        """How deep the hole of full diameter is."""
        through = self.through(full)
        deep = max(self.deep(cut) for cut in full)
        if self.feature.through:
            return [] if through else [self.found("not through", value=deep, cuts=full)]
        if through:
            return [self.found("through the other side", value=deep, cuts=full)]
        asked = self.feature.hole_depth or self.feature.depth
        out = _beyond(self.part, asked, deep) if asked is not None else 0.0
        if out > 0 and self.feature.thread is not None and self.feature.hole_depth is None:
            return []  # the drawing leaves open how much deeper than its thread it is
        return [self.found("too shallow" if out < 0 else "too deep", out, deep, full)] if out else []

    def thread(self) -> list[HoleFound]:
        """Whether the thread is cut, and as deep as it is asked."""
        thread = self.feature.thread
        if thread is None:
            return []
        cuts = [cut for cut in self.here if cut.threaded]
        alike = [cut for cut in cuts if abs(cut.diameter - thread.major) <= AGREES]
        if not alike:
            return [self.found("no thread", cuts=cuts)]
        deep = max(self.deep(cut) for cut in alike)
        if self.feature.through:
            return [] if self.through(alike) else [self.found("thread too shallow", value=deep, cuts=alike)]
        out = _beyond(self.part, self.feature.depth, deep) if self.feature.depth is not None else 0.0
        return [self.found("thread too shallow", out, deep, alike)] if out < 0 else []

    def mouth(self) -> list[HoleFound]:
        """The counterbore or the cone: there, as wide and as deep as asked."""
        mouth = self.feature.mouth
        if mouth is None or (mouth.what == "spot face" and mouth.depth is None):
            return []
        own = _own_size(self.feature)
        cuts = [cut for cut in self.here if cut.cone == (mouth.angle is not None) and not cut.threaded]
        cuts = [cut for cut in cuts if cut.diameter > own + AGREES]
        if not cuts:
            return [self.found("no mouth", cuts=())]
        widest = max(cuts, key=lambda cut: cut.diameter)
        if out := _beyond(self.part, mouth.size, widest.diameter):
            return [self.found("mouth of another size", out, widest.diameter, [widest])]
        deep = self.deep(widest)
        out = _beyond(self.part, mouth.depth, deep) if mouth.depth is not None else 0.0
        return (
            [self.found("mouth too shallow" if out < 0 else "mouth too deep", out, deep, [widest])]
            if out
            else []
        )
