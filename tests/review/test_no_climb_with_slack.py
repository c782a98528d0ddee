"""What speaks against a cut with the rotation where the workshop agrees to light finishes: slack, loose gibs, a thick pass."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.model.machine import Marked
from jobsheet.model.shop import Shop
from jobsheet.review.rules.milling.no_climb_with_slack import _against
from tests.limits.one_cut import BELTS, around

AGREED = Shop(climb_milling="light finish")


def step(*, backlash=0.05e-3, drag=300.0, width=0.2e-3, along="x", shop=AGREED, other=1e-3):
    """A wall on B-1 with that slack in the screw that is wound and another one in the other."""
    handles = tuple(replace(one, backlash=backlash if one.name == along else other) for one in BELTS.handles)
    machine = replace(BELTS, handles=handles, drag=None if drag is None else Marked(drag, "measured"))
    return SimpleNamespace(
        setting=around(machine, shop=shop),
        fields=SimpleNamespace(along=along),
        figure=lambda name: {"width_of_cut": width}[name],
    )


@pytest.mark.parametrize(
    ("how", "why"),
    [
        ({}, ""), ({"along": "y"}, ""), ({"width": 0.1e-3, "backlash": 0.01e-3}, ""),
        ({"shop": Shop()}, "this workshop never cuts with the rotation"),
        ({"backlash": None}, "the card does not know the backlash of this screw"),
        ({"backlash": 0.051e-3}, "the screw has 0.05 mm of backlash"), ({"backlash": 0.2e-3}, "the screw has 0.2 mm of backlash"),
        ({"drag": None}, "no drag of the slide is entered on the card"),
        ({"width": 0.201e-3}, "only a light finish of 0.2 mm may run with it"), ({"width": None}, "only a light finish of 0.2 mm may run with it"),
    ],
)  # fmt: skip
def test_what_speaks_against_it(how, why):
    assert _against(step(**how), "mm") == why


def test_a_slide_that_nobody_winds_has_no_slack_known():
    assert _against(step(along="w"), "mm") == "the card does not know the backlash of this screw"
    bare = step()
    bare.fields = SimpleNamespace()
    assert _against(bare, "mm") == ""  # along x where nothing else is said
