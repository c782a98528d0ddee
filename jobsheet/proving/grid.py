"""The posterior on a grid of machine and bias: exact but for the grid's step, which is a tenth of the smallest spread.

All trials of one process see machine and bias only as their difference, its capacity. On a grid with one step for both,
the cells with the same difference therefore share one likelihood, and the sum over the bias is a sum along them:
a convolution. What several processes say about the machine they share is the product of these sums.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

import numpy as np
import numpy.typing as npt
from msgspec import Struct

from jobsheet.proving.assumed import BIAS, NEAR, NOISE, WRONG

Array = npt.NDArray[np.float64]
#: Step of ln capacity: a hundredth.
STEP = 0.01
#: The grid reaches so many spreads of machine and bias together to either side, and so far beyond the outermost demand.
_REACH, _BEYOND = 8.0, 2.0
#: Under this, beside the most likely, a likelihood is nothing; above zero, so that its logarithm exists.
_NOTHING = 1e-300
_DAYS = 365.25


class Said(Struct, frozen=True):
    """What one trial says: `above`, `below` or `near` this demand [ln of share], so many days ago."""

    says: str
    demand: float
    age: int = 0


class Posterior(Struct, frozen=True):
    """ln capacity [places] and the weights of the machine, of each process, and of one not yet tried.

    Each sums to one. What was not yet tried has a bias of its own, so that it is wider than the machine.
    """

    places: Array
    machine: Array
    untried: Array
    processes: Mapping[tuple[str, str], Array]


def posterior(
    said: Mapping[tuple[str, str], Sequence[Said]], spread: float, ageing: float = 0.0
) -> Posterior:
    """What is known of one limit after these trials of each process (with kind of cutter).

    Parameters
    ----------
    spread : float
        Of ln machine around card or class, before any trial
    ageing : float, optional
        Spread of ln capacity that a year adds: between two dates the capacity wanders, like sums of small steps
    """
    far = max((abs(one.demand) for trials in said.values() for one in trials), default=0.0)
    half = math.ceil(max(_REACH * math.hypot(spread, BIAS), far + _BEYOND) / STEP)
    places: Array = np.arange(-half, half + 1, dtype=np.float64) * STEP
    bias = _kernel(BIAS)
    prior = -0.5 * (places / spread) ** 2
    likely = {process: _likelihood(trials, places, ageing) for process, trials in said.items()}
    seen = {process: _log(_spread_out(one, bias)) for process, one in likely.items()}
    together = np.sum([prior, *seen.values()], axis=0)
    found = {}
    for process, one in likely.items():
        others = np.convolve(_weights(together - seen[process]), bias, mode="same")
        found[process] = _weights(_log(others) + _log(one))
    machine = _weights(together)
    return Posterior(places, machine, _weights(_log(np.convolve(machine, bias, mode="same"))), found)


def _likelihood(trials: Sequence[Said], places: Array, ageing: float) -> Array:
    """Of the capacity today, from the oldest trial on: what each day showed, blurred by the time until the next.

    Card and class are what is assumed of the capacity today, so that old proof fades into them and no further.
    """
    found = np.zeros_like(places)
    ages = sorted({one.age for one in trials}, reverse=True)
    for age, until in pairwise([*ages, 0]):
        for one in sorted((one for one in trials if one.age == age), key=lambda one: (one.demand, one.says)):
            found += np.log(_chance_of(one, places))
        drift = ageing * math.sqrt((age - until) / _DAYS)
        if drift > 0:
            found = _log(_spread_out(np.exp(found - found.max()), _kernel(drift)))
    return np.asarray(np.exp(found - found.max()))


def _chance_of(one: Said, places: Array) -> Array:
    """The chance of that outcome for every capacity; a wrong label keeps it from ever being none."""
    if one.says == "above":
        right = _normal((places - one.demand) / NOISE)
    elif one.says == "below":
        right = _normal((one.demand - places) / NOISE)
    else:
        ahead = places - one.demand
        right = _normal((ahead + NEAR) / NOISE) - _normal((ahead - NEAR) / NOISE)
    return (1 - WRONG) * right + WRONG * (1 - right)


def _normal(values: Array) -> Array:
    """Φ. numpy has no error function; the standard library's is exact and these are a thousand values."""
    return 0.5 * np.fromiter(map(math.erfc, (-values / math.sqrt(2)).tolist()), float, len(values))


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
    """The same in at most so many cells, each at its own centre of weight; next to nothing is left out at the ends."""
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
