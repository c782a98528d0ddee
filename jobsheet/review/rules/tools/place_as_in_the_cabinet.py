"""Asks whether a tool lies where the plan says it does."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import DocumentError
from jobsheet.model.job import Job
from jobsheet.model.remark import Fix, Remark
from jobsheet.reckoning.cabinet.cabinet_look import ELSEWHERE, look_through
from jobsheet.review.rule import View, remark, rule
from jobsheet.storage.cabinet_file import cabinet_for


@rule("place-as-in-the-cabinet", "The place is the cabinet's", "habit")
def place_as_in_the_cabinet(view: View) -> Iterator[Remark]:
    """A line that names another place than the cabinet has for this tool sends somebody to the wrong drawer.

    Because: Who fetches by the place brings what lies there, and it may look much the same.
    Not so: end mill 12 mm, drawer 2 no. 7 (where the face mill lies)
    So: end mill 12 mm, drawer 1 no. 4
    From: common practice
    """
    try:
        cabinet = cabinet_for(view.job.workshop)
    except DocumentError:
        return  # said by in-the-cabinet
    if cabinet is None:
        return
    for look in look_through(view.job, cabinet):
        if look.status == ELSEWHERE and look.thing is not None:
            place, keys = look.thing.place, look.need.operations
            mended = Fix(f"Write {place}", partial(_placed, keys=keys, place=place))
            yield remark(view, "place-as-in-the-cabinet", look.sentence.rstrip("."), *keys, fix=mended)


def _placed(job: Job, keys: tuple[str, ...], place: str) -> Job:
    """The job with that place in the lines of these steps; all else of a line stays as it was typed."""
    set_ups = tuple(
        replace(
            set_up,
            operations=tuple(
                replace(operation, fields=_moved(operation.fields, place, job.units))
                if operation.key in keys
                else operation
                for operation in set_up.operations
            ),
        )
        for set_up in job.set_ups
    )
    return replace(job, set_ups=set_ups)


def _moved(fields: object, place: str, units: str) -> object:
    cutter = fields.cutter  # type: ignore[attr-defined]
    before, _, behind = cutter.text.rpartition(cutter.place)
    return replace(fields, cutter=read_cutter(f"{before}{place}{behind}", units))  # type: ignore[type-var]
