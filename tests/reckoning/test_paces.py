"""Factors of a workshop's times against workshops that are drawn, not reckoned: their clocks
know nothing of the model that learns.
"""

from __future__ import annotations

import random

import pytest
from msgspec.structs import replace

from jobsheet.model.what_ran import Entry, Runs
from jobsheet.reckoning.paces import LEAST, SET_UP, TOGETHER, WORK, Timed, paces, timed, timed_of
from jobsheet.storage.records.run_log import read_runs, record

WORKSHOPS = 1000


def on_the_clock(chance, planned, factor):
    """A time that is read off a clock: a few steps, each with a scatter of its own that no logarithm made."""
    steps = chance.randint(2, 5)
    return sum(planned / steps * factor * chance.gammavariate(20, 1 / 20) for _ in range(steps))


def workshop(seed, count):
    """True factors, and runs in whole minutes: good days and bad ones, and now
    and then somebody is called away.
    """
    chance = random.Random(seed)
    true = {kind: chance.uniform(0.7, 2.0) for kind in (SET_UP, *WORK)}
    runs = []
    for at in range(count):
        style = chance.choice(("milled", "drilled", "mixed", "fitted"))
        planned = (
            chance.uniform(3, 40) * (0.3 if style == "drilled" else 1),
            chance.uniform(2, 30) * (0.3 if style == "milled" else 1),
            chance.uniform(1, 20) * (2 if style == "fitted" else 0.7),
        )
        to_set, day = chance.uniform(8, 30), chance.gauss(1, 0.05)
        cut = day * sum(
            on_the_clock(chance, part, true[kind]) for part, kind in zip(planned, WORK, strict=True)
        )
        cut += chance.uniform(3, 10) if chance.random() < 0.06 else 0.0
        setting = day * on_the_clock(chance, to_set, true[SET_UP])
        runs.append(
            Timed(date="2026-11-30", set_up=to_set * 60, milling=planned[0] * 60, holes=planned[1] * 60, hand=planned[2] * 60,
                  setting_up=round(setting) * 60.0, cutting=round(cut) * 60.0, id=str(at))
        )  # fmt: skip
    # What the work together takes in this workshop, in the mix that it has.
    true[TOGETHER] = sum(
        part * true[kind] for one in runs for part, kind in zip(one.work, WORK, strict=True)
    ) / sum(sum(one.work) for one in runs)
    return true, runs


def within(count, share=0.15):
    """Of every kind: how many factors were said, and how many of them are so near to the true one."""
    said: dict[str, list[bool]] = {}
    for seed in range(WORKSHOPS):
        true, runs = workshop(seed, count)
        for one in paces(runs):
            said.setdefault(one.kind, []).append(abs(one.factor / true[one.kind] - 1) <= share)
    return {kind: (len(hits), sum(hits) / len(hits)) for kind, hits in said.items()}


def test_after_eight_runs_nine_of_ten_factors_are_within_fifteen_per_cent():
    found = within(8)
    assert found[SET_UP][0] == found[TOGETHER][0] == WORKSHOPS
    assert found[SET_UP][1] >= 0.97
    assert found[TOGETHER][1] >= 0.9
    several = [one for kind, one in found.items() if kind in WORK]
    hits, count = sum(n * share for n, share in several), sum(n for n, _ in several)
    assert hits >= 0.9 * count


def test_after_twenty_runs_most_workshops_have_milling_told_apart_and_it_is_right():
    found = within(20)
    assert found["milling"][0] >= WORKSHOPS / 2
    assert found["milling"][1] >= 0.93


def test_eight_of_ten_runs_lie_in_the_spread():
    inside = count = 0
    for seed in range(WORKSHOPS):
        _, runs = workshop(seed, 21)
        found = {one.kind: one for one in paces(runs[:20])}
        inside += found[SET_UP].low <= runs[20].setting_up / runs[20].set_up <= found[SET_UP].high
        count += 1
    assert 0.72 <= inside / count <= 0.92


