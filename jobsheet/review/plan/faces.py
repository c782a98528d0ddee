"""The state of each face of the stock before every step, and which faces a step measures from.

A face is raw while it waits for its first cut, machined after it, and as bought where no step of the
plan makes it: then the plan says that it stays as it is. Of as-bought faces the same holds as of
machined ones. A saw leaves a raw face.

Everything is worked out once a job, from what the kinds say they sweep
(`stages.course`: places only, no solids).
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from jobsheet.holdings.placed import in_jaws
from jobsheet.model.figure import Figures
from jobsheet.model.identity import by_identity
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.lying import OPPOSITE, Lying
from jobsheet.model.setting import Setting
from jobsheet.model.shape import Edge, Slab
from jobsheet.operations.registry import roles
from jobsheet.operations.roles import Roles
from jobsheet.reckoning.reckoner import Outcome, Reckoned
from jobsheet.reckoning.skin import is_untrue
from jobsheet.review.plan.held import does
from jobsheet.review.rule import View
from jobsheet.stages.course import NEAR, Cut, course_of

RAW, AS_BOUGHT, MACHINED = "raw", "as bought", "machined"
_SIDES = {"left": "left", "right": "right", "front": "near", "rear": "far"}
#: Which two of the three sizes of the stock span a face: along is x, y or z of the drawing.
_AXIS = {"left": 0, "right": 0, "front": 1, "rear": 1, "top": 2, "bottom": 2}


class Step(Struct, frozen=True, kw_only=True):
    """One step in cutting order with all that rules ask of it. `makes` are
    faces that it cuts over in full.
    """

    index: int
    set_up: SetUp
    operation: Operation
    cut: Cut
    setting: Setting
    outcome: Outcome
    makes: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """Its key."""
        return self.operation.key

    @property
    def number(self) -> int:
        """Its number on paper."""
        return self.operation.number

    @property
    def kind(self) -> str:
        """The kind's name."""
        return self.operation.kind

    @property
    def roles(self) -> Roles:
        """What it is, whatever its kind is called."""
        return roles(self.operation)

    @property
    def fields(self) -> Any:
        """What is typed."""
        return self.operation.fields

    @property
    def figures(self) -> Figures | None:
        """What was reckoned."""
        return self.outcome.figures

    @property
    def lie(self) -> Lying:
        """How the work lies, before the step."""
        return self.cut.before

    @property
    def cuts(self) -> bool:
        """Whether it takes metal away at the machine."""
        return bool(self.cut.shapes) and self.roles.beside != "saw"

    def figure(self, name: str) -> float | None:
        """A figure in SI, or None."""
        return self.figures.value(name) if self.figures is not None else None


class Plan(Struct, frozen=True):
    """All steps of a job, and for each face the steps that cut it."""

    job: Job
    steps: tuple[Step, ...]
    made: dict[str, tuple[int, ...]]

    def state(self, face: str, index: int) -> str:
        """What a face is before the step of that index."""
        cut = self.made.get(face, ())
        if any(one < index for one in cut):
            return MACHINED
        if not cut or face in self.job.stock.stays:
            return AS_BOUGHT
        return RAW

    def raw(self, face: str, index: int) -> bool:
        """Whether a face still waits for its first cut."""
        return self.state(face, index) == RAW

    def untrue(self, face: str, index: int) -> bool:
        """Whether a face is raw, or is never cut and has the skin of the stock: nothing lies flat on it."""
        state = self.state(face, index)
        if state != AS_BOUGHT or face in self.job.stock.stays:
            return state == RAW
        return is_untrue(self.job.stock, face)

    def first_cut(self, face: str) -> Step | None:
        """The step that makes it, or None."""
        cut = self.made.get(face, ())
        return self.steps[cut[0]] if cut else None

    def of(self, set_up: str) -> tuple[Step, ...]:
        """The steps of a set-up."""
        return tuple(step for step in self.steps if step.set_up.key == set_up)

    def made_later(self, step: Step) -> Step | None:
        """The last step that cuts a face that this one makes once more; None where this one is the last."""
        later = [other for other in self.steps[step.index + 1 :] if set(other.makes) & set(step.makes)]
        return later[-1] if later else None

    def groups(self) -> Iterator[tuple[SetUp, tuple[Step, ...]]]:
        """Every set-up that has steps, with them."""
        for set_up in self.job.set_ups:
            if set_up.operations:
                yield set_up, self.of(set_up.key)

    def named(self, face: str) -> str:
        """A face in words, with its datum letter where it has one: `datum C, the left face`."""
        letter = next((letter for letter, of in self.job.datums if of == face), "")
        return f"datum {letter}, the {face} face" if letter else f"the {face} face"

    def subject(self, face: str) -> str:
        """The same before a verb: the words behind a letter stand between commas."""
        named = self.named(face)
        return f"{named}," if ", " in named else named

    def area(self, face: str) -> float:
        """How large a face of the stock is [m²]."""
        size = self.job.stock.sizes
        one, two = (size[axis] for axis in range(3) if axis != _AXIS[face])
        return one * two


