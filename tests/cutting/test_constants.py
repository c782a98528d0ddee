"""Constants and the ends of ranges, as their sources print them, in the units they print."""

from __future__ import annotations

import importlib
import inspect
from math import radians

import pytest

from jobsheet.cutting.formula import all_formulas, formula_of
from jobsheet.cutting.unit_power import EFFICIENCIES, WEAR_FACTORS

from .published_tables import CHISEL, DIAMETER_METRIC, FEED_METRIC

MM = 1e-3

# module, name, as printed, size of the printed unit, where
PRINTED = (
    ("chip", "SQUARE", 90, radians(1), "a square end mill"),
    ("deflection", "HSS_MODULUS", 207, 1e9, "200 to 210 GPa, remembered"),
    ("deflection", "CARBIDE_MODULUS", 580, 1e9, "550 to 600 GPa, remembered"),
    ("deflection", "FLUTED", 0.80, 1, "Kops and Vo"),
    ("drill_point", "STANDARD_POINT", 0.18, 1, "Machinery's Handbook, table 7"),
    ("drill_point", "SPLIT_POINT", 0.03, 1, "Machinery's Handbook, table 7"),
    ("heat", "ALUMINIUM_EXPANSION", 22, 1e-6, "22 to 23, remembered"),
    ("heat", "STEEL_EXPANSION", 12, 1e-6, "remembered"),
    ("clamping", "VICE_EFFICIENCY", 0.18, 1, "0.12 to 0.26 derived, plain collars"),
    ("clamping", "JAW_FRICTION", 0.12, 1, "smooth jaws, dry or oily"),
    ("clamping", "HOLDING_FACTOR", 2.5, 1, "Röhm, 2.5 at least"),
    ("quill", "LEVER_EFFICIENCY", 0.85, 1, "estimate"),
    ("strength", "HSS_RUPTURE", 3000, 1e6, "of 2400 to 4800 MPa, Kalpakjian remembered"),
    ("strength", "CARBIDE_RUPTURE", 2000, 1e6, "of 1050 to 2600 MPa, Kalpakjian remembered"),
    ("tapping", "FULL_THREAD", 3**0.5 * 0.75, 1, "0.75 H on both sides, H = 3^0.5 / 2 P"),
    ("tapping", "BASIC_THREAD", 3**0.5 * 0.625, 1, "ISO 68-1: 5/8 H on both sides"),
    ("toothforce", "RADIAL", 0.4, 1, "of 0.3 to 0.5, common practice"),
    ("reference", "HSS_SHEAR", 1200, 1e6, "MPa, estimate"),
    ("reference", "PECK", 3, 1, "s, common practice"),
    ("reference", "DRILL_RUN", 1, MM, "common practice"),
    ("reference", "TOOL_LIFE", 1, 60, "minute, Taylor"),
    ("reference", "EQUAL_POINT", 0.3, 1, "0.3 D, answer 9535 of OSG"),
    ("finish", "MEAN_OF_PEAK", 0.2566, 1, "4 / (9 * 3^0.5)"),
)


@pytest.mark.parametrize(("module", "name", "printed", "unit", "where"), PRINTED, ids=str)
def test_a_constant_is_the_printed_one(module, name, printed, unit, where):
    found = getattr(importlib.import_module(f"jobsheet.cutting.{module}"), name)
    assert found == pytest.approx(printed * unit, rel=1e-4), where


# What is taken where nothing is said: a sharp edge, a full thread's own angle, nothing there yet.
LEFT_OUT = {
    "wear": 1, "condition": 1, "direction": 1, "rake": 0, "pilot": 0, "tip": 0, "approach": 0, "edges": 2, "nut_factor": 0.20,
    "chisel_ratio": 0.18, "half_angle": radians(15), "friction": 0.12, "ratio": 0.80, "strokes": 1,
    "entering_angle": radians(90), "reference_cutter": 9.59e6,
}  # fmt: skip
LEFT_OUT_OF = {
    ("form-tap-torque", "factor"): 2.5,  # two to three times a cutting tap, Yamawa
    ("kienzle-drill-thrust", "factor"): 0.63,  # Iscar
    ("tap-torque", "half_angle"): radians(30),
    ("required-grip", "factor"): 2.5,
    ("vice-force", "efficiency"): 0.18,
    ("push-from-thrust", "efficiency"): 0.85,
    ("thrust-from-push", "efficiency"): 0.85,
}


def defaults():
    for name, function in all_formulas().items():
        for one in inspect.signature(function).parameters.values():
            if one.default is not one.empty:
                yield name, one.name, one.default


