"""A job in, the figures and limits of every operation out; remembered, so
that an edit costs one operation.
"""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.errors import JobsheetError
from jobsheet.holdings.of_stock import with_stock
from jobsheet.model.capacity import Snapshot
from jobsheet.model.identity import while_it_lives
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.quantity import spot
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.model.stock import Stock
from jobsheet.operations.reads import TO_READ
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.adviser.left_empty import Filler, left_of
from jobsheet.reckoning.by_value import make_room
from jobsheet.reckoning.grip import grip_of, load_of, top_of
from jobsheet.reckoning.skin import made_first, skins
from jobsheet.reckoning.touch import Touch, in_spindle
from jobsheet.reckoning.when_asked import (
    Around,
    ByKey,
    Ground,
    Outcome,
    Step,
    changed,
    outcomes_of,
    settings_of,
)
from jobsheet.stock.lying_stock import profile_of
from jobsheet.storage.card_files import find_card
from jobsheet.storage.shop_file import workshop

__all__ = ["Outcome", "Reckoned", "Reckoner"]


class Reckoned(Struct, frozen=True, kw_only=True):
    """All outcomes of a job by the operation's key, with what each operation saw;
    each is made when it is asked for.

    `job` is the job as it was reckoned: what its steps leave empty is filled in there as recommended.
    """

    job: Job
    operations: ByKey[Outcome]
    settings: ByKey[Setting]
    shop: Shop

    def filled(self, operation: Operation) -> Operation:
        """A step as it was reckoned; one that is not of this job as it is."""
        there = (other for _, other in self.job.operations() if other.key == operation.key)
        return next(there, operation)

    @property
    def cutting_time(self) -> float:
        """Seconds in the cut, over all operations."""
        return sum(
            outcome.figures.number("cutting_time")
            for outcome in self.operations.values()
            if outcome.figures is not None
        )

    @property
    def worst(self) -> str:
        """The worst verdict of all."""
        words = [outcome.governing.verdict for outcome in self.operations.values() if outcome.governing]
        for verdict in ("beyond", "tight", "not tried", "expected", "cut before"):
            if verdict in words:
                return verdict
        return "unknown"


#: Faces with a skin, each with how thick it is [m].
Skins = frozenset[tuple[str, float]]


class _Seen(Struct):
    """What was reckoned for one set-up, to be taken over where nothing changed."""

    set_up: SetUp
    ground: Ground
    keys: tuple[str, ...]
    steps: tuple[Step, ...]
    #: What this set-up takes off its top [m].
    off: float
    #: The faces that had their skin before this set-up, each with how thick it
    #: is [m], and those that have it after.
    raw: Skins = frozenset()
    raw_after: Skins = frozenset()

    @property
    def behind(self) -> bool:
        """Whether a recommendation of before still stands in one of them."""
        return any(step.waits for step in self.steps)

    @property
    def whole(self) -> SetUp:
        """The set-up with its steps as they were reckoned: the very same where nothing is left empty."""
        if all(step.operation is step.written for step in self.steps):
            return self.set_up
        return replace(self.set_up, operations=tuple(step.operation for step in self.steps))


