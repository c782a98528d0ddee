"""What to fetch: each cutter once, drawers by their number and not by its
letters, set-ups in few characters.
"""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField
from jobsheet.report.fetch import also_on_the_bench, fetched, in_runs


@pytest.mark.parametrize(
    ("numbers", "text"), [((1, 2, 3, 4), "1–4"), ((5, 6), "5 6"), ((1, 3, 4), "1 3 4"), ((2,), "2"), ((), "")]
)
def test_set_ups_in_few_characters(numbers, text):
    assert in_runs(numbers) == text


def test_what_is_named_on_the_bench_is_named_once(hm100):
    job = replace(hm100, also_fetch="soft hammer.")
    steps = [key for key in ("clamp", "finish") if job.find(key)]
    for key in steps:
        job = SetField(key, "with_what", "Soft hammer, file").apply(job)
    assert also_on_the_bench(SimpleNamespace(job=job)) == "soft hammer, file"


def test_drawers_stand_in_the_order_of_their_numbers(hm100):
    job = hm100
    for key, drawer in (("face-rough", 10), ("face-finish", 10), ("drill", 2)):
        text = job.find(key)[1].fields.cutter.text.split(", drawer")[0]
        job = SetField(key, "cutter", f"{text}, drawer {drawer} no. 1").apply(job)
    rows = fetched(SimpleNamespace(job=job, units="mm", short=lambda text, *_: text))
    drawers = [row.drawer for row in rows if row.drawer]
    assert drawers == sorted(drawers, key=int)
    assert drawers.index("2") < drawers.index("10")
