"""The posterior on a grid of machine and bias: exact but for the grid's step, which
is a quarter of the smallest spread.

All trials of one process see machine and bias only as their difference, its capacity. On a grid with
one step for both, the cells with the same difference therefore share one likelihood, and the sum
over the bias is a sum along them: a convolution. What several processes say about the machine they
share is the product of these sums.

How well a trial repeats is learned where one was repeated: all of it is then done for each of a few spreads
of a trial, and each counts by how well it explains what happened. Until then the usual one holds.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

import numpy as np
import numpy.typing as npt
from msgspec import Struct

from jobsheet.proving.assumed import (
    BIAS,
    CHANGED,
    DAY,
    NEAR,
    NOISE,
    REPEATS,
    SAME_CUT,
    WRONG,
    WRONG_AT_WORK,
    WRONG_THOUGH_KEPT,
)
from jobsheet.remembered import remembered

Array = npt.NDArray[np.float64]
#: Step of ln capacity: a hundredth.
STEP = 0.01
#: The grid reaches so many spreads of machine and bias together to either side, and
#: so far beyond the outermost demand.
_REACH, _BEYOND = 8.0, 2.0
#: Under this, beside the most likely, a likelihood is nothing; above zero, so that its logarithm exists.
_NOTHING = 1e-300
_DAYS = 365.25


class Said(Struct, frozen=True):
    """What one trial says: `above`, `below` or `near` this demand [ln of share], so many days ago.

    `job` is how a step of ordinary work went; `changes` is how often the machine changed since, in what
    concerns the limit; `kept` that it seemed odd and was said to be so all the same.
    """

    says: str
    demand: float
    age: int = 0
    job: bool = False
    changes: int = 0
    kept: bool = False

    @property
    def wrong(self) -> float:
        """The chance that it was noted wrongly [0..1]."""
        if self.kept:
            return WRONG_THOUGH_KEPT
        return WRONG_AT_WORK if self.job else WRONG


Process = tuple[str, str]


class Posterior(Struct, frozen=True):
    """ln capacity [places] and the weights of the machine, of each process, and of one not yet tried.

    Each sums to one. What was not yet tried has a bias of its own, so that it is wider than the machine.
    `noise` is how a trial repeats by all of them, a standard deviation of its logarithm.
    """

    places: Array
    machine: Array
    untried: Array
    processes: Mapping[Process, Array]
    noise: float


def posterior(said: Mapping[Process, Sequence[Said]], spread: float, ageing: float = 0.0) -> Posterior:
    """What is known of one limit after these trials of each process (with kind of cutter).

    Parameters
    ----------
    spread : float
        Of ln machine around card or class, before any trial
    ageing : float, optional
        Spread of ln capacity that a year adds: between two dates the capacity
        wanders, like sums of small steps
    """
    places = _places(said, spread)
    assumed = REPEATS if _repeated(said) else ((NOISE, 1.0),)
    each = [_repeating(said, spread, ageing, places, noise) for noise, _ in assumed]
    how = _weights(
        np.array(
            [
                math.log(share) + repeating.explains
                for (_, share), repeating in zip(assumed, each, strict=True)
            ]
        )
    )
    mixed = [(float(share), repeating) for share, repeating in zip(how, each, strict=True)]
    noise = math.sqrt(sum(share * noise**2 for share, (noise, _) in zip(how.tolist(), assumed, strict=True)))
    return Posterior(
        places=places,
        machine=_sum([share * repeating.machine for share, repeating in mixed]),
        untried=_sum([share * repeating.untried for share, repeating in mixed]),
        processes={
            name: _sum([share * repeating.processes[name] for share, repeating in mixed]) for name in said
        },
        noise=noise,
    )


def fits(
    said: Mapping[Process, Sequence[Said]], spread: float, known: Posterior, process: Process
) -> list[float]:
    """For each trial of that process the chance [0..1] of what it says, by all the
    others; 1 where it cannot be small.

    At the usual spread of a trial, as what one slip says about how trials repeat is no part of it; and
    without what time has blurred since. What was before the machine changed is not asked: it fades anyhow.
    """
    places, bias = known.places, _kernel(BIAS)
    others = _prior(places, spread)
    for name, trials in said.items():
        if name != process:
            others = others + _log(_spread_out(_likelihood(trials, places, 0.0, NOISE)[0], bias))
    around = _log(np.convolve(_weights(others), bias, mode="same"))
    trials = said[process]
    right = [_right(trial, places, NOISE) for trial in trials]
    own = [
        np.log((1 - one.wrong) * chance + one.wrong * (1 - chance))
        for one, chance in zip(trials, right, strict=True)
    ]
    days: dict[int, list[int]] = {}
    for index, one in enumerate(trials):
        if not one.changes:
            days.setdefault(one.age, []).append(index)
    whole = {day: _together(trials, own, here) for day, here in days.items()}
    total = around + np.sum(list(whole.values()), axis=0) if whole else around
    found = []
    for index, one in enumerate(trials):
        likely = float((known.processes[process] * right[index]).sum())
        if one.changes or likely > _NEVER_ODD:
            found.append(1.0)
            continue
        here = [other for other in days[one.age] if other != index]
        rest = _weights(total - whole[one.age] + _together(trials, own, here))
        found.append(float((rest * right[index]).sum()))
    return found


#: What is as likely as this with the trial itself among the others is not odd without it: alone, it can lift
#: a chance of a slip of the pen to a half.
_NEVER_ODD = 0.55


def _together(trials: Sequence[Said], own: Sequence[Array], here: Sequence[int]) -> Array:
    """What these trials of one day say together."""
    found = np.zeros_like(own[0])
    work = np.zeros_like(own[0])
    for index in here:
        if trials[index].job:
            work += own[index]
        else:
            found += own[index]
    return found + _of_one_day(work) if any(trials[index].job for index in here) else found


def _of_one_day(work: Array) -> Array:
    """Steps of ordinary work share what is of the day: the metal, the fluid, the ear."""
    top = float(work.max())
    return _log(_spread_out(np.exp(work - top), _kernel(DAY))) + top


def _repeated(said: Mapping[Process, Sequence[Said]]) -> bool:
    """Whether a test cut was made twice: only that shows how well one repeats. Of ordinary
    work nobody knows what else was alike.
    """
    return any(
        second.demand - first.demand <= SAME_CUT
        for trials in said.values()
        for first, second in pairwise(
            sorted((trial for trial in trials if not trial.job), key=lambda one: one.demand)
        )
    )


def _places(said: Mapping[Process, Sequence[Said]], spread: float) -> Array:
    far = max((abs(trial.demand) for trials in said.values() for trial in trials), default=0.0)
    half = math.ceil(max(_REACH * math.hypot(spread, BIAS), far + _BEYOND) / STEP)
    return np.arange(-half, half + 1, dtype=np.float64) * STEP


class _Repeating(Struct, frozen=True):
    """The same for one spread of a trial; `explains` is the logarithm of how
    well that explains all trials.
    """

    machine: Array
    untried: Array
    processes: Mapping[Process, Array]
    explains: float


def _repeating(
    said: Mapping[Process, Sequence[Said]], spread: float, ageing: float, places: Array, noise: float
) -> _Repeating:
    bias = _kernel(BIAS)
    prior = _prior(places, spread)
    likely = {process: _likelihood(trials, places, ageing, noise) for process, trials in said.items()}
    seen = {process: _log(_spread_out(one, bias)) for process, (one, _) in likely.items()}
    together = np.sum([prior, *seen.values()], axis=0)
    top = float(together.max())
    explains = (
        top + math.log(float(np.exp(together - top).sum())) + sum(scale for _, scale in likely.values())
    )
    found = {}
    for process, (one, _) in likely.items():
        others = np.convolve(_weights(together - seen[process]), bias, mode="same")
        found[process] = _weights(_log(others) + _log(one))
    machine = _weights(together)
    return _Repeating(machine, _weights(_log(np.convolve(machine, bias, mode="same"))), found, explains)


def _prior(places: Array, spread: float) -> Array:
    """What is thought of a machine before any trial, as a logarithm: about its card or class."""
    return np.asarray(-0.5 * (places / spread) ** 2)


def _likelihood(trials: Sequence[Said], places: Array, ageing: float, noise: float) -> tuple[Array, float]:
    """Of the capacity today, from the oldest trial on: what each day showed,
    blurred by the time until the next.

    Card and class are what is assumed of the capacity today, so that old proof fades into them and no
    further. What was cut before the machine changed is blurred by that too. Also the logarithm that was
    taken out of it, so that its top is 1.
    """
    likelihood = np.zeros_like(places)
    taken = 0.0
    days = sorted({(said.age, said.changes) for said in trials}, reverse=True)
    for (age, changes), (until, left) in pairwise([*days, (0, 0)]):
        here = [said for said in trials if (said.age, said.changes) == (age, changes)]
        likelihood += _of_day(sorted(here, key=lambda said: (said.demand, said.says)), places, noise)
        drift = math.hypot(
            ageing * math.sqrt(max(0, age - until) / _DAYS), CHANGED * math.sqrt(max(0, changes - left))
        )
        if drift > 0:
            top = float(likelihood.max())
            taken += top
            likelihood = _log(_spread_out(np.exp(likelihood - top), _kernel(drift)))
    top = float(likelihood.max())
    return np.asarray(np.exp(likelihood - top)), taken + top


def _of_day(trials: Sequence[Said], places: Array, noise: float) -> Array:
    """What one day says, as a logarithm."""
    own = []
    for said in trials:
        right = _right(said, places, noise)
        own.append(np.log((1 - said.wrong) * right + said.wrong * (1 - right)))
    return _together(trials, own, range(len(trials)))


def _right(said: Said, places: Array, noise: float) -> Array:
    """The chance of that outcome for every capacity, rightly noted; a wrong
    label keeps it from ever being none.
    """
    if said.says == "above":
        return _normal((places - said.demand) / noise)
    if said.says == "below":
        return _normal((said.demand - places) / noise)
    ahead = places - said.demand
    return _normal((ahead + NEAR) / noise) - _normal((ahead - NEAR) / noise)


#: Φ at every thousandth of a spread, to nine spreads: between two of them it is
#: straight to 3 parts in 100,000,000.
_ENDS = 9.0
_AT = np.linspace(-_ENDS, _ENDS, 18_001)
_PHI = 0.5 * np.array([math.erfc(-one / math.sqrt(2)) for one in _AT.tolist()])


def _normal(values: Array) -> Array:
    """Φ. numpy has no error function; a table of the standard library's is a hundred times as quick."""
    return np.interp(values, _AT, _PHI)


