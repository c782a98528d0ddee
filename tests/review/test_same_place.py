"""Which remarks a change ends, leaves and brings: told by rule and step, not by their words."""

from __future__ import annotations

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
