"""Clauses of a line by themselves: each takes what is its own, leaves what is
not, and points at what is wrong.
"""

from __future__ import annotations

import math

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished import clauses
from jobsheet.finished.scanned import Scanned

from .lines_typed import DATUMS


def read(clause, text, what="hole"):
    line, said = Scanned(text, "mm", DATUMS), {"what": what}
    return clause(line, said), said, line


@pytest.mark.parametrize("text", ["16 deep", "x 16", "blind 16", "depth 16", "deep: 16"])
def test_one_depth_in_every_way_of_writing(text):
    taken, said, line = read(clauses.depth, text)
    assert taken
    assert said["depth"].nominal == pytest.approx(16e-3)
    assert line.done()


def test_a_thread_and_the_hole_below_it():
    _, said, _ = read(clauses.depth, "x 25/30", "tapped hole")
    assert (said["depth"].nominal, said["hole_depth"].nominal) == pytest.approx((25e-3, 30e-3))


@pytest.mark.parametrize(
    ("text", "what", "wide"), [("cbore 11 x 6.5", "counterbore", 11), ("spot face 14", "spot face", 14), ("csk 12.6 x 90", "countersink", 12.6), ("⌴ 11 x 6.5", "counterbore", 11)]
)  # fmt: skip
def test_mouths_by_their_names_and_signs(text, what, wide):
    _, said, _ = read(clauses.mouth, text)
    assert said["mouth"].what == what
    assert said["mouth"].size.nominal == pytest.approx(wide * 1e-3)


def test_a_countersink_has_the_angle_that_is_written():
    assert read(clauses.mouth, "csk 12.6 x 82°")[1]["mouth"].angle == pytest.approx(math.radians(82))


def test_a_roughness_is_in_micrometres_in_a_job_of_inches_too():
    line, said = Scanned("Ra 1.6", "in", ()), {"what": "hole"}
    assert clauses.finish(line, said)
    assert said["finish"] == pytest.approx(1.6e-6)


@pytest.mark.parametrize(
    ("clause", "text"), [(clauses.depth, "long 16"), (clauses.mouth, "16 deep"), (clauses.length, "16"), (clauses.radius, "Ra 5"), (clauses.through, "thorough"), (clauses.shaft, "16 shaft")]
)  # fmt: skip
def test_what_is_not_its_own_is_left_for_the_next(clause, text):
    taken, said, line = read(clause, text)
    assert not taken
    assert line.at == 0
    assert set(said) == {"what"}


@pytest.mark.parametrize(
    ("clause", "text", "says"),
    [(clauses.depth, "blind", "how deep"), (clauses.mouth, "cbore", "how wide"), (clauses.within, "within 0", "above nought"), (clauses.shaft, "shaft", "diameter of the shaft")],
)  # fmt: skip
def test_what_is_begun_and_not_said_is_asked(clause, text, says):
    with pytest.raises(QuantityError, match=says):
        read(clause, text)