class Reckoner:
    """Reckons a job; keeps the last result of each set-up and takes over what is the very same.

    With `learns` it asks the proof log of a job's machine, once a machine: what test cuts have taught stands
    in every `Setting` then. Without it everything is by the card, unless `take_proof` gives it what is known.
    """

    def __init__(self, shop: Shop | None = None, *, learns: bool = False) -> None:
        self.shop = shop or workshop()
        self.learns = learns
        self._proofs: dict[str, Snapshot | None] = {}
        #: How many steps may be asked of the adviser in one reckoning, where what they leave empty was filled
        #: in before: it takes 10 to 100 ms for each. None: all.
        self.patience: int | None = None
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
        make_room(sum(len(set_up.operations) for set_up in job.set_ups))
        proof = self._proof(machine.name)
        filler = Filler(self.patience)
        steps: dict[str, Step] = {}
        seen: dict[str, _Seen] = {}
        size = {"x": job.stock.length.value, "y": job.stock.width.value, "z": job.stock.height.value}
        off: dict[str, float] = {}
        gone: dict[str, float] = {}
        raw = frozenset(skins(job.stock, self.shop))
        for set_up in job.set_ups:
            extent = _extent(size, off, set_up)
            grip, top, load = self._held(set_up, job.stock, machine, material)
            ground = Setting(
                machine=machine, material=material, shop=self.shop, units=job.units, fluid=job.fluid or "brushed",
                extent=extent, thickness=extent[2], grip=grip, top=top, load=load, proof=proof,
                profile=profile_of(job.stock, set_up, gone.get(set_up.up, 0.0)),
            )  # fmt: skip
            made = self._set_up(set_up, ground, self._seen.get(set_up.key), filler, raw)
            raw = made.raw_after
            seen[set_up.key] = made
            steps.update(zip(made.keys, made.steps, strict=True))
            axis = _AXIS[set_up.up]
            off[axis] = off.get(axis, 0.0) + made.off
            gone[set_up.up] = gone.get(set_up.up, 0.0) + made.off
        self._seen = seen
        wholes = tuple(seen[set_up.key].whole for set_up in job.set_ups)
        if any(set_up is not other for set_up, other in zip(wholes, job.set_ups, strict=True)):
            job = replace(job, set_ups=wholes)
        return Reckoned(job=job, operations=outcomes_of(steps), settings=settings_of(steps), shop=self.shop)

    @property
    def behind(self) -> bool:
        """Whether what a step leaves empty still stands as it was recommended before the last edits."""
        return any(seen.behind for seen in self._seen.values())

    def _held(self, set_up: SetUp, stock: Stock, machine: Machine, material: Material) -> tuple[Any, ...]:
        """What holds the work, remembered for as long as nothing of it changes."""
        key = (set_up.holding, set_up.up, stock)
        known = self._grips.get(set_up.key)
        if known is not None and known[0] == key and known[1] is machine and known[2] is material:
            return known[3]
        holding = with_stock(set_up.holding, stock)
        found = (
            grip_of(holding, machine, material, self.shop),
            top_of(holding, machine, _high(set_up, stock)),
            load_of(stock, holding, machine, material),
        )
        self._grips[set_up.key] = (key, machine, material, found)
        return found

    def _set_up(
        self, set_up: SetUp, around: Setting, before: _Seen | None, filler: Filler, raw: Skins
    ) -> _Seen:
        if before is None:
            nothing = _Seen(replace(set_up, operations=()), Ground(around), (), (), 0.0)
            return _where_it_shows(set_up, nothing.ground, nothing, filler, raw)
        if before.ground.setting != around:
            ground = Ground(around)
            if before.set_up is set_up and raw == before.raw:
                return _on_other_ground(before, ground, filler)
            return _where_it_shows(set_up, ground, before, filler, raw)
        taken = _taken_over(set_up, before, filler) if raw == before.raw else None
        return taken or _where_it_shows(set_up, before.ground, before, filler, raw)


def _step(before: Step | None, written: Operation, ground: Ground, around: Around, filler: Filler) -> Step:
    """A step on its ground, from what it was; what it leaves empty is looked for at
    once, all else when it is asked for.
    """
    if before is not None and not before.waits and before.written is written:
        if before.ground is ground and before.around == around:
            return before
        if left_of(written).names and changed(before.setting, ground.around(around)) <= TO_READ:
            return Step(written, before.operation, ground, around, before, leaves=True)
    if not left_of(written).names:
        return Step(written, written, ground, around, before)
    done = filler.fill(written, ground.around(around), before.operation if before is not None else None)
    waits = filler.waits(done)
    if before is not None and done == before.operation:  # the very same stays, and what was reckoned of it
        done = before.operation
    return Step(written, done, ground, around, before, leaves=True, waits=waits)


