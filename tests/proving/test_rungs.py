"""What the next rung may ask."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.proving.chance import largest_share
from jobsheet.proving.rungs import next_share
from jobsheet.reckoning.known_capacity import prior
from tests.proving.trials import taught, trial


def test_the_next_rung_is_bound_by_growth_by_chance_or_ended():
    many = taught(*(trial("clean", torque=0.5) for _ in range(3)), trial("clean", torque=1.4)).capacities[0]
    assert next_share(many, 0.5) == pytest.approx(0.625)  # 1.25 times the last clean one
    few = taught(trial("clean", torque=0.57)).capacities[0]
    assert 0.57 < next_share(few, 0.57) == largest_share(few) < 0.57 * 1.25
    assert next_share(few, 0.9) is None  # more than the last clean one would be too much
    for outcome in ("slowed", "stalled", "broke", "slipped", "too hard to wind"):
        ended = taught(trial("clean", torque=0.5), trial(outcome, torque=0.6)).capacities[0]
        assert next_share(ended, 0.5) is None
    for outcome in ("noisy", "chatter"):
        ended = taught(trial("clean", chatter=0.5), trial(outcome, chatter=0.6)).capacities[0]
        assert next_share(ended, 0.5) is None


def test_nothing_known_allows_nothing():
    assert largest_share(replace(prior("chatter", "side", ""), cells=())) == 0
    assert next_share(replace(prior("chatter", "side", ""), cells=()), None) is None
