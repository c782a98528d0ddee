"""What is learned of a machine is a value: equal and hashed alike, and asked by
limit, process and kind of cutter.
"""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.capacity import Capacity, Snapshot


def known(process, cutter_kind="end mill", **more):
    return Capacity(
        limit="chatter", process=process, cutter_kind=cutter_kind, low=0.5, median=1.0, high=2.0, **more
    )


SIDE, ALONE = known("side", spoke=2), known("", "")
SNAPSHOT = Snapshot(machine="b-1", made="2026-11-02", capacities=(ALONE, SIDE))


def test_its_own_process_and_cutter_go_before_what_the_machine_alone_gives():
    assert SNAPSHOT.find("chatter", "side", "end mill") is SIDE
    assert SNAPSHOT.find("chatter", "slot", "end mill") is ALONE
    assert SNAPSHOT.find("chatter", "side", "face mill") is ALONE
    assert SNAPSHOT.find("spindle-torque", "side", "end mill") is None
    assert Snapshot(machine="b-1", made="", capacities=(SIDE,)).find("chatter", "slot", "end mill") is None


def test_a_kind_of_cutter_counts_as_tried_once_a_trial_said_something():
    assert SNAPSHOT.tried("chatter", "end mill")
    assert not SNAPSHOT.tried("chatter", "face mill")
    assert not SNAPSHOT.tried("spindle-torque", "end mill")
    silent = replace(SNAPSHOT, capacities=(known("side"),))
    assert not silent.tried("chatter", "end mill")


def test_equal_by_value_and_another_once_a_trial_moved_it():
    again = Snapshot(machine="b-1", made="2026-11-02", capacities=(known("", ""), known("side", spoke=2)))
    assert again == SNAPSHOT
    assert hash(again) == hash(SNAPSHOT)
    moved = replace(SNAPSHOT, capacities=(ALONE, replace(SIDE, median=1.1)))
    assert moved != SNAPSHOT
    assert hash(moved) != hash(SNAPSHOT)
    assert SNAPSHOT != "b-1"
