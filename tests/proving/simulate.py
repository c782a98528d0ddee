"""Invented machines whose truth is known, and ladders climbed on them by the program's own rule.

`AS_ASSUMED` draws them as the program assumes them. `OTHERWISE` does not: card and class are off by 1.5, up
or down; a process lies further from its machine (0.35 where 0.25 is assumed); a trial scatters like
Student's t with four degrees of freedom; one outcome in twenty is noted wrongly. `WORSE` has all that on
top of the spread of machines that is assumed, so that they lie half as far again from their cards as
anybody thinks: more than the issue asks.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from jobsheet.model.capacity import Capacity
from jobsheet.model.shop import Shop
from jobsheet.model.trials import Asked, Trial
from jobsheet.proving.assumed import BIAS, NOISE, PRIOR_SPREAD, WRONG
from jobsheet.proving.learned import snapshot
from jobsheet.proving.rungs import next_share
from jobsheet.reckoning.known_capacity import prior

TODAY, SHOP = "2026-11-25", Shop()
ENDS = {"spindle-torque": "slowed", "chatter": "chatter"}
PROCESSES = ("side", "face")


@dataclass(frozen=True)
class World:
    """How machines are drawn: spreads of ln, the freedom of Student's t (none:
    normal), and what is noted wrongly.

    `off` is how far card or class are off, up or down; `spreads` whether machines scatter beside that.
    """

    bias: float = BIAS
    noise: float = NOISE
    freedom: float | None = None
    wrong: float = WRONG
    off: float = 1.0
    spreads: bool = True


AS_ASSUMED = World()
OTHERWISE = World(bias=0.35, freedom=4.0, wrong=0.05, off=1.5, spreads=False)
WORSE = World(bias=0.35, freedom=4.0, wrong=0.05, off=1.5)


@dataclass(frozen=True)
class Found:
    """What came of many ladders: shares of all [0..1]; overshoot as a part of the true capacity.

    `noted` are the rungs with a bad end on paper, `ended` those that did end so; they
    differ by the wrong notes. `below` is the truth below the band, which matters at the
    machine; above it the work is only slower.
    """

    ladders: int
    rungs: int
    held: float
    below: float
    ended: float
    noted: float
    overshoot: float
    overshoot_of_ladders: float


def climb(limit: str, world: World, machines: int, seed: int) -> Found:
    """Two ladders on each machine, one a process, of three to eight rungs each."""
    draw = np.random.default_rng(seed)
    held, below, ended, noted = 0, 0, 0, 0
    rungs: list[float] = []
    ladders: list[float] = []
    for _ in range(machines):
        machine = math.log(world.off) * (1 if draw.random() < 0.5 else -1)
        machine += PRIOR_SPREAD[limit] * draw.standard_normal() * world.spreads
        trials: list[Trial] = []
        truths = {}
        for process in PROCESSES:
            truth = truths[process] = machine - world.bias * draw.standard_normal()
            last, most = None, 0.0
            for _ in range(int(draw.integers(3, 9))):
                share = next_share(_known(trials, limit, process), last)
                if share is None:
                    break
                noise = draw.standard_normal() if world.freedom is None else draw.standard_t(world.freedom)
                ends = math.log(share) + world.noise * noise > truth
                says_so = ends != (draw.random() < world.wrong)
                ended += ends
                noted += says_so
                most = max(most, share)
                rungs.append(max(0.0, share / math.exp(truth) - 1))
                trials.append(_trial(limit, process, share, ENDS[limit] if says_so else "clean"))
                if says_so:
                    break
                last = share
            ladders.append(max(0.0, most / math.exp(truth) - 1))
        for process, truth in truths.items():
            known = _known(trials, limit, process)
            held += known.low <= math.exp(truth) <= known.high
            below += math.exp(truth) < known.low
    many = len(ladders)
    return Found(
        many, len(rungs), held / many, below / many, ended / len(rungs), noted / len(rungs), float(np.mean(rungs)),
        float(np.mean(ladders)),
    )  # fmt: skip


def _known(trials: list[Trial], limit: str, process: str) -> Capacity:
    found = snapshot(trials, "m", TODAY, SHOP).find(limit, process, "end mill") if trials else None
    return found or prior(limit, process, "end mill")


def _trial(limit: str, process: str, share: float, outcome: str) -> Trial:
    return Trial(
        machine="m", date=TODAY, process=process, cutter="end mill 12 mm", cutter_kind="end mill", material="S235",
        outcome=outcome, asked=(Asked(limit, share, share),),
    )  # fmt: skip
