"""What is learned from thirty trials, and the chance that every keystroke asks: after numpy is there."""

from __future__ import annotations

import random
import time

from jobsheet.model.trials import OUTCOMES
from jobsheet.proving.chance import chance_over
from tests.proving.trials import taught, trial

SNAPSHOT, CHANCE = 0.060, 20e-6


def thirty(seed):
    draw = random.Random(seed)
    return [
        trial(
            draw.choice(OUTCOMES), torque=draw.uniform(0.1, 2), chatter=draw.uniform(0.1, 2), date=f"2026-{draw.randint(1, 11):02}-11",
            process=draw.choice(("side", "face", "slot")), cutter_kind=draw.choice(("end mill", "face mill")),
        )
        for _ in range(30)
    ]  # fmt: skip


def test_a_snapshot_of_thirty_trials(capsys):
    taken = []
    for seed in range(9):
        trials = thirty(seed)
        begun = time.perf_counter()
        taught(*trials)
        taken.append(time.perf_counter() - begun)
    with capsys.disabled():
        print(
            f"\nsnapshot: first {taken[0] * 1e3:.0f} ms, then {sorted(taken)[4] * 1e3:.0f} ms (at most {SNAPSHOT * 1e3:.0f})"
        )
    assert max(taken) <= SNAPSHOT


def test_a_chance(capsys):
    known, rounds = taught(*thirty(1)).capacities, 2000
    worst = 0.0
    for capacity in known:
        begun = time.perf_counter()
        for _ in range(rounds):
            chance_over(capacity, capacity.median, 0.2)
        worst = max(worst, (time.perf_counter() - begun) / rounds)
    with capsys.disabled():
        print(f"\nchance: {worst * 1e6:.1f} µs (at most {CHANCE * 1e6:.0f})")
    assert worst <= CHANCE
