"""Which remarks a change ends, leaves and brings: told by rule and step, not by their words."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.remark import Remark
from jobsheet.review.mending.same_place import differing, place


def remark(rule, *steps, **more):
    return Remark(
        **{"rule": rule, "severity": "habit", "message": "", "why": "", "operations": steps, **more}
    )


def test_other_words_at_the_same_place_are_the_same_remark(hm100):
    before, after = [remark("deburr", "drill", message="a")], [remark("deburr", "drill", message="b")]
    found = differing(before, after, hm100, hm100)
    assert (found.ends, found.leaves, found.brings) == ((), tuple(after), ())


def test_what_is_gone_ends_and_what_is_new_is_brought(hm100):
    before, after = [remark("deburr", "drill")], [remark("spot", "tap")]
    found = differing(before, after, hm100, hm100)
    assert (found.ends, found.leaves, found.brings) == (tuple(before), (), tuple(after))


def test_two_of_one_place_are_counted(hm100):
    twice = [remark("deburr", "drill"), remark("deburr", "drill")]
    found = differing(twice, twice[:1], hm100, hm100)
    assert len(found.ends) == len(found.leaves) == 1


def test_a_place_is_a_step_a_set_up_or_a_line():
    assert place(remark("x", "drill", "tap")) == ("x", "drill")
    assert place(remark("x", set_up="set-up-1")) == ("x", "set-up-1")
    assert place(remark("x", line=2)) == ("x", "line 2")
    assert place(remark("x")) == ("x", "")


def added(job, set_up, key):
    """The job with one more step at the end of a set-up."""
    step = replace(job.find("drill")[1], key=key, number=999)
    return replace(
        job,
        set_ups=tuple(
            replace(one, operations=(*one.operations, step)) if one.key == set_up else one
            for one in job.set_ups
        ),
    )


def test_what_an_added_step_takes_over_from_one_of_its_set_up_is_not_new(hm100):
    """Of the same rule, in the same set-up, for a step that was not there; each takes over one."""
    changed = added(hm100, "set-up-1", "drill-1")
    for before, after, ends, brings in (
        ([remark("spot", "drill")], [remark("spot", "drill-1")], 0, 0),
        ([remark("spot", set_up="set-up-1")], [remark("spot", "drill-1")], 0, 0),
        ([remark("spot", "drill")], [remark("deburr", "drill-1")], 1, 1),  # another rule
        ([remark("spot", "drill")], [remark("spot", "tap")], 1, 1),  # a step that was there
        ([remark("spot", set_up="set-up-9")], [remark("spot", "drill-1")], 1, 1),  # another set-up
        ([remark("spot", "drill"), remark("spot", "tap")], [remark("spot", "drill-1")], 1, 0),
        ([remark("spot", "drill")], [remark("spot", "drill-1"), remark("spot", "drill-1", message="b")], 0, 1),
        ([remark("spot", "drill"), remark("spot", "drill")], [remark("spot", "drill-1")], 1, 0),
    ):  # fmt: skip
        found = differing(before, after, hm100, changed)
        assert (len(found.ends), len(found.brings)) == (ends, brings), (before, after)
        assert len(found.leaves) + len(found.brings) == len(after)
