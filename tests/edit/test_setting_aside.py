"""Remarks set aside with a reason, and brought back one by one or all at once."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.edit.setting_aside import BringBack, Dismiss
from jobsheet.errors import CommandError


def test_a_reason_is_asked_and_kept_without_its_blanks(hm100):
    job = Dismiss("deburr", "drill", "  done by hand ", " rw ").apply(hm100)
    (one,) = job.dismissed[len(hm100.dismissed) :]
    assert (one.rule, one.about, one.reason, one.initials) == ("deburr", "drill", "done by hand", "rw")
    with pytest.raises(CommandError, match="Write why"):
        Dismiss("deburr", "drill", "  ").apply(hm100)


def test_the_same_remark_takes_the_new_reason(hm100):
    bare = replace(hm100, dismissed=())
    twice = Dismiss("deburr", "drill", "b").apply(Dismiss("deburr", "drill", "a").apply(bare))
    assert [one.reason for one in twice.dismissed] == ["b"]
    assert len(Dismiss("deburr", "tap", "c").apply(twice).dismissed) == 2


def test_brought_back_is_as_if_never_set_aside(hm100):
    bare = replace(hm100, dismissed=())
    job = Dismiss("spot", "drill", "b").apply(Dismiss("deburr", "drill", "a").apply(bare))
    assert [one.rule for one in BringBack("deburr", "drill").apply(job).dismissed] == ["spot"]
    assert BringBack().apply(job) == bare
    assert BringBack("no-such").apply(job) is job
    assert BringBack().apply(bare) is bare
