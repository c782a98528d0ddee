"""Kinds that the program writes itself: all of them are there, and a process is
known by the kind that makes it.
"""

from __future__ import annotations

from jobsheet.operations import written
from jobsheet.operations.registry import kind, kinds

NAMES = [value for name, value in vars(written).items() if name.isupper() and isinstance(value, str)]


def test_all_of_them_are_kinds_and_none_is_named_twice():
    assert set(NAMES) <= set(kinds())
    assert len(NAMES) == len(set(NAMES))


def test_a_process_by_its_own_name_or_that_of_its_kind():
    for process, name in written.PROVED.items():
        assert written.process_of(name) == written.process_of(process) == process
        assert kind(name).plays(kind(name).blank("mm")).process == process
    assert written.process_of("pocket") == "pocket"