def _sum(arrays: Sequence[Array]) -> Array:
    return np.asarray(np.sum(arrays, axis=0))


@remembered(256)
def _kernel(spread: float) -> Array:
    """A normal distribution on the grid's step, six spreads to either side; its sum is one."""
    half = math.ceil(6 * spread / STEP)
    found = np.exp(-0.5 * (np.arange(-half, half + 1) * STEP / spread) ** 2)
    return np.asarray(found / found.sum())


def _spread_out(likely: Array, kernel: Array) -> Array:
    """A likelihood through a kernel; beyond the grid's ends it stays as it is there."""
    return np.convolve(np.pad(likely, len(kernel) // 2, mode="edge"), kernel, mode="valid")


def _log(values: Array) -> Array:
    return np.asarray(np.log(np.maximum(values, _NOTHING)))


def _weights(logarithms: Array) -> Array:
    found = np.exp(logarithms - logarithms.max())
    return np.asarray(found / found.sum())


def quantiles(places: Array, weights: Array, wanted: Sequence[float]) -> list[float]:
    """Places below which that much of the weight lies; a cell's weight is spread over its width."""
    upto = np.concatenate(([0.0], np.cumsum(weights)))
    edges = np.concatenate((places - STEP / 2, [places[-1] + STEP / 2]))
    return [float(one) for one in np.interp(wanted, upto, edges)]


def compressed(places: Array, weights: Array, most: int) -> tuple[tuple[float, float], ...]:
    """The same in at most so many cells, each at its own centre of weight; next
    to nothing is left out at the ends.
    """
    low, high = quantiles(places, weights, (1e-6, 1 - 1e-6))
    inside = (places >= low - STEP) & (places <= high + STEP)
    places, weights = places[inside], weights[inside]
    each = math.ceil(len(places) / most)
    starts = np.arange(0, len(places), each)
    sums = np.add.reduceat(weights, starts)
    centres = np.add.reduceat(weights * places, starts) / sums
    total = float(sums.sum())
    return tuple(
        (float(place), float(weight) / total)
        for place, weight in zip(centres, sums, strict=True)
        if weight > 0
    )
