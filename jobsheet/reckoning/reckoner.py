"""A job in, the figures and limits of every operation out; remembered, so that an edit costs one operation."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.errors import JobsheetError
from jobsheet.limits.register import governing
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.identity import by_identity
from jobsheet.model.job import Job, Operation, SetUp, Stock
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import spot
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting, Shop
from jobsheet.model.trials import Snapshot
from jobsheet.operations.kind import Dial
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.answers.what_if import sentence_of, tried
from jobsheet.reckoning.grip import grip_of, load_of, top_of
from jobsheet.storage.machine_file import find_card
from jobsheet.storage.shop_file import workshop


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


class Reckoned(Struct, frozen=True, kw_only=True):
    """All outcomes of a job by the operation's key, with what each operation saw."""

    job: Job
    operations: dict[str, Outcome]
    settings: dict[str, Setting]
    shop: Shop

    @property
    def cutting_time(self) -> float:
        """Seconds in the cut, over all operations."""
        return sum(
            outcome.figures.value("cutting_time") or 0.0
            for outcome in self.operations.values()
            if outcome.figures is not None
        )

    @property
    def worst(self) -> str:
        """The worst verdict of all."""
        words = [outcome.governing.verdict for outcome in self.operations.values() if outcome.governing]
        for verdict in ("beyond", "tight", "expected", "cut before"):
            if verdict in words:
                return verdict
        return "unknown"


@lru_cache(maxsize=4096)
def reckon_operation(
    kind_name: str, fields: Any, setting: Setting
) -> tuple[Figures | None, tuple[Limit, ...], tuple[Row, ...], tuple[Dial, ...], str]:
    """Figures, limits, rows and dials by value: the same fields in the same setting are reckoned once."""
    found, kind = tried(kind_name, fields, setting), kind_of(kind_name)
    if found.figures is None:
        return None, (), (), (), found.problem
    try:
        rows = kind.rows(fields, found.figures, setting)
        return found.figures, found.limits, rows, kind.dials(fields, found.figures, setting), ""
    except JobsheetError as error:
        return None, (), (), (), sentence_of(error)


class _Seen(Struct):
    """What was reckoned for one set-up, to be taken over where nothing changed."""

    set_up: SetUp
    ground: tuple[Any, ...]
    keys: tuple[str, ...]
    outcomes: list[Outcome]
    settings: list[Setting]
    #: What this set-up takes off its top [m].
    off: float


class Reckoner:
    """Reckons a job; keeps the last result of each set-up and takes over what is the very same.

    With `learns` it asks the proof log of a job's machine, once a machine: what test cuts have taught stands in
    every `Setting` then. Without it everything is by the card, unless `take_proof` gives it what is known.
    """

    def __init__(self, shop: Shop | None = None, *, learns: bool = False) -> None:
        self.shop = shop or workshop()
        self.learns = learns
        self._proofs: dict[str, Snapshot | None] = {}
        self._seen: dict[str, _Seen] = {}
        self._grips: dict[str, tuple[Any, Machine, Material, tuple[Any, ...]]] = {}

    def take_proof(self, machine: str, proof: Snapshot | None) -> None:
        """What is known of that machine from now on; the next reckoning uses it."""
        self._proofs[machine] = proof

    def forget_proof(self) -> None:
        """A trial was written or struck out: ask the logs again at the next reckoning."""
        self._proofs.clear()

    def _proof(self, machine: str) -> Snapshot | None:
        if self.learns and machine not in self._proofs:
            from jobsheet.reckoning.taught import proof_of

            self._proofs[machine] = proof_of(machine, self.shop)
        return self._proofs.get(machine)

    def reckon(self, job: Job) -> Reckoned:
        """All figures and limits of a job.

        Raises
        ------
        NoSuchEntry, DocumentError
            If the job's machine or material is not there; single operations never raise.
        """
        machine, material = find_card(job.machine), find_material(job.material)
        proof = self._proof(machine.name)
        outcomes: dict[str, Outcome] = {}
        settings: dict[str, Setting] = {}
        seen: dict[str, _Seen] = {}
        size = {"x": job.stock.length.value, "y": job.stock.width.value, "z": job.stock.height.value}
        off: dict[str, float] = {}
        for set_up in job.set_ups:
            extent = _extent(size, off, set_up)
            held = self._held(set_up, job.stock, machine, material)
            ground = (machine, material, self.shop, job.units, job.fluid or "brushed", extent, held, proof)
            made = self._set_up(set_up, ground, self._seen.get(set_up.key))
            seen[set_up.key] = made
            outcomes.update(zip(made.keys, made.outcomes, strict=True))
            settings.update(zip(made.keys, made.settings, strict=True))
            axis = _AXIS[set_up.up]
            off[axis] = off.get(axis, 0.0) + made.off
        self._seen = seen
        return Reckoned(job=job, operations=outcomes, settings=settings, shop=self.shop)

    def _held(self, set_up: SetUp, stock: Stock, machine: Machine, material: Material) -> tuple[Any, ...]:
        """What holds the work, remembered for as long as nothing of it changes."""
        key = (set_up.holding, stock)
        known = self._grips.get(set_up.key)
        if known is not None and known[0] == key and known[1] is machine and known[2] is material:
            return known[3]
        found = (
            grip_of(set_up.holding, machine, material, self.shop),
            top_of(set_up.holding, machine),
            load_of(stock, set_up.holding, machine, material),
        )
        self._grips[set_up.key] = (key, machine, material, found)
        return found

    def _set_up(self, set_up: SetUp, ground: tuple[Any, ...], before: _Seen | None) -> _Seen:
        if before is not None and not _same_ground(before.ground, ground):
            before = None
        if before is not None and (taken := _taken_over(set_up, ground, before)) is not None:
            return taken
        machine, material, shop, units, fluid, extent, (grip, top, load), proof = ground
        known = (
            {id(operation): index for index, operation in enumerate(before.set_up.operations)}
            if before
            else {}
        )
        holes: dict[tuple[int, int], float] = {}
        outcomes: list[Outcome] = []
        settings: list[Setting] = []
        height = extent[2]
        for operation in set_up.operations:
            pilot = _pilot(operation, holes)
            index = known.get(id(operation))
            if before is not None and index is not None:
                old = before.settings[index]
                if old.pilot == pilot and old.thickness == height:
                    outcomes.append(before.outcomes[index])
                    settings.append(old)
                    height = _note(operation, holes, height)
                    continue
            setting = Setting(
                machine=machine, material=material, shop=shop, units=units, fluid=fluid,
                extent=(extent[0], extent[1], height), pilot=pilot, thickness=height, grip=grip, top=top, load=load,
                proof=proof,
            )  # fmt: skip
            settings.append(setting)
            outcomes.append(_outcome(operation, setting))
            height = _note(operation, holes, height)
        keys = tuple(operation.key for operation in set_up.operations)
        return _Seen(set_up, ground, keys, outcomes, settings, extent[2] - height)


