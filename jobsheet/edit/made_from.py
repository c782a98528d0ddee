"""A new part from one that was planned before: what belongs to the old part alone
goes, the plan stays to be looked at.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.job import Job, Part
from jobsheet.model.stock import Stock


def made_from(job: Job, *, number: str, name: str, material: str, stock: Stock | None, day: str) -> Job:
    """The plan of a new part, unsaved; nothing of it was looked at yet.

    Left behind are the drawing and its revision, the revisions of the plan, what was set aside with its
    reasons and the photographs: all of them speak of the other part.

    Parameters
    ----------
    stock : Stock or None
        None leaves it as it is
    day : str
        Of planning, such as `2026-11-30`
    """
    return replace(
        job, part=Part(number=number, name=name, quantity=job.part.quantity), material=material,
        stock=stock if stock is not None else job.stock, planned_on=day, dismissed=(), revisions=(), photographs=(),
    )  # fmt: skip