def _on_other_ground(before: _Seen, ground: Ground, filler: Filler) -> _Seen:
    """The same set-up where something of the work or the machine has changed:
    what each step finds of its own stays.
    """
    steps = tuple(
        _step(step, step.written, ground, step.around, filler)
        if step.leaves
        else Step(step.written, step.written, ground, step.around, step)
        for step in before.steps
    )
    return _Seen(before.set_up, ground, before.keys, steps, before.off, before.raw, before.raw_after)


def _where_it_shows(set_up: SetUp, ground: Ground, before: _Seen, filler: Filler, raw: Skins) -> _Seen:
    """What each step finds, from the first to the last; of a step that is the very same
    stands what reads nothing that changed.
    """
    known = dict(zip(before.keys, before.steps, strict=True))
    holes: dict[tuple[int, int], float] = {}
    steps: list[Step] = []
    off, touch, begun_raw = 0.0, Touch(), raw
    for operation in set_up.operations:
        places, left, lowers, cutter = _operation_facts(operation)
        touch = touch.with_cutter(cutter, operation.number)
        face = made_first(operation, set_up) if raw else ""
        skin = dict(raw).get(face, 0.0) if face else 0.0
        raw -= {(face, skin)}
        around = (_pilot(places, holes), off, touch.wound, skin)
        steps.append(_step(known.get(operation.key), operation, ground, around, filler))
        for place, diameter in left:
            holes[place] = max(diameter, holes.get(place, 0.0))
        off += lowers
        touch = touch.lowered(lowers)
    keys = tuple(operation.key for operation in set_up.operations)
    return _Seen(set_up, ground, keys, tuple(steps), off, begun_raw, raw)


def _taken_over(set_up: SetUp, before: _Seen, filler: Filler) -> _Seen | None:
    """The last result with only what changed reckoned anew; None where places, holes or the order changed.

    This is the path of every keystroke: what is untouched costs a comparison of identities.
    """
    if before.set_up is set_up and not before.behind:
        return before
    old, new = before.set_up.operations, set_up.operations
    if len(old) != len(new):
        return None
    was, now = before.set_up, set_up
    if before.raw and (was.up, was.operator) != (now.up, now.operator):
        return None
    steps = list(before.steps)
    for index, (operation, other) in enumerate(zip(old, new, strict=True)):
        if operation is other and not steps[index].waits:
            continue
        if operation.key != other.key or _operation_facts(operation) != _operation_facts(other):
            return None
        if before.raw and made_first(operation, was) != made_first(other, now):
            return None
        steps[index] = _step(steps[index], other, before.ground, steps[index].around, filler)
    return _Seen(set_up, before.ground, before.keys, tuple(steps), before.off, before.raw, before.raw_after)


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


@while_it_lives
def _operation_facts(
    operation: Operation,
) -> tuple[tuple[tuple[int, int], ...], tuple[tuple[tuple[int, int], float], ...], float, str]:
    """What matters to the operations that follow: its places, the holes it leaves, what it
    takes off, what is in the spindle.
    """
    kind, fields = kind_of(operation.kind), operation.fields
    places = tuple(place.spot for place in getattr(fields, "at", ()) or ())
    try:
        left = tuple((spot(hole.x, hole.y), hole.diameter) for hole in kind.holes(fields))
    except JobsheetError:
        left = ()
    return places, left, kind.takes_off(fields), in_spindle(operation)


def _pilot(places: tuple[tuple[int, int], ...], holes: dict[tuple[int, int], float]) -> float | None:
    """The hole that already stands at every one of these places: the smallest of them."""
    if not places or not holes:
        return None
    found = [holes.get(place) for place in places]
    standing = [diameter for diameter in found if diameter is not None]
    return min(standing) if len(standing) == len(found) else None


def _high(set_up: SetUp, stock: Stock) -> float:
    """How high the stock stands as it lies in a set-up [m]."""
    size = {"top": stock.height, "bottom": stock.height, "left": stock.length, "right": stock.length}
    return size.get(set_up.up, stock.width).value
