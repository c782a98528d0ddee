"""The cutter that carries a block's faces on this machine, and the layers in which it does:
asked of the same limits as any plan.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec.structs import replace

from jobsheet.edit.several_steps import InsertSetUps
from jobsheet.edit.squaring_cuts import Cuts
from jobsheet.errors import CommandError, JobsheetError
from jobsheet.model.job import Job, Operation, SetUp
from jobsheet.model.own_tools import Thing
from jobsheet.model.setting import Setting
from jobsheet.operations.registry import roles
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.storage.cabinet_file import cabinet_for
from jobsheet.storage.card_files import find_card
from jobsheet.storage.shop_file import workshop
from jobsheet.units.show import trimmed

#: Where no cabinet is known (common practice, no source).
USUAL = {
    "mm": ("face mill 50 mm, 4 teeth, carbide", "end mill 20 mm, 4 teeth, HSS", "end mill 12 mm, 4 teeth, HSS"),
    "in": ("face mill 2 in, 4 teeth, carbide", "end mill 3/4 in, 4 teeth, HSS", "end mill 1/2 in, 4 teeth, HSS"),
}  # fmt: skip
#: More layers than this are no plan for one face that is up, or for one end with the side of the cutter:
#: another cutter is asked (common practice, no source).
MOST_LAYERS = {"flat": 12, "wall": 40}
#: Work stands for its ends while no more than twice as much is over the jaws as they grip (rule
#: grip-deep-enough), and while it is no taller than three times its narrower side (the shop's `tall_work`).
OVER_JAWS = 2.0
#: How far an end mill stands out beyond the height that it cuts (common practice, no source) [m].
BELOW = 5e-3


def carried(job: Job, cutter: str, make: Callable[[Cuts], tuple[SetUp, ...]]) -> tuple[SetUp, ...]:
    """The set-ups with the first cutter that carries them, each step with its feed and its layers.

    Raises
    ------
    CommandError
        Where none does, with what stops the last one.
    """
    stops = ""
    for cuts in _ways(job, cutter):
        try:
            return _refined(in_front(replace(job, set_ups=()), make(cuts)))
        except JobsheetError as error:
            stops = stops or f"{cuts.cutter}: {error}"
    raise CommandError(
        f"No cutter was found that squares this block on this machine ({stops}). Name another cutter."
    )


def in_front(job: Job, made: tuple[SetUp, ...]) -> Job:
    """The job with set-ups put in before its own; of its own those without a step give way."""
    rest = tuple(set_up for set_up in job.set_ups if set_up.operations)
    carrier = SetUp(key="carrier", number=0)
    whole = InsertSetUps(made, carrier.key).apply(replace(job, set_ups=(carrier, *rest)))
    numbered = (replace(set_up, number=number) for number, set_up in enumerate(whole.set_ups[1:], 1))
    return replace(whole, set_ups=tuple(numbered))


# --- what may be tried, the heaviest first ---


def _ways(job: Job, cutter: str) -> Iterator[Cuts]:
    """Cutters for the faces from the largest on, each with the ends standing where they may, else lying."""
    card = find_card(job.machine)
    vice = card.vices[0] if card.vices else None
    stock = sorted((job.stock.length.value, job.stock.width.value, job.stock.height.value))
    stands = stock[2] <= workshop().tall_work * stock[0]
    if vice is not None:
        stands = stands and stock[2] <= (1 + OVER_JAWS) * vice.jaw_depth
    cabinet = _in_the_cabinet(job)
    faces = (cutter.strip(),) if cutter.strip() else cabinet or USUAL[job.units]
    mills = [one for one in (*faces, *cabinet, *USUAL[job.units]) if one.startswith("end mill")]
    for face in faces:
        for stand in (True, False) if stands else (False,):
            yield Cuts(
                units=job.units,
                cutter=face,
                end_cutter=_far_out(
                    face if face.startswith("end mill") else mills[0], stock[0] + BELOW, job.units
                ),
                ends_stand=stand,
                jaws=vice.jaw_depth if vice is not None else None,
            )


def _in_the_cabinet(job: Job) -> tuple[str, ...]:
    """The face mills and end mills that lie in the workshop's cabinet now, the largest first."""
    try:
        cabinet = cabinet_for(job.workshop)
    except JobsheetError:
        return ()
    things = [
        thing
        for thing in (cabinet.things if cabinet else ())
        if thing.here and thing.name in ("face mill", "end mill")
    ]
    return tuple(thing.line for thing in sorted(things, key=_diameter, reverse=True))


def _diameter(thing: Thing) -> float:
    return (thing.cutter.diameter or 0.0) if thing.cutter is not None else 0.0


def _far_out(cutter: str, out: float, units: str) -> str:
    """A cutter's line that says how far it stands out, before its place."""
    if " out" in cutter:
        return cutter
    unit = 1e-3 if units == "mm" else 25.4e-3
    what, comma, place = cutter.partition(", drawer")
    return f"{what}, {trimmed(out / unit, 1)} {units} out{comma}{place}"


# --- feeds and layers ---


def _refined(job: Job) -> tuple[SetUp, ...]:
    """The set-ups of a job with the feeds and layers of their best cuts."""
    for _ in range(2):  # a feed changes what is carried, a layer how fast it may be fed
        reckoned = Reckoner().reckon(job)
        job = replace(
            job,
            set_ups=tuple(
                replace(
                    set_up,
                    operations=tuple(_fed(step, reckoned.settings[step.key]) for step in set_up.operations),
                )
                for set_up in job.set_ups
            ),
        )
    return job.set_ups


def _fed(step: Operation, setting: Setting) -> Operation:
    """A step as the best cut has it; an end is cut in no more passes than are a plan."""
    advised = best_cut(step, setting)
    if advised is None:
        raise CommandError("nothing is known of its feed")
    layers = round(advised.found.value("layers") or 1)
    if layers > MOST_LAYERS[roles(step).mills]:
        raise CommandError(f"it takes {layers} layers")
    if not advised.clears:
        stopped = advised.found.stopped_by
        raise CommandError(f"{stopped.title if stopped else 'the cut'} is beyond this machine")
    names = [advice.name for advice in advised.values]
    return replace(
        step, fields=replace(step.fields, **{name: getattr(advised.fields, name) for name in names})
    )
