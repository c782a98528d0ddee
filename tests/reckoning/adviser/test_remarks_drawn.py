"""Remarks that a milling cut draws: chips thinner than cut (0.012 mm of HSS, 0.04 of
inserts), first cuts within a skin.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.operations.roles import Roles
from jobsheet.reckoning.adviser.remarks_drawn import of_milling
from tests.reckoning.adviser.made_up import outcome
from tests.reckoning.steps import step

MM = 1e-3
FLAT, WALL, GROOVE, EDGE = (Roles(mills=one) for one in ("flat", "wall", "groove", "edge"))


def drawn(plays=FLAT, cutter="end mill 20 mm, 4 teeth", skin=0.0, tooth=0.1, layers=1, width=10.0):
    fields = step("face", cutter=cutter, depth="3", feed_per_tooth="0.05").fields
    found = outcome(
        fields=fields, feed_per_tooth=None if tooth is None else tooth * MM, layers=layers, width_of_cut=None if width is None else width * MM
    )  # fmt: skip
    return of_milling(plays, found, skin * MM)


@pytest.mark.parametrize(
    ("cutter", "tooth", "says"),
    [
        ("end mill 20 mm, 4 teeth", 0.012, 0), ("end mill 20 mm, 4 teeth", 0.01199, 1), ("end mill 20 mm, 4 teeth", None, 0),
        ("end mill 20 mm, 4 teeth, carbide", 0.001, 0),
        ("face mill 50 mm, 4 teeth, carbide", 0.04, 0), ("face mill 50 mm, 4 teeth, carbide", 0.0399, 1),
    ],
)  # fmt: skip
def test_a_chip_that_rubs(cutter, tooth, says):
    assert drawn(cutter=cutter, tooth=tooth) == says


def test_a_rounding_is_no_thinner_chip():
    assert drawn(tooth=0.012 * (1 - 1e-7)) == 0


def test_a_broken_edge_may_be_fed_as_little_as_one_likes():
    assert drawn(EDGE, tooth=0.001) == 0


@pytest.mark.parametrize(
    ("layers", "skin", "says"),
    [(1, 3, 0), (1, 3.01, 1), (2, 1.5, 0), (2, 1.51, 1), (3, 0, 0), (None, 9, 0), (0, 9, 0)],
)
def test_a_face_s_first_layer_within_the_skin(layers, skin, says):
    assert drawn(layers=layers, skin=skin) == says


@pytest.mark.parametrize(("width", "skin", "says"), [(1, 1, 0), (0.99, 1, 1), (1, 0, 0), (None, 1, 0)])
def test_a_wall_s_first_cut_within_the_skin(width, skin, says):
    assert drawn(WALL, width=width, skin=skin) == says


def test_a_groove_goes_through_any_skin():
    assert drawn(GROOVE, width=1, layers=30, skin=5) == 0


def test_both_are_two():
    assert drawn(tooth=0.01, layers=3, skin=2) == 2


def test_a_hair_within_the_skin_is_as_deep():
    one = step("face", cutter="end mill 20 mm, 4 teeth", depth="3", feed_per_tooth="0.05").fields
    found = outcome(fields=replace(one, depth=one.depth), layers=1)
    assert of_milling(FLAT, found, 3 * MM * (1 + 1e-7)) == 0
