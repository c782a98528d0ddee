"""The cuts of one face: opened in one step, finished in two where there is enough to part."""

from __future__ import annotations

import pytest

from jobsheet.edit.squaring_cuts import FINISH, PARTED, Cuts
from jobsheet.edit.squaring_faces import sizes_of

from .blocks_squared import block, typed

CUTS = Cuts(
    units="mm",
    cutter="face mill 50 mm, 4 teeth, carbide",
    end_cutter="end mill 20 mm, 4 teeth, HSS",
    ends_stand=False,
)


def deep(steps):
    return [step.fields.depth.value for step in steps]


def test_a_face_that_opens_a_pair_is_one_step_of_its_half():
    sizes = sizes_of(block(), typed())
    (step,) = CUTS.face(sizes, "top", opens=True)
    assert step.fields.depth.value == pytest.approx(sizes.off("top")[0])
    assert step.fields.measure is None


def test_the_one_opposite_is_roughed_and_finished_to_its_size():
    sizes = sizes_of(block(), typed())
    rough, finish = CUTS.face(sizes, "bottom")
    assert sum(deep((rough, finish))) == pytest.approx(sizes.off("bottom")[1])
    assert finish.fields.depth.value == pytest.approx(FINISH)
    assert finish.fields.measure.nominal == pytest.approx(25e-3)


def test_what_is_too_thin_to_part_is_one_step():
    sizes = sizes_of(block(height=25.8), typed())
    assert sizes.off("bottom")[1] < PARTED
    (step,) = CUTS.face(sizes, "bottom")
    assert step.fields.measure.nominal == pytest.approx(25e-3)
