"""A step that finds the zero: once more the one that is there, else a usual finder at these edges."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.operations.registry import kind, roles
from jobsheet.review.mending.zero_step import finding_texts

from .views_read import sample


def test_a_set_up_without_one_gets_a_usual_finder_at_its_edges():
    job = sample(100)
    set_up = replace(job.set_ups[0], operations=(), zero=replace(job.set_ups[0].zero, named=""))
    bare = replace(job, set_ups=(set_up,))
    texts = finding_texts(bare, set_up)
    assert texts["cutter"].startswith("edge finder")
    assert texts["edges"] == f"the {set_up.zero.x_from} and the {set_up.zero.y_from} edge"


def test_texts_can_be_typed_into_such_a_step():
    for number in (100, 103, 104):
        job = sample(number)
        for set_up in job.set_ups:
            texts = finding_texts(job, set_up)
            finder = kind("pick-up-edge")
            for name, text in texts.items():
                entry = finder.entry(name)
                if entry is not None:
                    assert entry.read(text, job.units) is not None
            here = [one for one in set_up.operations if roles(one).beside == "find"]
            if here:
                assert texts["cutter"] == here[0].fields.cutter.text
