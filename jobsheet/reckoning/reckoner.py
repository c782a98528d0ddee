"""A job in, the figures and limits of every operation out; remembered, so that an edit costs one operation."""

from __future__ import annotations

from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from jobsheet.catalog.metals.materials import find as find_material
from jobsheet.errors import JobsheetError
from jobsheet.holdings.of_stock import with_stock
from jobsheet.limits.register import READS as LIMITS_READ
from jobsheet.limits.register import Asked, asked_again, governing, in_order
from jobsheet.model.capacity import Snapshot
from jobsheet.model.figure import Figures, Limit
from jobsheet.model.identity import while_it_lives
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.machine import Machine
from jobsheet.model.material import Material
from jobsheet.model.profile import Profile
from jobsheet.model.quantity import spot
from jobsheet.model.row import Row
from jobsheet.model.setting import Setting
from jobsheet.model.shop import Shop
from jobsheet.model.stock import Stock
from jobsheet.operations.kind import Dial
from jobsheet.operations.reads import TO_READ
from jobsheet.operations.registry import kind as kind_of
from jobsheet.operations.registry import roles
from jobsheet.reckoning.adviser.left_empty import Filler, left_of
from jobsheet.reckoning.by_value import known as reckoned_once
from jobsheet.reckoning.by_value import make_room
from jobsheet.reckoning.grip import grip_of, load_of, top_of
from jobsheet.reckoning.skin import made_first, skins
from jobsheet.reckoning.touch import Touch, in_spindle
from jobsheet.stock.lying_stock import profile_of
from jobsheet.storage.card_files import find_card
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
    #: What every limit said, in the limits' own order, so that one alone can be asked again.
    asked: Asked = ()


class Reckoned(Struct, frozen=True, kw_only=True):
    """All outcomes of a job by the operation's key, with what each operation saw.

    `job` is the job as it was reckoned: what its steps leave empty is filled in there as recommended.
    """

    job: Job
    operations: dict[str, Outcome]
    settings: dict[str, Setting]
    shop: Shop

    def filled(self, operation: Operation) -> Operation:
        """A step as it was reckoned; one that is not of this job as it is."""
        there = (one for _, one in self.job.operations() if one.key == operation.key)
        return next(there, operation)

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
        for verdict in ("beyond", "tight", "not tried", "expected", "cut before"):
            if verdict in words:
                return verdict
        return "unknown"


#: Faces with a skin, each with how thick it is [m].
Skins = frozenset[tuple[str, float]]


class _Seen(Struct):
    """What was reckoned for one set-up, to be taken over where nothing changed."""

    set_up: SetUp
    ground: Setting
    keys: tuple[str, ...]
    outcomes: list[Outcome]
    settings: list[Setting]
    #: What this set-up takes off its top [m].
    off: float
    #: The steps as they were reckoned, with what they leave empty filled in.
    filled: tuple[Operation, ...] = ()
    #: Where a recommendation of before still stands.
    behind: frozenset[int] = frozenset()
    #: The faces that had their skin before this set-up, each with how thick it is [m], and those that have it after.
    raw: Skins = frozenset()
    raw_after: Skins = frozenset()

    @property
    def whole(self) -> SetUp:
        """The set-up with its steps as they were reckoned: the very same where nothing is left empty."""
        same = all(one is other for one, other in zip(self.filled, self.set_up.operations, strict=True))
        return self.set_up if same else replace(self.set_up, operations=self.filled)


