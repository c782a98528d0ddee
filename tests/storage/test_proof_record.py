"""One record of a proof log as text, read as the same again."""

from __future__ import annotations

from hypothesis import given
from msgspec.structs import replace

from jobsheet.storage.records.proof_log import records_from
from jobsheet.storage.records.proof_record import record_text

from .trials_kept import MACHINE, TRIALS


@given(one=TRIALS)
def test_a_record_read_and_written_again_is_the_same(one):
    """So an id stays what it is wherever the record travels."""
    (read,), problems = records_from(record_text(one).encode(), MACHINE)
    assert not problems
    assert record_text(replace(read, id="")) == record_text(one)