def plan_of(view: View) -> Plan:
    """The plan of a view, made once a job."""
    return _plan(view.reckoned)


@by_identity(8)
def _plan(reckoned: Reckoned) -> Plan:
    job = reckoned.job
    course = course_of(job, reckoned.settings)
    steps: list[Step] = []
    made: dict[str, list[int]] = {}
    for index, ((set_up, operation), cut) in enumerate(zip(job.operations(), course.cuts, strict=True)):
        makes = _makes(operation, cut)
        for face in makes:
            made.setdefault(face, []).append(index)
        steps.append(
            Step(
                index=index, set_up=set_up, operation=operation, cut=cut, makes=makes,
                setting=reckoned.settings[operation.key], outcome=reckoned.operations[operation.key],
            )
        )  # fmt: skip
    return Plan(job, tuple(steps), {face: tuple(indexes) for face, indexes in made.items()})


def _makes(operation: Operation, cut: Cut) -> tuple[str, ...]:
    if roles(operation).beside == "saw":
        return ()
    found = []
    for sized in cut.shapes:
        shape = sized.shape
        if isinstance(shape, Slab):
            found.append(cut.before.up)
        elif isinstance(shape, Edge) and shape.depth >= cut.before.size[2] - NEAR:
            found.append(getattr(cut.before, _SIDES[shape.side]))
    return tuple(dict.fromkeys(found))


# --- what a step measures from ---


def in_vice(set_up: SetUp, lie: Lying) -> bool:
    """Whether the plan says that a vice holds the work: where nothing is said of
    it, its faces are not asked about.
    """
    return in_jaws(set_up, lie)


def positions(fields: object) -> bool:
    """Whether a step goes to places counted from the zero."""
    return any(getattr(fields, name, None) for name in ("at", "centre", "ends", "start", "path"))


def finds_zero(step: Step) -> bool:
    """Whether it finds the zero: it says so, or an edge finder is in the spindle."""
    cutter = getattr(step.fields, "cutter", None)
    finder = step.roles.beside == "bench" and cutter is not None and cutter.kind == "edge finder"
    return finder or does(step.operation, "find zero")


def trams(step: Step) -> bool:
    """Whether a step checks or mends how the head stands."""
    return step.roles.beside == "tram" or does(step.operation, "check head")


def zero_faces(step: Step) -> tuple[str, str]:
    """The faces of the stock that x and y count from, as the work lies at this step."""
    zero, lie = step.set_up.zero, step.lie
    return (
        lie.right if zero.x_from == "right" else lie.left,
        lie.far if zero.y_from == "rear" else lie.near,
    )


def zero_found(plan: Plan, step: Step) -> Step:
    """The step by which the zero was found for this one: the last that finds
    it before, else the step itself.
    """
    finder = _finders(plan).get(step.set_up.key, ())
    before = bisect_left(finder, step.index)
    return plan.steps[finder[before - 1]] if before else step


@by_identity(8)
def _finders(plan: Plan) -> dict[str, list[int]]:
    """The steps that find a zero, by their set-up."""
    finders: dict[str, list[int]] = {}
    for step in plan.steps:
        if finds_zero(step):
            finders.setdefault(step.set_up.key, []).append(step.index)
    return finders


def measured_across(step: Step) -> tuple[str, float] | None:
    """The face from which a step's size is measured across the work, and what is left
    there [m]; None where it is not so.

    A size that is nearer to what comes off than to what is left is a depth or a width, not a size across.
    """
    size = getattr(step.fields, "measure", None)
    if size is None or not step.cut.shapes:
        return None
    shape = step.cut.shapes[0].shape
    along, across, high = step.lie.size
    if isinstance(shape, Slab):
        face, left, off = step.lie.down, high - shape.depth, shape.depth
    elif isinstance(shape, Edge):
        side = getattr(step.lie, _SIDES[shape.side])
        face, off = OPPOSITE[side], shape.width
        left = (along if shape.side in ("left", "right") else across) - off
        if abs(size.nominal - left) > abs(size.nominal - shape.depth) and shape.depth < high - NEAR:
            return None
    else:
        return None
    return (face, left) if abs(size.nominal - left) < abs(size.nominal - off) else None


def width_of_limits(step: Step) -> float | None:
    """How wide the limits of a step's size are [m]; None where it has none."""
    size = getattr(step.fields, "measure", None)
    return size.high - size.low if size is not None and size.high > size.low else None
