"""The posterior against solutions that share nothing with it: scipy's quadrature, and
a weighted sample of a fixed seed.

Twelve cases. The outside value is the weight below the program's 5, 50 and 95 %: it has to be just that.
"""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.integrate import dblquad
from scipy.special import ndtr

from jobsheet.model.shop import Shop
from tests.proving.trials import TODAY, taught, trial

#: Written down here again, from design and scenario, so that a slip in the program's constants is noticed.
SPREAD = {"torque": 0.35, "chatter": 0.7}
LIMIT = {"torque": "spindle-torque", "chatter": "chatter"}
BIAS, NOISE, WRONG, RUNG = 0.25, 0.12, 0.03, 1.25
TENTHS = (0.05, 0.5, 0.95)


def likelihood(word, demand, capacity):
    """The chance of an outcome: clean (c), over (o) or near (n) this share, at that ln capacity."""
    ahead = (capacity - math.log(demand)) / NOISE
    near = math.log(RUNG) / NOISE
    right = {"c": ndtr(ahead), "o": ndtr(-ahead), "n": ndtr(ahead + near) - ndtr(ahead - near)}[word]
    return (1 - WRONG) * right + WRONG * (1 - right)


OUTCOME = {
    ("c", "torque"): "clean", ("o", "torque"): "slowed", ("c", "chatter"): "clean", ("o", "chatter"): "chatter",
    ("n", "chatter"): "noisy",
}  # fmt: skip

ONE_PROCESS = {
    "one clean": ("torque", "c0.60"),
    "a ladder that slowed": ("torque", "c0.5 c0.62 c0.78 o0.97"),
    "a first rung that chattered": ("chatter", "o0.38"),
    "a noisy one near the end": ("chatter", "c0.5 c0.8 n1.0"),
    "contradictory": ("torque", "o0.6 c1.2"),
    "contradictory and noisy": ("chatter", "n0.5 c1.6 o0.9 n2.5"),
}


@pytest.mark.parametrize("case", ONE_PROCESS)
def test_one_process_against_quadrature(case):
    limit, words = ONE_PROCESS[case]
    trials = [(word[0], float(word[1:])) for word in words.split()]
    found = taught(*(trial(OUTCOME[word, limit], **{limit: share}) for word, share in trials)).capacities[0]

    def weight(bias, machine):
        told = math.exp(-0.5 * ((machine / SPREAD[limit]) ** 2 + (bias / BIAS) ** 2))
        for word, share in trials:
            told *= likelihood(word, share, machine - bias)
        return told

    reach, tilt = 7 * SPREAD[limit], 7 * BIAS

    def below(place):  # machine − bias < place, so bias > machine − place
        def least(machine):
            return max(-tilt, min(tilt, machine - place))

        return dblquad(weight, -reach, reach, least, tilt, epsabs=1e-7, epsrel=1e-5)[0]

    whole = below(2 * (reach + tilt))
    for value, part in zip((found.low, found.median, found.high), TENTHS, strict=True):
        assert below(math.log(value)) / whole == pytest.approx(part, abs=5e-4)


#: Trials of several processes, each with its outcomes, and how many days ago.
SEVERAL = {
    "two processes": ("torque", {"side": "c0.5 c0.62 o0.78", "face": "c0.7"}, {}),
    "three that disagree": ("chatter", {"side": "c1.5 c1.9", "face": "o0.5", "slot": "n0.8"}, {}),
    "another that was never tried": ("torque", {"tap": "c0.6036 o0.7042"}, {}),
    "five processes": (
        "torque",
        {"side": "c0.6", "face": "c0.8 c1.0", "slot": "o0.9", "drill": "c0.4", "tap": "o0.6"},
        {},
    ),
    "proof of three years ago": ("torque", {"side": "c0.6 c0.75 o0.9"}, {"side": (1096, 1096, 1096)}),
    "old and new proof": ("chatter", {"side": "c0.9 o1.1 c0.8", "face": "c1.0"}, {"side": (1461, 1461, 30), "face": (731,)}),
}  # fmt: skip
AGEING, DRAWS = 0.2, 1_000_000


def drawn(limit, processes, ages):
    """Capacities today of each process, of one never tried and of the machine, and the weight of every draw.

    What a capacity was is walked back from what it is today, so that old proof fades
    into card or class, and no further.
    """
    draw = np.random.default_rng(5)
    machine = SPREAD[limit] * draw.standard_normal(DRAWS)
    weight = np.ones(DRAWS)
    today = {"": machine - BIAS * draw.standard_normal(DRAWS), "machine": machine}
    for process, words in processes.items():
        capacity = today[process] = machine - BIAS * draw.standard_normal(DRAWS)
        trials = [(word[0], float(word[1:])) for word in words.split()]
        days, after = ages.get(process, (0,) * len(trials)), 0
        for (word, share), age in sorted(zip(trials, days, strict=True), key=lambda one: one[1]):
            capacity = capacity + AGEING * math.sqrt((age - after) / 365.25) * draw.standard_normal(DRAWS)
            after = age
            weight *= likelihood(word, share, capacity)
    return today, weight


def dated(age):
    from datetime import date, timedelta

    return (date.fromisoformat(TODAY) - timedelta(days=age)).isoformat()


@pytest.mark.parametrize("case", SEVERAL)
def test_several_processes_against_a_weighted_sample(case):
    limit, processes, ages = SEVERAL[case]
    trials = [
        trial(OUTCOME[word[0], limit], process=process, date=dated(age), **{limit: float(word[1:])})
        for process, words in processes.items()
        for word, age in zip(words.split(), ages.get(process, (0,) * 9), strict=False)
    ]
    found = taught(*trials, shop=Shop(proof_ageing=AGEING))
    today, weight = drawn(limit, processes, ages)
    whole = weight.sum()
    bands = {one.process: (one.low, one.median, one.high) for one in found.capacities}
    bands["machine"] = found.find(LIMIT[limit], "", "").machine
    assert set(bands) == {"", "machine", *processes}
    for process, band in bands.items():
        for value, part in zip(band, TENTHS, strict=True):
            under = today[process] < math.log(value)
            share = (weight * under).sum() / whole
            error = math.sqrt((weight**2 * (under - share) ** 2).sum()) / whole
            assert error < 0.0025  # the sample can tell
            assert share == pytest.approx(part, abs=4 * error)