class Reckoner:
    """Reckons a job; keeps the last result of each set-up and takes over what is the very same.

    With `learns` it asks the proof log of a job's machine, once a machine: what test cuts have taught stands in
    every `Setting` then. Without it everything is by the card, unless `take_proof` gives it what is known.
    """

    def __init__(self, shop: Shop | None = None, *, learns: bool = False) -> None:
        self.shop = shop or workshop()
        self.learns = learns
        self._proofs: dict[str, Snapshot | None] = {}
        #: How many steps may be asked of the adviser in one reckoning, where what they leave empty was filled in before: it
        #: takes 10 to 100 ms for each. None: all.
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
        outcomes: dict[str, Outcome] = {}
        settings: dict[str, Setting] = {}
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
            outcomes.update(zip(made.keys, made.outcomes, strict=True))
            settings.update(zip(made.keys, made.settings, strict=True))
            axis = _AXIS[set_up.up]
            off[axis] = off.get(axis, 0.0) + made.off
            gone[set_up.up] = gone.get(set_up.up, 0.0) + made.off
        self._seen = seen
        wholes = tuple(seen[set_up.key].whole for set_up in job.set_ups)
        if any(one is not other for one, other in zip(wholes, job.set_ups, strict=True)):
            job = replace(job, set_ups=wholes)
        return Reckoned(job=job, operations=outcomes, settings=settings, shop=self.shop)

    @property
    def behind(self) -> bool:
        """Whether what a step leaves empty still stands as it was recommended before the last edits."""
        return any(one.behind for one in self._seen.values())

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
        self, set_up: SetUp, ground: Setting, before: _Seen | None, filler: Filler, raw: Skins
    ) -> _Seen:
        if before is None:
            return _afresh(set_up, ground, filler, raw)
        changed = _changed(before.ground, ground)
        if raw != before.raw:
            changed |= _SKIN
        if not changed and (taken := _taken_over(set_up, ground, before, filler)) is not None:
            return taken
        return _where_it_shows(set_up, ground, before, changed, filler, raw)


def _afresh(set_up: SetUp, ground: Setting, filler: Filler, raw: Skins) -> _Seen:
    """Every operation reckoned, as far as the same was not reckoned before by value."""
    nothing = _Seen(replace(set_up, operations=()), ground, (), [], [], 0.0)
    return _where_it_shows(set_up, ground, nothing, frozenset(), filler, raw)


def _where_it_shows(
    set_up: SetUp,
    ground: Setting,
    before: _Seen,
    changed: frozenset[str],
    filler: Filler,
    raw: Skins,
) -> _Seen:
    """Every operation that is the very same is taken over, but for what reads something that has changed."""
    there = {id(operation): index for index, operation in enumerate(before.set_up.operations)}
    holes: dict[tuple[int, int], float] = {}
    outcomes: list[Outcome] = []
    settings: list[Setting] = []
    known = dict(zip(before.keys, before.filled, strict=True))
    whole: list[Operation] = []
    behind: set[int] = set()
    around: dict[tuple[float | None, float, float, float], Setting] = {}
    height, touch, begun_raw = ground.extent[2], Touch(), raw
    for operation in set_up.operations:
        pilot = _pilot(operation, holes)
        touch = touch.at(operation)
        face = made_first(operation, set_up) if raw else ""
        skin = dict(raw).get(face, 0.0) if face else 0.0
        setting = around.get((pilot, height, touch.wound, skin))
        if setting is None:
            setting = around[pilot, height, touch.wound, skin] = replace(
                ground, extent=(*ground.extent[:2], height), thickness=height, pilot=pilot, wound=touch.wound, skin=skin,
                profile=_lowered(ground, height),
            )  # fmt: skip
        raw -= {(face, skin)}
        index = there.get(id(operation))
        if index is None or index in before.behind:
            index = None
            done = filler.fill(operation, setting, known.get(operation.key))
            outcomes.append(_outcome(done, setting))
        else:
            done = before.filled[index]
            was, moved = before.settings[index], changed
            if was.thickness != height:
                moved |= _HEIGHT
            if was.pilot != pilot:
                moved |= _PILOT
            if was.wound != touch.wound:
                moved |= TO_READ
            if was.skin != skin:
                moved |= _SKIN
            if not moved:
                setting = was
            elif left_of(operation).names and moved != TO_READ:
                done = filler.fill(operation, setting, done)
            if done is before.filled[index]:
                outcomes.append(_again(done, before.outcomes[index], setting, moved))
            else:
                outcomes.append(_outcome(done, setting))
        if filler.waits(done):
            behind.add(len(whole))
        whole.append(done)
        settings.append(setting)
        height = _note(operation, holes, height)
        touch = touch.after(operation)
    keys = tuple(operation.key for operation in set_up.operations)
    return _Seen(
        set_up, ground, keys, outcomes, settings, ground.extent[2] - height, tuple(whole), frozenset(behind), begun_raw, raw
    )  # fmt: skip


