"""Tapping under power: where the spindle reverses and something slips; in a blind
hole where something lets go; slowly.

Common practice, no source; an unsigned technical note on power tapping says the same.
"""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.catalog.cuts.feeds import tap_speed
from jobsheet.catalog.metals.materials import all_materials, find
from jobsheet.limits.register import limits_of
from tests.operations.hole_steps import Step


def said(*, reverses=True, slips=False, holder="", depth="through"):
    """Why it is by hand only; empty where power may be used."""
    held = f", in a {holder}" if holder else ""
    texts = {
        "cutter": f"tap M6, plug{held}",
        "thread": "M6",
        "depth": depth,
        "method": "under power",
        "hole": "5 mm",
    }
    step = Step("tap", texts, material="S235")
    machine = step.setting.machine
    spindle = replace(machine.spindle, reverses=reverses, slips=slips)
    setting = replace(step.setting, machine=replace(machine, spindle=spindle))
    return next(
        (one.sentence for one in limits_of(step.figures, setting, step.fields) if one.name == "reverse"), ""
    )


@pytest.mark.parametrize(
    ("around", "why"),
    [
        ({"reverses": False, "slips": True}, "does not reverse"),
        ({"reverses": False, "holder": "tapping head"}, "does not reverse"),
        ({}, "nothing slips"),
        ({"holder": "drill chuck"}, "nothing slips"),
        ({"slips": True}, ""),
        ({"holder": "tapping head"}, ""),
        ({"holder": "depth-releasing tapping head"}, ""),
        ({"slips": True, "depth": "9 mm"}, "lets go at the bottom of a blind hole"),
        ({"holder": "tapping head", "depth": "9 mm"}, "lets go at the bottom of a blind hole"),
        ({"holder": "depth-releasing tapping head", "depth": "9 mm"}, ""),
        ({"depth": "9 mm"}, "nothing slips"),
    ],
)
def test_where_power_may_be_used(around, why):
    found = said(**around)
    assert (why in found) if why else found == ""


@pytest.mark.parametrize("material", all_materials(), ids=lambda material: material.name)
def test_a_tap_starts_at_the_slow_end(material):
    """Never faster than its table, than half its drill, or than 12 m/min, the most on a light machine."""
    found = tap_speed(material)
    if found is None:
        assert material.speed("tap") is None
        return
    assert 0 < found.value <= material.speed("tap") * (1 + 1e-9)
    assert found.value <= 12 / 60 * (1 + 1e-9)
    if material.speed("drill") is not None:
        assert found.value <= material.speed("drill") * 0.5 * (1 + 1e-9)


def test_the_step_takes_it():
    """Stainless steel: 0.29 of the drill's speed, or its own table where that is slower."""
    texts = {
        "cutter": "tap M6, plug",
        "thread": "M6",
        "depth": "through",
        "method": "under power",
        "hole": "5 mm",
    }
    metal = find("304")
    step = Step("tap", texts, material="304")
    slow = min(metal.speed("tap"), 0.29 * metal.speed("drill"))
    assert step.value("wanted_speed") == pytest.approx(slow / (math.pi * 6e-3))
