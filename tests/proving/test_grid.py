"""The posterior on its grid."""

from __future__ import annotations

import math

import numpy as np
import pytest
from scipy.special import ndtr

from jobsheet.proving.assumed import NOISE, PRIOR_SPREAD
from jobsheet.proving.chance import chance_over
from jobsheet.proving.grid import Said, posterior
from tests.proving.trials import taught, trial

EVIDENCE = {
    "nothing much": ("slipped 0.5",),
    "one clean": ("clean 0.6",),
    "narrow": ("clean 0.8", "clean 0.9", "clean 0.95", "chatter 1.0", "chatter 1.05", "chatter 1.1"),
    "two humps": ("clean 2.0", "chatter 0.5"),
    "a sharp edge and a long tail": ("clean 0.9", "clean 0.92", "clean 0.94", "clean 0.96"),
    "a first rung": ("chatter 0.4",),
    "noisy": ("clean 0.7", "noisy 0.8"),
}


@pytest.mark.parametrize("extra", [0.0, 0.2])
@pytest.mark.parametrize("name", EVIDENCE)
def test_cells_keep_every_chance_to_a_thousandth(name, extra):
    """Against all cells of the grid, with scipy's normal distribution."""
    words = [one.split() for one in EVIDENCE[name]]
    found = taught(*(trial(word, chatter=float(share)) for word, share in words)).capacities[0]
    sides = {"clean": "above", "chatter": "below", "noisy": "near"}
    said = [Said(sides[word], math.log(float(share))) for word, share in words if word in sides]
    whole = posterior({("side", "end mill"): said}, PRIOR_SPREAD["chatter"])
    weights = whole.processes["side", "end mill"]
    assert len(found.cells) <= 200
    for share in np.exp(np.linspace(-4, 4, 801)):
        exact = float((weights * ndtr((math.log(share) - whole.places) / math.hypot(NOISE, extra))).sum())
        assert chance_over(found, float(share), extra) == pytest.approx(exact, abs=0.001)
