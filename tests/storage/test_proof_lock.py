"""One writer at a time to a proof log."""

from __future__ import annotations

import pytest

from jobsheet.errors import CannotWrite
from jobsheet.storage.records import proof_lock
from jobsheet.storage.records.proof_log import append, own_path

from .trials_kept import MACHINE, trial


def test_while_another_program_writes_one_is_told(monkeypatch):
    monkeypatch.setattr(proof_lock, "PATIENCE", 0.05)
    with proof_lock.alone(own_path(MACHINE)), pytest.raises(CannotWrite, match="Another program"):
        append(MACHINE, trial())
