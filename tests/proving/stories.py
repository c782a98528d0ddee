"""A ladder and its finer one on drawn machines, and a year of ordinary jobs; the truth is
drawn outside the program's model.

A cut rings where its demand, as it repeats, is over the truth; seven times in ten it is written down as
ringing, else as noisy, and three times in ten a cut within 15 % under it is noisy too. Card or class may be
off, a trial may repeat otherwise than assumed, and some outcomes are noted as their opposite.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np

from jobsheet.model.capacity import Capacity
from jobsheet.model.shop import Shop
from jobsheet.model.trials import Asked, Trial
from jobsheet.proving.assumed import BIAS, DAY, NOISE, PRIOR_SPREAD, WRONG, WRONG_AT_WORK
from jobsheet.proving.learned import snapshot
from jobsheet.proving.rungs import finer_share, next_share
from jobsheet.reckoning.known_capacity import prior

TODAY, SHOP = "2026-11-25", Shop()
#: How a limit is said to have given out, and nearly; the spindle has no sign that it nearly slows.
ENDS = {"spindle-torque": ("slowed", "slowed"), "chatter": ("chatter", "noisy")}
MOST, FINEST = 30, 8
HARD = math.log(1.08)


@dataclass(frozen=True)
class Cell:
    """How machines are drawn: card or class times `off`, a trial repeating within
    `noise`, so many outcomes noted wrongly.
    """

    off: float = 1.0
    noise: float = NOISE
    wrong: float = WRONG


@dataclass
class Told:
    """Of all machines: shares [0..1] but for `ratio`, high over low at the
    middle machine, and counts of cuts.
    """

    held: float = 0.0
    within: float = 0.0
    planned_over: float = 0.0
    hard: float = 0.0
    ratio: float = 0.0
    cuts: list[int] = field(default_factory=list)


class Machine:
    """One limit of one drawn machine in one process."""

    def __init__(self, limit: str, cell: Cell, draw: np.random.Generator) -> None:
        self.limit, self.cell, self.draw = limit, cell, draw
        self.truth = (
            math.log(cell.off) + PRIOR_SPREAD[limit] * draw.standard_normal() - BIAS * draw.standard_normal()
        )
        self.trials: list[Trial] = []
        self.hard = 0

    def known(self, today: str = TODAY) -> Capacity:
        if not self.trials:
            return prior(self.limit, "side", "end mill")
        found = snapshot(self.trials, "m", today, SHOP).find(self.limit, "side", "end mill")
        assert found is not None
        return found

    def cut(
        self, share: float, *, date: str = TODAY, job: str = "", day: float = 0.0, wrong: float | None = None
    ) -> bool:
        """Whether it was written down as clean."""
        draw = self.draw
        self.hard += math.log(share) - self.truth > HARD
        over = math.log(share) + day + self.cell.noise * draw.standard_normal() - self.truth
        ringing, noisy = ENDS[self.limit]
        if over > 0:
            outcome = ringing if draw.random() < 0.7 else noisy
        else:
            outcome = noisy if over > -0.15 and draw.random() < 0.3 and noisy != ringing else "clean"
        if draw.random() < (self.cell.wrong if wrong is None else wrong):
            outcome = ringing if outcome == "clean" else "clean"
        self.trials.append(
            Trial(machine="m", date=date, process="side", cutter="end mill 12 mm", cutter_kind="end mill", material="S235",
                  outcome=outcome, asked=(Asked(self.limit, share, share),), job=job, id=str(len(self.trials)))
        )  # fmt: skip
        return outcome == "clean"

    def ladder(self) -> int:
        """A ladder by the program's own rule; how many cuts it took."""
        before, last = len(self.trials), self.known().since or None
        while len(self.trials) < MOST and (share := next_share(self.known(), last)) is not None:
            if not self.cut(share):
                break
            last = share
        return len(self.trials) - before

    def finer(self) -> None:
        """And the finer one after it."""
        for _ in range(FINEST):
            known = self.known()
            share = finer_share(known, known.since)
            if share is None or not self.cut(share):
                break


def ladder_and_finer(limit: str, cell: Cell, machines: int, seed: int) -> Told:
    """The ladder by the program's own rule, and after its first sign the finer one."""
    draw = np.random.default_rng(seed)
    told, ratios, cuts, hard = Told(), [], 0, 0
    for _ in range(machines):
        one = Machine(limit, cell, draw)
        told.cuts.append(one.ladder())
        one.finer()
        if (
            not one.known().bad and len(one.trials) < MOST
        ):  # what ended the first does not fit: a second one is offered
            one.ladder()
            one.finer()
        known = one.known()
        truth = math.exp(one.truth)
        told.held += (known.low <= truth <= known.high) / machines
        told.within += (abs(math.log(known.median) - one.truth) <= math.log(1.15)) / machines
        told.planned_over += (known.planned > truth) / machines
        ratios.append(known.high / known.low)
        cuts, hard = cuts + len(one.trials), hard + one.hard
    told.ratio = float(np.median(ratios))
    told.hard = hard / cuts
    return told


def year_of_jobs(
    limit: str, machines: int, seed: int, *, days: int = 40, steps: int = 3
) -> tuple[float, float]:
    """How often nine in ten hold the truth, and how often it lies above them,
    after a year of jobs without a ladder.

    Each step asks from a fifth of what is planned to all of it.
    """
    draw = np.random.default_rng(seed)
    held = above = 0
    for _ in range(machines):
        one = Machine(limit, Cell(), draw)
        planned = one.known().planned or 0.38
        for day in sorted(draw.integers(1, 365, days).tolist(), reverse=True):
            date = str(np.datetime64(TODAY) - day)
            of_day = DAY * draw.standard_normal()
            for _ in range(steps):
                one.cut(
                    planned * draw.uniform(0.2, 1.0),
                    date=date,
                    job="HM-100, plan 1",
                    day=of_day,
                    wrong=WRONG_AT_WORK,
                )
        known = one.known()
        held += known.low <= math.exp(one.truth) <= known.high
        above += math.exp(one.truth) > known.high
    return held / machines, above / machines


def wrong_entries_named(limit: str, machines: int, seed: int) -> float:
    """How often one wrong end in the middle of a clean ladder is named after at most
    three heavier cuts that were carried.
    """
    draw = np.random.default_rng(seed)
    named = asked = 0
    while asked < machines:
        one = Machine(limit, Cell(wrong=0.0), draw)
        share = next_share(one.known(), None)
        if share is None or math.log(share) > one.truth - 0.7:
            continue  # there has to be room for a wrong end and three heavier cuts under the truth
        asked += 1
        for factor in (1.0, 1.25):
            one.cut(share * factor, wrong=0.0)
        wrong = len(one.trials)
        one.cut(share * 1.25, wrong=1.0)
        for factor in (1.4, 1.6, 1.8):
            one.cut(share * factor, wrong=0.0)
            if str(wrong) in {doubt.trial for doubt in one.known().doubts}:
                named += 1
                break
    return named / machines
