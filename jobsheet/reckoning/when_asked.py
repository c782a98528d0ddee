"""One step as it stands in its set-up, reckoned when somebody asks for it: an
edit pays for what is looked at.

A face that goes deeper lays every step behind it lower. Each of them has another setting then, and some
have other figures; but nobody looks at six hundred rows at once. Review, paper and answers ask for all
of them, later, and find the same.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import TypeVar

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.errors import JobsheetError
from jobsheet.limits.register import READS as LIMITS_READ
from jobsheet.limits.register import Asked, asked_again, governing, in_order
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.identity import while_it_lives
from jobsheet.model.job import Operation
from jobsheet.model.profile import Profile
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.operations.kind import Dial
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.by_value import known as reckoned_once

#: What a step finds of its own: the hole at its places or None, what the steps before it took off the top,
#: what came off since its cutter was touched there, and the skin that it is the first to cut [m].
Around = tuple[float | None, float, float, float]
Value = TypeVar("Value")


class Outcome(Struct, frozen=True, kw_only=True):
    """What is known of one operation. Where it cannot be reckoned, `problem` says why, and the rest is empty."""

    key: str
    title: str
    figures: Figures | None = None
    limits: tuple[Limit, ...] = ()
    governing: Limit | None = None
    rows: tuple[Row, ...] = ()
    dials: tuple[Dial, ...] = ()
    problem: str = ""
    #: What every limit said, in the limits' own order, so that one alone can be asked again.
    asked: Asked = ()


class Ground:
    """What a set-up holds for all of its steps, and the settings made of it:
    steps that find the same share one.
    """

    __slots__ = ("_made", "setting")

    def __init__(self, setting: Setting) -> None:
        self.setting = setting
        self._made: dict[Around, Setting] = {}

    def around(self, found: Around) -> Setting:
        """What stands around a step that finds that."""
        made = self._made.get(found)
        if made is None:
            ground, (pilot, off, wound, skin) = self.setting, found
            height = ground.extent[2] - off
            made = self._made[found] = replace(
                ground, extent=(*ground.extent[:2], height), thickness=height, pilot=pilot, wound=wound, skin=skin,
                profile=_lowered(ground.profile, off),
            )  # fmt: skip
        return made


class Step:
    """One step on its ground; setting and outcome are made when they are asked for the first time.

    `written` is the step as it stands in the job, `operation` as it is reckoned, with what it leaves empty
    filled in; `leaves`: it leaves something empty. `before` is the same step as it was, if it was
    reckoned: of it stands what does not read anything that has changed. `waits`: what was recommended
    before it was changed still stands.
    """

    __slots__ = ("_outcome", "around", "ground", "last", "leaves", "operation", "waits", "written")

    def __init__(
        self,
        written: Operation,
        operation: Operation,
        ground: Ground,
        around: Around,
        before: Step | None,
        *,
        leaves: bool = False,
        waits: bool = False,
    ) -> None:
        self.written = written
        self.leaves = leaves
        self.operation = operation
        self.waits = waits
        self.ground = ground
        self.around = around
        self._outcome: Outcome | None = None
        #: What was found of the very same step the last time that somebody asked, and where it stood then.
        self.last: tuple[Setting, Outcome] | None = (
            before.last if before is not None and before.operation is operation else None
        )

    @property
    def setting(self) -> Setting:
        """What stands around it."""
        return self.ground.around(self.around)

    @property
    def is_known(self) -> bool:
        """Whether somebody asked for its outcome already."""
        return self._outcome is not None

    @property
    def outcome(self) -> Outcome:
        """Figures, limits and words."""
        if self._outcome is None:
            setting, last = self.setting, self.last
            if last is None:
                outcome = _outcome(self.operation, setting)
            else:
                moved = changed(last[0], setting)
                outcome = _again(self.operation, last[1], setting, moved) if moved else last[1]
            self._outcome = outcome
            self.last = setting, outcome
        return self._outcome


class ByKey(Mapping[str, Value]):
    """What is asked of steps by their keys."""

    __slots__ = ("_steps", "_what")

    def __init__(self, steps: dict[str, Step], what: Callable[[Step], Value]) -> None:
        self._steps = steps
        self._what = what

    def __getitem__(self, key: str) -> Value:
        return self._what(self._steps[key])

    def __iter__(self) -> Iterator[str]:
        return iter(self._steps)

    def __len__(self) -> int:
        return len(self._steps)

    def __contains__(self, key: object) -> bool:
        return key in self._steps

    @property
    def open(self) -> int:
        """How many steps nobody has asked about yet: what waits to be reckoned."""
        return sum(not step.is_known for step in self._steps.values())


def outcomes_of(steps: dict[str, Step]) -> ByKey[Outcome]:
    """The outcomes by key; each is reckoned when it is asked for."""
    return ByKey(steps, lambda step: step.outcome)


def settings_of(steps: dict[str, Step]) -> ByKey[Setting]:
    """What stands around each step, by key."""
    return ByKey(steps, lambda step: step.setting)


#: What a setting has from its set-up or for itself alone, each by the word that kinds and limits read it by.
_NAMES = (
    "machine",
    "material",
    "shop",
    "units",
    "fluid",
    "grip",
    "top",
    "load",
    "proof",
    "skin",
    "profile",
    "pilot",
    "wound",
)


def changed(setting: Setting, other: Setting) -> frozenset[str]:
    """What is not the same in two settings; cards and materials are remembered objects,
    so mostly identities are compared.
    """
    found = {
        name for name in _NAMES if (a := getattr(setting, name)) is not (b := getattr(other, name)) and a != b
    }
    found |= {
        name
        for name, a, b in zip(("extent.x", "extent.y", "extent.z"), setting.extent, other.extent, strict=True)
        if a != b
    }
    if setting.thickness != other.thickness:
        found.add("thickness")
    return frozenset(found)


def _lowered(profile: Profile | None, off: float) -> Profile | None:
    """The profile of the work when so much has come off [m]; nothing for a box."""
    return profile if profile is None or not off else replace(profile, gone=profile.gone + off)


@while_it_lives
def _reads(operation: Operation) -> frozenset[str]:
    return kind_of(operation.kind).looks_at(operation.fields)


def _again(operation: Operation, was: Outcome, setting: Setting, moved: frozenset[str]) -> Outcome:
    """An outcome where only this of the setting has changed: figures stand unless the
    kind reads it, and so does each limit.
    """
    if not moved.isdisjoint(_reads(operation)):
        return _outcome(operation, setting)
    if moved.isdisjoint(LIMITS_READ):
        return was
    if was.figures is None:
        return _outcome(operation, setting)
    process = roles(operation).process
    try:
        said = asked_again(was.asked, moved, was.figures, setting, operation.fields, process)
    except (JobsheetError, ArithmeticError):
        return _outcome(operation, setting)
    if said == was.asked:  # the very same stays: who holds it need not look again
        return was
    limits = in_order(said)
    return replace(was, limits=limits, governing=governing(limits), asked=said)


def _outcome(operation: Operation, setting: Setting) -> Outcome:
    kind = kind_of(operation.kind)
    figures, said, rows, dials, problem = reckoned_once(operation.kind, operation.fields, setting)
    limits = in_order(said)
    try:
        title = kind.title_of(operation.fields)
    except JobsheetError:
        title = kind.title
    return Outcome(
        key=operation.key, title=title, figures=figures, limits=limits, governing=governing(limits), rows=rows,
        dials=dials, problem=problem, asked=said,
    )  # fmt: skip