def test_nothing_is_said_of_fewer_than_five():
    _, runs = workshop(1, LEAST - 1)
    assert paces(runs) == ()
    only_set = [replace(one, cutting=None) for one in workshop(1, LEAST)[1]]
    assert [one.kind for one in paces(only_set)] == [SET_UP]


def test_exact_clocks_give_the_exact_factor():
    runs = [Timed(date="d", set_up=600.0, milling=900.0, holes=300.0, hand=60.0, setting_up=900.0, cutting=2520.0, id=str(n)) for n in range(6)]  # fmt: skip
    found = {one.kind: one.factor for one in paces(runs)}
    assert found[SET_UP] == pytest.approx(1.5)
    assert found[TOGETHER] == pytest.approx(2.0)


def test_a_record_of_an_earlier_day_says_nothing_of_what_was_planned(tmp_path):
    path = tmp_path / "part.yaml"
    record(
        path,
        (
            Entry(
                job="P",
                plan="",
                revision=0,
                machine="bench-mill-b-1",
                date="2026-11-29",
                about="minutes",
                cutting=600.0,
            ),
        ),
    )
    assert timed(read_runs(path)[0]) == ()
    assert paces(timed(Runs())) == ()


def clocked(count, *, setting_up=900.0, cutting=2520.0, **more):
    return [Timed(date="d", **{"set_up": 600.0, "milling": 900.0, "holes": 300.0, "hand": 60.0} | more, setting_up=setting_up, cutting=cutting, id=str(at)) for at in range(count)]  # fmt: skip


def test_five_runs_are_enough_and_four_are_not():
    assert [one.kind for one in paces(clocked(5))][:2] == [SET_UP, TOGETHER]
    assert paces(clocked(4)) == ()
    # One of them whose clock, or whose plan, says nothing does not count.
    assert paces([*clocked(4), *clocked(1, setting_up=None, cutting=None)]) == ()
    assert paces([*clocked(4), *clocked(1, set_up=0.0, milling=0.0, holes=0.0, hand=0.0)]) == ()


def test_clocks_that_all_agree_still_have_the_scatter_of_a_wall_clock():
    """exp(± 1.28 × 0.05) = 0.938 and 1.066 about the factor of 900 / 600 = 1.5."""
    (found, *_) = paces(clocked(6))
    assert (found.factor, found.runs) == (pytest.approx(1.5), 6)
    assert found.low == pytest.approx(1.5 * 0.938, rel=1e-3)
    assert found.high == pytest.approx(1.5 * 1.066, rel=1e-3)


def test_two_clocks_that_differ():
    """Six of 1 and 4 in turn: the middle of the logarithms is 2; each is ln 2 off, so the spread is √(6 × 0.4805 / 5 + 0.0025)."""
    runs = [one for _ in range(3) for one in (*clocked(1, setting_up=600.0), *clocked(1, setting_up=2400.0))]
    (found, *_) = paces(runs)
    assert found.factor == pytest.approx(2.0)
    assert found.high == pytest.approx(
        2.0 * 2.718281828 ** (1.28 * (6 * 0.480453 / 5 + 0.0025) ** 0.5), rel=1e-5
    )
    assert found.words() == f"set-up × 2 ({found.low:.2g} to {found.high:.2g} in eight of ten, 6 runs)"


def test_a_kind_that_alone_was_worked_is_told_apart_and_the_others_are_not():
    """Sixteen runs of milling alone, each twice as long as planned."""
    found = {one.kind: one for one in paces(clocked(16, holes=0.0, hand=0.0, cutting=1800.0))}
    assert set(found) == {SET_UP, TOGETHER, "milling"}
    assert found["milling"].factor == pytest.approx(2.0)


def test_only_minutes_with_what_was_planned_are_read():
    base = Entry(job="P", plan="", revision=0, machine="m", date="2026-11-29", about="minutes", cutting=600.0, planned_set_up=60.0, planned_by_hand=30.0)  # fmt: skip
    one = timed_of(base)
    assert (one.set_up, one.work, one.setting_up, one.cutting) == (60.0, (0.0, 0.0, 30.0), None, 600.0)
    assert timed_of(replace(base, about="step")) is None
    assert timed_of(replace(base, planned_set_up=None)) is None
