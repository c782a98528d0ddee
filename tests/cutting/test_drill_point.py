"""The chisel edge across the middle of a drill."""

from __future__ import annotations

import math

import pytest

from jobsheet.cutting.drill_point import SPLIT_POINT, STANDARD_POINT, chisel_edge
from jobsheet.errors import CalcError


def test_a_chisel_edge_is_the_web_across_at_its_usual_slant():
    """A chisel edge at about 120° to the lips is 1 / sin 120° = 1.155 times the web
    (text-book geometry of twist drills).
    """
    assert chisel_edge(2e-3) == pytest.approx(2e-3 / math.sin(math.radians(120)), rel=0.005)


def test_a_usual_web_gives_a_standard_point_and_a_split_one_is_a_sixth_of_it():
    assert chisel_edge(0.155) == pytest.approx(STANDARD_POINT, abs=0.005)
    assert pytest.approx(STANDARD_POINT / 6) == SPLIT_POINT


@pytest.mark.parametrize("web", [0, -1e-3])
def test_a_web_is_above_zero(web):
    with pytest.raises(CalcError, match="web"):
        chisel_edge(web)
