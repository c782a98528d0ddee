"""What trials teach is learned once: kept by the very trials, and of no use
where anything differs or is damaged.
"""

import sys

from jobsheet.reckoning.taught import _place, proof_of


def test_the_second_time_nothing_is_learned_anew(monkeypatch):
    first = proof_of("bench-mill-b-1", today="2026-11-25")
    assert _place("bench-mill-b-1").is_file()
    monkeypatch.setitem(sys.modules, "jobsheet.proving.learned", None)  # cannot be imported now
    assert proof_of("bench-mill-b-1", today="2026-11-25") == first


def test_another_day_or_a_damaged_file_is_learned_anew():
    first = proof_of("bench-mill-b-1", today="2026-11-25")
    later = proof_of("bench-mill-b-1", today="2027-11-25")
    assert later.capacities != first.capacities  # old proof widens
    _place("bench-mill-b-1").write_bytes(b"\x93nonsense")
    assert proof_of("bench-mill-b-1", today="2026-11-25") == first


def test_a_machine_without_trials_keeps_nothing():
    assert proof_of("knee-mill-k-2", today="2026-11-25") is None
    assert not _place("knee-mill-k-2").exists()