@pytest.mark.parametrize(
    ("formula", "name", "default"), [pytest.param(*one, id=f"{one[0]} {one[1]}") for one in defaults()]
)
def test_what_is_taken_where_nothing_is_said(formula, name, default):
    assert default == pytest.approx(LEFT_OUT_OF.get((formula, name), LEFT_OUT.get(name)), rel=1e-4)


WEAR = {
    "sharp": (1.00, 1.00), "end milling": (1.10, 1.10), "slab milling": (1.10, 1.10), "face milling, light": (1.10, 1.10),
    "face milling, medium": (1.25, 1.25), "face milling, heavy": (1.30, 1.60), "drilling": (1.30, 1.30), "drilling, dull": (1.50, 1.50),
}  # fmt: skip
SHARES = {
    "belt": (0.90, 0.90),
    "back gear": (0.75, 0.75),
    "geared head": (0.70, 0.80),
    "hydraulic": (0.60, 0.90),
}


@pytest.mark.parametrize(
    ("ours", "printed"), [(WEAR_FACTORS, WEAR), (EFFICIENCIES, SHARES)], ids=["wear", "drive"]
)
def test_the_handbooks_factors_are_the_middle_of_what_it_prints(ours, printed):
    assert {name: pytest.approx((low + high) / 2) for name, (low, high) in printed.items()} == ours


# --- the ends of ranges: those of the printed tables, and what each source says of itself -------------------

RATIO = (CHISEL[0][0], CHISEL[-1][0])  # table 7
FEED = (min(FEED_METRIC) * MM, max(FEED_METRIC) * MM)  # table 8
FACTOR = (min(DIAMETER_METRIC) * MM, max(DIAMETER_METRIC) * MM)  # table 9, metric
DRILL = (min(DIAMETER_METRIC) * MM, 40 * MM)  # table 9 goes on in inches: 1.5 in, near enough 40 mm
EDGES = (2, 6)  # Shaw and Oxford: two lips to six edges
TUNGALOY = {"feed": (0.05 * MM, 0.6 * MM), "diameter": (3 * MM, 40 * MM)}
DAMPING = {"damping": (0.005, 0.1)}  # 0.5 to 10 percent: what frames and holders have

RANGES = {
    "chisel-torque-factor": {"chisel_ratio": RATIO},
    "chisel-thrust-factor": {"chisel_ratio": RATIO},
    "chisel-indentation-factor": {"chisel_ratio": RATIO},
    "drill-feed-factor": {"feed": FEED},
    "drill-thrust-diameter-factor": {"diameter": FACTOR},
    "drill-torque-diameter-factor": {"diameter": FACTOR},
    "edges-factor": {"edges": EDGES},
    "drill-torque": {"feed": FEED, "diameter": DRILL, "chisel_ratio": RATIO},
    "drill-thrust": {"feed": FEED, "diameter": DRILL, "chisel_ratio": RATIO},
    "chisel-indentation": {"diameter": DRILL, "chisel_ratio": RATIO},
    "pilot-torque": {"feed": FEED, "diameter": DRILL, "edges": EDGES},
    "pilot-thrust": {"feed": FEED, "diameter": DRILL, "edges": EDGES},
    "feed-from-thrust": {"diameter": DRILL, "chisel_ratio": RATIO},
    "pilot-feed-from-thrust": {"diameter": DRILL, "edges": EDGES},
    "feed-from-torque": {"diameter": DRILL, "chisel_ratio": RATIO},
    "twist-drill-torque": TUNGALOY,
    "twist-drill-thrust": TUNGALOY,
    "twist-drill-power": TUNGALOY,
    "specific-cutting-force": {"h": (0.05 * MM, 1 * MM)},
    "unit-power-feed-factor": {"feed": (0.02 * MM, 1 * MM)},
    "drill-strength": {"diameter": (2 * MM, 13 * MM)},
    "tap-strength": {"major": (2 * MM, 24 * MM)},
    "form-tap-torque": {"factor": (2, 3)},
    "tool-life": {"exponent": (0.08, 0.7)},
    "bolt-tension": {"nut_factor": (0.10, 0.30)},
    "average-direction-limit": DAMPING,
    "slot-limit-one-mode": DAMPING,
    "slot-limit-two-modes": DAMPING,
}


@pytest.mark.parametrize(
    "name", sorted({*RANGES, *(key for key, one in all_formulas().items() if formula_of(one).ranges)})
)
def test_a_range_is_that_of_its_source(name):
    recorded = formula_of(all_formulas()[name]).ranges
    assert set(recorded) == set(RANGES[name])
    for key, ends in RANGES[name].items():
        assert recorded[key] == pytest.approx(ends), key
