"""Holdings in a job, and the bodies that they put round its work."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.holdings.all_holdings import holding_kind
from jobsheet.holdings.placed import bodies_of
from jobsheet.model.lying import lying, stock_box
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import blank_job

B1 = "bench-mill-b-1"


def with_holding(holding, **more):
    job = blank_job(B1)
    return replace(job, set_ups=(replace(job.set_ups[0], holding=holding, **more),))


def placed(holding, size=("80", "50", "20"), **laid):
    job = with_holding(holding, **laid)
    one = dict(zip(("length", "width", "height"), size, strict=True))
    from jobsheet.edit.commands import SetField

    for name, text in one.items():
        job = SetField("job:stock", name, text).apply(job)
    set_up = job.set_ups[0]
    return bodies_of(set_up, lying(set_up, stock_box(job)), find_card(B1))


def only(found, part):
    return [body for body in found if body.part == part]


def straps(**facts):
    kind = holding_kind("straps")
    return kind.fields(
        **{entry.name: entry.read(facts[entry.name], "mm") for entry in kind.entries if entry.name in facts}
    )
