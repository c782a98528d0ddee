"""Sensible numbers for every input of every formula, SI, so that one test can call them all."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from jobsheet.cutting.formula import formula_of

BY_UNIT = {
    "-": 0.8,
    "m": 2e-3,
    "m/rev": 1e-3,
    "m/s": 0.4,
    "m^3/s": 1e-7,
    "m^3/J": 0.4e-9,
    "rev/s": 8.0,
    "Hz": 80.0,
    "s": 20.0,
    "N": 300.0,
    "N*m": 5.0,
    "N/m": 8e6,
    "W": 400.0,
    "Pa": 1800e6,
    "J/m^3": 2e9,
    "rad": 1.2,
    "K": 10.0,
    "1/K": 12e-6,
}
BY_NAME = {
    "diameter": 10e-3,
    "width": 6e-3,
    "insert": 12e-3,
    "length": 40e-3,
    "flute_length": 20e-3,
    "pitch_diameter": 18e-3,
    "pilot": 4e-3,
    "tip": 1e-3,
    "major": 10e-3,
    "hole": 8.5e-3,
    "pitch": 1.5e-3,
    "feed_per_tooth": 0.05e-3,
    "chip": 0.05e-3,
    "teeth": 4,
    "edges": 4,
    "strokes": 3,
    "kd": 20000,
    "k": 2.22,
    "mc": 0.25,
    "wear": 1.1,
    "friction": 0.15,
    "collar_friction": 0.12,
    "chisel_ratio": 0.18,
    "chisel": 6e-3,
    "exponent": 0.25,
    "start": 0.3,
    "end": 1.4,
    "helix": 0.5,
    "half_angle": 0.5,
    "rake": 0.1,
    "thrust": 1500.0,
    "damping": 0.04,
    "force": 300.0,
}


def sample(function: Callable[..., Any]) -> dict[str, float]:
    """One value for each input."""
    inputs = formula_of(function).inputs
    return {name: BY_NAME.get(name, BY_UNIT[quantity.unit]) for name, quantity in inputs.items()}