def _taken_over(set_up: SetUp, ground: tuple[Any, ...], before: _Seen) -> _Seen | None:
    """The last result with only what changed reckoned anew; None where places, holes or the order changed.

    This is the path of every keystroke: what is untouched costs a comparison of identities.
    """
    if before.set_up is set_up:
        return before
    old, new = before.set_up.operations, set_up.operations
    if len(old) != len(new):
        return None
    changed = [index for index, (one, other) in enumerate(zip(old, new, strict=True)) if one is not other]
    for index in changed:
        if old[index].key != new[index].key or _operation_facts(old[index]) != _operation_facts(new[index]):
            return None
    outcomes = before.outcomes.copy()
    for index in changed:
        outcomes[index] = _outcome(new[index], before.settings[index])
    return _Seen(set_up, ground, before.keys, outcomes, before.settings, before.off)


def _same_ground(one: tuple[Any, ...], other: tuple[Any, ...]) -> bool:
    """Whether two set-ups stand on the same card, material and size; cards and materials are remembered objects."""
    return all(a is b or a == b for a, b in zip(one, other, strict=True))


_AXIS = {"top": "z", "bottom": "z", "front": "y", "rear": "y", "left": "x", "right": "x"}


def _extent(size: dict[str, float], off: dict[str, float], set_up: SetUp) -> tuple[float, float, float]:
    """The work as it lies in this set-up: along x, along y, up [m], less what was taken off before."""
    now = {axis: length - off.get(axis, 0.0) for axis, length in size.items()}
    up = _AXIS[set_up.up]
    depth = _AXIS[set_up.operator]
    if depth == up:
        depth = next(axis for axis in "yxz" if axis != up)
    across = next(axis for axis in "xyz" if axis not in (up, depth))
    return now[across], now[depth], now[up]


@by_identity(4096)
def _operation_facts(
    operation: Operation,
) -> tuple[tuple[tuple[int, int], ...], tuple[tuple[tuple[int, int], float], ...], float]:
    """What matters to the operations that follow: its own places, the holes it leaves, what it takes off."""
    kind, fields = kind_of(operation.kind), operation.fields
    places = tuple(place.spot for place in getattr(fields, "at", ()) or ())
    try:
        left = tuple((spot(hole.x, hole.y), hole.diameter) for hole in kind.holes(fields))
    except JobsheetError:
        left = ()
    return places, left, kind.takes_off(fields)


def _pilot(operation: Operation, holes: dict[tuple[int, int], float]) -> float | None:
    """The hole that already stands at every place of this operation: the smallest of them."""
    places = _operation_facts(operation)[0]
    if not places or not holes:
        return None
    found = [holes.get(place) for place in places]
    standing = [diameter for diameter in found if diameter is not None]
    return min(standing) if len(standing) == len(found) else None


def _note(operation: Operation, holes: dict[tuple[int, int], float], height: float) -> float:
    """Keep the holes it leaves; the height of the work after it [m]."""
    _, left, off = _operation_facts(operation)
    for place, diameter in left:
        holes[place] = max(diameter, holes.get(place, 0.0))
    return float(height - off)


def _outcome(operation: Operation, setting: Setting) -> Outcome:
    kind = kind_of(operation.kind)
    seen = kind.sees(operation.fields)
    if len(seen) < 3:
        # What is not looked at is left out, so that a change of it finds what was reckoned before.
        extent = setting.extent
        shown = (
            extent[0] if 0 in seen else 0.0,
            extent[1] if 1 in seen else 0.0,
            extent[2] if 2 in seen else 0.0,
        )
        setting = replace(setting, extent=shown)
    figures, limits, rows, dials, problem = reckon_operation(operation.kind, operation.fields, setting)
    try:
        title = kind.title_of(operation.fields)
    except JobsheetError:
        title = kind.title
    return Outcome(
        key=operation.key, title=title, figures=figures, limits=limits, governing=governing(limits), rows=rows,
        dials=dials, problem=problem,
    )  # fmt: skip