def _taken_over(set_up: SetUp, ground: Setting, before: _Seen, filler: Filler) -> _Seen | None:
    """The last result with only what changed reckoned anew; None where places, holes or the order changed.

    This is the path of every keystroke: what is untouched costs a comparison of identities.
    """
    if before.set_up is set_up and not before.behind:
        return before
    old, new = before.set_up.operations, set_up.operations
    if len(old) != len(new):
        return None
    changed = [index for index, (one, other) in enumerate(zip(old, new, strict=True)) if one is not other]
    was, now = before.set_up, set_up
    if before.raw and (was.up, was.operator) != (now.up, now.operator):
        return None
    for index in changed:
        if old[index].key != new[index].key or _operation_facts(old[index]) != _operation_facts(new[index]):
            return None
        if before.raw and made_first(old[index], was) != made_first(new[index], now):
            return None
    outcomes, whole, behind = before.outcomes.copy(), list(before.filled), set(before.behind)
    for index in {*changed, *before.behind}:
        whole[index] = filler.fill(new[index], before.settings[index], before.filled[index])
        outcomes[index] = _outcome(whole[index], before.settings[index])
        (behind.add if filler.waits(whole[index]) else behind.discard)(index)
    return _Seen(
        set_up, ground, before.keys, outcomes, before.settings, before.off, tuple(whole), frozenset(behind), before.raw,
        before.raw_after,
    )  # fmt: skip


#: What a set-up's ground holds for all of its operations; the height and the hole at a place are each one's own.
_SHARED = ("machine", "material", "shop", "units", "fluid", "grip", "top", "load", "proof", "skin", "profile")
_HEIGHT, _PILOT = frozenset({"extent.z", "thickness", "profile"}), frozenset({"pilot"})
_SKIN = frozenset({"skin"})


def _changed(one: Setting, other: Setting) -> frozenset[str]:
    """What is not the same in two grounds; cards and materials are remembered objects, so mostly identities are compared."""
    found = {
        name for name in _SHARED if (a := getattr(one, name)) is not (b := getattr(other, name)) and a != b
    }
    found |= {
        name for name, a, b in zip(("extent.x", "extent.y"), one.extent, other.extent, strict=False) if a != b
    }
    if one.extent[2] != other.extent[2]:
        found |= _HEIGHT
    return frozenset(found)


def _lowered(ground: Setting, height: float) -> Profile | None:
    """The profile of the work when it is only so high any more [m]; nothing for a box."""
    if ground.profile is None:
        return None
    return replace(ground.profile, gone=ground.profile.gone + ground.extent[2] - height)


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
    """What matters to the operations that follow: its places, the holes it leaves, what it takes off, what is in the spindle."""
    kind, fields = kind_of(operation.kind), operation.fields
    places = tuple(place.spot for place in getattr(fields, "at", ()) or ())
    try:
        left = tuple((spot(hole.x, hole.y), hole.diameter) for hole in kind.holes(fields))
    except JobsheetError:
        left = ()
    return places, left, kind.takes_off(fields), in_spindle(operation)


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
    _, left, off, _ = _operation_facts(operation)
    for place, diameter in left:
        holes[place] = max(diameter, holes.get(place, 0.0))
    return float(height - off)


@while_it_lives
def _reads(operation: Operation) -> frozenset[str]:
    return kind_of(operation.kind).looks_at(operation.fields)


def _again(operation: Operation, was: Outcome, setting: Setting, moved: frozenset[str]) -> Outcome:
    """An outcome where only this of the setting has changed: figures stand unless the kind reads it, and so does each limit."""
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


def _high(set_up: SetUp, stock: Stock) -> float:
    """How high the stock stands as it lies in a set-up [m]."""
    size = {"top": stock.height, "bottom": stock.height, "left": stock.length, "right": stock.length}
    return size.get(set_up.up, stock.width).value
