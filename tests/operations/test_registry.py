"""Kinds by name: what is no kind is refused and not imported."""

from __future__ import annotations

import pytest

from jobsheet.errors import NoSuchEntry
from jobsheet.operations.registry import kind, kinds


def test_there_are_the_four_kinds_of_the_spine():
    assert {"face", "drill", "tap", "bench-step"} <= set(kinds())


@pytest.mark.parametrize("name", ["registry", "entry", "../face", "no-such", "", "Face", "kind", "__init__"])
def test_what_is_no_kind_is_refused_and_not_imported(name):
    with pytest.raises(NoSuchEntry):
        kind(name)
