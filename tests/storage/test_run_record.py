"""One entry of a job's record as text, read as the same again."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from jobsheet.model.trials import OUTCOMES
from jobsheet.model.what_ran import CHANGES, NOT_CUT, Entry
from jobsheet.storage.records.run_log import runs_from
from jobsheet.storage.records.run_record import entry_text

texts = st.text(st.characters(codec="utf-8"), max_size=40)


entries = st.builds(
    Entry,
    job=texts, plan=texts, revision=st.integers(0, 999), machine=texts, date=st.dates().map(str), about=st.just("step"),
    key=st.from_regex(r"[a-z]{1,12}", fullmatch=True), number=st.integers(1, 9999), step=texts,
    outcome=st.sampled_from((*OUTCOMES, NOT_CUT)), role=texts, change=st.sampled_from(("", *CHANGES)), note=texts,
    depth=st.none() | st.floats(1e-5, 0.5), speed=st.none() | st.floats(0.1, 500), seconds=st.none() | st.floats(0.1, 9999),
)  # fmt: skip


@given(entries)
def test_whatever_is_typed_is_read_back_as_the_same_entry(one):
    text = entry_text(one)
    found, problems = runs_from(text.encode())
    assert problems == ()
    (again,) = found.entries
    assert entry_text(replace(again, id="")) == text
    assert (again.key, again.number, again.outcome) == (one.key, one.number, one.outcome)
    for name in ("depth", "speed", "seconds"):
        value = getattr(one, name)
        assert getattr(again, name) == (value if value is None else pytest.approx(value, rel=1e-5))
