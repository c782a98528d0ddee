"""Asks whether a drill is started where nothing guides it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from msgspec.structs import replace

from jobsheet.model.job import Job, Operation
from jobsheet.model.quantity import Place
from jobsheet.model.remark import Fix, Remark
from jobsheet.review.rule import View, remark, rule


@rule("spot-before-drilling", "Spot before drilling", "scrap")
def spot_before_drilling(view: View) -> Iterator[Remark]:
    """A drill of ordinary length walks on a plain face before it bites.

    Why: A long drill walks before it bites, and the hole is then where it should not be.
    Wrong: drill, spot
    Right: spot, drill
    Source: college teaching of drilling order; common practice
    """
    for set_up in view.job.set_ups:
        started: set[tuple[int, int]] = set()
        spots: dict[tuple[int, int], tuple[str, int]] = {}
        for operation in set_up.operations:
            if _spots(operation):
                for place in operation.fields.at:
                    spots.setdefault(_spot(place), (operation.key, operation.number))
        for operation in set_up.operations:
            places = {_spot(place) for place in getattr(operation.fields, "at", ()) or ()}
            if operation.kind == "drill" and not _spots(operation) and places - started:
                later = next((spots[place] for place in places - started if place in spots), None)
                message = "Spot before drilling: the drill will wander"
                fix = None
                if later is not None:
                    message = f"Spot before drilling: step {later[1]} spots these places only afterwards"
                    fix = Fix(f"Move {later[1]} before {operation.number}", _moved(later[0], operation.key))
                yield remark(view, "spot-before-drilling", message, operation.key, fix=fix, set_up=set_up.key)
            started |= places


def _spots(operation: Operation) -> bool:
    """Whether this step starts holes for a drill."""
    if operation.kind in ("spot-drill", "centre-drill"):
        return True
    return operation.kind == "drill" and operation.fields.cutter.kind == "spot drill"


def _spot(place: Place) -> tuple[int, int]:
    return round(place.x.value * 1e6), round(place.y.value * 1e6)


def _moved(key: str, before: str) -> Callable[[Job], Job]:
    """A function Job -> Job that puts one step right before another; numbers change places with the rows."""

    def mend(job: Job) -> Job:
        for set_up in job.set_ups:
            keys = [one.key for one in set_up.operations]
            if key in keys and before in keys:
                moved = next(one for one in set_up.operations if one.key == key)
                rest = [one for one in set_up.operations if one.key != key]
                rest.insert(next(i for i, one in enumerate(rest) if one.key == before), moved)
                numbers = sorted(one.number for one in set_up.operations)
                operations = tuple(replace(one, number=n) for one, n in zip(rest, numbers, strict=True))
                changed = replace(set_up, operations=operations)
                return replace(
                    job, set_ups=tuple(changed if one.key == set_up.key else one for one in job.set_ups)
                )
        return job

    return mend
