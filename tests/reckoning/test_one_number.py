"""Ladder and adviser say one number: the first rung, what to plan up to, the deepest pass
here, the layer that is recommended.
"""

from __future__ import annotations

import math
from itertools import product

import pytest
from msgspec.structs import replace

from jobsheet.model.job import Operation
from jobsheet.operations.kind import fields_from
from jobsheet.operations.registry import kind as kind_of
from jobsheet.reckoning.adviser.best_cut import best_cut
from jobsheet.reckoning.answers.inverse import deepest_pass
from jobsheet.reckoning.known_capacity import snapshot_of
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.storage.shop_file import workshop

DAY = "2026-11-28"
CUTS = {
    "face": ("face mill 50 mm, 4 teeth, carbide, marked 12000 rpm", {"width": "30 mm"}),
    "side": ("end mill 12 mm, 4 teeth, 30 mm out", {"width": "3 mm"}),
    "slot": ("slot drill 10 mm, 30 mm out", {}),
}
ALL = list(
    product(
        ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2"),
        ("S235", "6082-T6", "304", "EN-GJL-250", "42CrMo4+QT", "316L", "CuZn39Pb3", "C45E"),
        CUTS,
        (True, False),
    )
)
CASES = [
    one if not index % 11 else pytest.param(*one, marks=pytest.mark.long) for index, one in enumerate(ALL)
]
#: A rung is set to a twentieth of a millimetre, a plan is rounded down to that [m].
STEP = 0.05e-3
#: A ladder has the noise of a single cut in its chance (0.12 beside the class's
#: 0.743), a verdict from class has not.
NOISE = 0.015


@pytest.mark.parametrize(("machine", "metal", "process", "tried_before"), CASES)
def test_first_rung_plan_and_layer_are_one_number(machine, metal, process, tried_before):
    cutter, texts = CUTS[process]
    trials = None if tried_before else ()
    ladder = plan(machine, cutter=cutter, material=metal, kind=process, texts=texts, trials=trials, date=DAY)
    if not ladder.rungs:
        assert ladder.refused
        return
    rung = ladder.rungs[0]
    assert rung.chance <= ladder.chance * (1 + 1e-3)
    kind = kind_of(ladder.kind)
    setting = replace(ladder.setting, proof=snapshot_of(machine, trials, DAY, workshop()))

    def step(**other):
        fields = fields_from(kind.fields, kind.entries, dict(rung.texts) | other, "mm")
        return Operation(key="step", number=10, kind=ladder.kind, fields=fields)

    deepest = deepest_pass(step(), setting)
    size = step().fields.depth.value
    planned = math.floor(deepest.plan / STEP + 1e-6) * STEP
    if tried_before:
        assert planned * (1 - NOISE) <= size + STEP * (1 + 1e-6)
    else:
        # Where the spindle ends it, a ladder reckons with the card's spread and that of
        # a process, a plan with the card's.
        by_torque = max(rung.asked, key=lambda one: one.share).limit == "spindle-torque"
        less = planned * 0.2 if by_torque else STEP + planned * NOISE
        assert planned - less * (1 + 1e-6) <= size <= planned + STEP * (1 + 1e-6)
    deep = step(depth=f"{size * 4e3:.4f} mm")
    pinned = frozenset({"spindle", "feed_per_tooth", "width", "cut"} & set(kind.fields.__struct_fields__))
    best = best_cut(deep, setting, pinned=pinned)
    if best.easy:
        assert size * 4 / best.found.value("layers") <= deepest.plan * (1 + 1e-3)
