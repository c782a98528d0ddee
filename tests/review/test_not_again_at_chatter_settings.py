"""Which trials speak against a cut, and which later one takes it back."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.review.rules.machine.not_again_at_chatter_settings import _as_much, _later_clean


def trial(
    *, demand=5.0, kind="end mill", out=0.040, speed=5.0, outcome="chatter", date="2026-05-02", time="10:00"
):
    asked = None if demand is None else SimpleNamespace(demand=demand)
    return SimpleNamespace(
        of=lambda name: asked if name == "chatter" else None,
        cutter_kind=kind,
        stick_out=out,
        speed=speed,
        outcome=outcome,
        date=date,
        time=time,
    )


def step(*, kind="end mill", out=0.040, speed=5.0):
    cutter = SimpleNamespace(kind=kind, stick_out=out)
    return SimpleNamespace(
        fields=SimpleNamespace(cutter=cutter), figure=lambda name: speed if name == "spindle_speed" else None
    )


@pytest.mark.parametrize(
    ("rang", "planned", "speaks"),
    [
        ({}, {}, True), ({"demand": 5.001}, {}, False), ({"demand": 4.0}, {}, True), ({"demand": None}, {}, False), ({"kind": "face mill"}, {}, False),
        # As far out or less, as fast or slower; what the log does not say does not speak for the cut.
        ({"out": 0.041}, {}, False), ({"out": 0.039}, {}, True), ({"out": None}, {}, True), ({}, {"out": None}, False), ({"out": None}, {"out": None}, True),
        ({"speed": 5.01}, {}, False), ({"speed": 4.0}, {}, True), ({"speed": None}, {}, True), ({}, {"speed": None}, True),
    ],
)  # fmt: skip
def test_a_trial_speaks_against_what_is_no_lighter_in_anything(rang, planned, speaks):
    assert _as_much(trial(**rang), step(**planned), 5.0) is speaks


@pytest.mark.parametrize(
    ("later", "clean"),
    [
        ({}, True), ({"demand": 4.999}, False), ({"demand": 6.0}, True), ({"demand": None}, False), ({"outcome": "noisy"}, False),
        ({"outcome": "chatter"}, False), ({"kind": "face mill"}, False), ({"date": "2026-05-02", "time": "10:01"}, True),
        ({"date": "2026-05-02", "time": "10:00"}, False), ({"date": "2026-05-01", "time": "12:00"}, False),
    ],
)  # fmt: skip
def test_only_a_later_clean_cut_of_its_kind_that_asked_as_much_takes_it_back(later, clean):
    one = trial(**{"outcome": "clean", "date": "2026-05-03", **later})
    rang = trial()
    assert _later_clean((rang, one), rang, 5.0, step()) is clean
    assert _later_clean((one, rang), rang, 5.0, step()) is clean
    assert _later_clean((), rang, 5.0, step()) is False
