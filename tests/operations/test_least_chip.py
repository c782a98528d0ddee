"""How thin a chip may be: known for end mills of high speed steel and for inserts, of nothing else."""

from __future__ import annotations

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.operations.shared.least_chip import HSS, INSERTS, least_chip


@pytest.mark.parametrize(
    ("cutter", "least"),
    [
        ("end mill 12 mm, 4 teeth", HSS), ("slot drill 6 mm, cobalt", HSS), ("face mill 50 mm, carbide", INSERTS), ("end mill 12 mm, carbide", None),
        ("face mill 50 mm", None), ("drill 6 mm", None),
    ],
)  # fmt: skip
def test_by_kind_and_material(cutter, least):
    assert least_chip(read_cutter(cutter, "mm")) == least


def test_an_insert_wants_a_thicker_chip_than_a_ground_edge():
    assert 0 < HSS < INSERTS < 0.1e-3
