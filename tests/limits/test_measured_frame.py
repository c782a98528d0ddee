"""A frame that was pushed, and the indicator read, stands in place of what machines of its
class have (cutting-data section 7).
"""

from __future__ import annotations

import math

import pytest
from msgspec.structs import replace

from jobsheet.cutting.stability import cutter_scale
from jobsheet.limits.each.chatter import class_capacity, class_spread
from jobsheet.model.figure import Figures
from jobsheet.model.machine import Marked
from jobsheet.reckoning.known_capacity import prior
from jobsheet.reckoning.ladder.ladders import plan
from jobsheet.storage.card_files import find_card

CUT = {
    "cutter": "end mill 12 mm, 4 teeth, 30 mm out",
    "material": "S235",
    "kind": "side",
    "texts": {"width": "6 mm"},
    "trials": (),
}


def pushed(micrometres, mark="measured"):
    """100 N at the spindle nose and what the indicator shows: k = 100 / reading."""
    return replace(find_card("bench-mill-b-1"), frame=Marked(100 / (micrometres * 1e-6), mark))


def test_twenty_micrometres_are_five_newtons_a_micrometre_and_the_class_itself():
    ladder, usual = plan(pushed(20), **CUT), plan("bench-mill-b-1", **CUT)
    assert (
        ladder.rungs[0].of("chatter").share > usual.rungs[0].of("chatter").share
    )  # known better: begun higher
    class_, own = usual.capacity("chatter"), ladder.capacity("chatter")
    assert (class_.median, own.median) == (1.0, 1.0)
    # section 7: 2 to 8 N/µm is a spread of 0.42; of 0.7 is left 0.56, with a process's own 0.25 it is 0.613
    left = math.sqrt(0.7**2 - (math.log(8 / 2) / (2 * 1.645)) ** 2)
    assert math.log(own.high / own.low) / (2 * 1.645) == pytest.approx(math.hypot(left, 0.25), rel=0.01)
    assert class_spread(pushed(20)) == pytest.approx(math.hypot(left, 0.25), rel=0.01)


def test_half_the_stiffness_carries_half_and_the_cutter_counts_for_more():
    found = Figures()
    assert class_capacity(found, pushed(40)) == pytest.approx(3e6)
    assert class_capacity(found, pushed(20)) == pytest.approx(6e6)
    assert class_capacity(found, pushed(40, "guessed")) == pytest.approx(6e6)
    soft, stiff = plan(pushed(40), **CUT).rungs[0], plan(pushed(20), **CUT).rungs[0]
    ratio = (
        soft.of("chatter").demand
        / soft.of("chatter").share
        / (stiff.of("chatter").demand / stiff.of("chatter").share)
    )
    compared = cutter_scale(frame=2.5e6, cutter=9.59e6) / cutter_scale(frame=5e6, cutter=9.59e6)
    assert ratio == pytest.approx(0.5 * compared, rel=0.02)


def test_a_machine_of_no_class_has_no_level_of_its_own():
    card = replace(pushed(20), stiffness_class="")
    assert class_capacity(Figures(), card) is None
    assert (
        prior("chatter", "side", "end mill", measured=False).high
        > prior("chatter", "side", "end mill", measured=True).high
    )
