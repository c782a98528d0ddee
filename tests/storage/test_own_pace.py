"""Factors on times that a person took over: kept until taken back; a broken file is as good as none."""

from __future__ import annotations

import pytest

from jobsheet.paths import own_folder
from jobsheet.storage.kept import own_pace as own
from jobsheet.storage.kept.own_pace import NAME, OwnPace, keep_pace, own_pace


def read_again():
    own._read.clear()
    return own_pace()


def test_what_was_taken_over_is_there_at_the_next_start_and_gone_once_taken_back():
    assert own_pace() is None
    pace = OwnPace(set_up=1.4, work=1.1, runs=8, day="2026-11-30")
    keep_pace(pace)
    assert own_pace() == pace
    assert read_again() == pace
    keep_pace(None)
    assert read_again() is None


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"set_up": "x"}', '{"set_up": 0.01, "work": 1}', '{"set_up": 1, "work": 400}']
)
def test_a_broken_file_or_a_factor_that_nobody_can_mean_is_none(text):
    own_folder().mkdir(parents=True, exist_ok=True)
    (own_folder() / NAME).write_text(text, encoding="utf-8")
    assert read_again() is None


@pytest.mark.parametrize(("factor", "fits"), [(0.05, False), (0.051, True), (19.9, True), (20, False)])
def test_factors_lie_between_a_twentieth_and_twenty(factor, fits):
    own_folder().mkdir(parents=True, exist_ok=True)
    for name, other in (("set_up", "work"), ("work", "set_up")):
        text = f'{{"{name}": {factor}, "{other}": 1}}'
        (own_folder() / NAME).write_text(text, encoding="utf-8")
        assert (read_again() is not None) == fits, text
