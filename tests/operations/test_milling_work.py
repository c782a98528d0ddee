"""What the kinds of milling share: arcs of engagement, teeth and helix, layers."""

from __future__ import annotations

import math

import pytest

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import CalcError
from jobsheet.model.quantity import Quantity
from jobsheet.operations.shared import milling_work as milling


@pytest.mark.parametrize(("width", "arc"), [(12, 180), (6, 90), (3, 60), (9, 120)])
def test_the_arc_of_a_cut_from_the_edge(width, arc):
    """cos φ = 1 − 2 w / D: a slot is half a turn, half the cutter a right
    angle (any text-book of milling).
    """
    for climb in (False, True):
        start, end = milling.edge_arc(width / 1e3, 12e-3, climb=climb)
        assert math.degrees(end - start) == pytest.approx(arc)


@pytest.mark.parametrize(("width", "says"), [(12.1, "at most the cutter"), (0, "width"), (-1, "width")])
def test_a_cut_is_no_wider_than_its_cutter_and_something(width, says):
    with pytest.raises(CalcError, match=says):
        milling.edge_arc(width / 1e3, 12e-3)


@pytest.mark.parametrize(
    ("total", "layer", "layers"), [(4, 1, 4), (4, 1.5, 3), (4, None, 1), (4, 5, 1), (0.3, 0.1, 3)]
)
def test_layers_are_as_deep_as_is_said_at_most(total, layer, layers):
    """0.3 / 0.1 is a hair over 3 in binary numbers, and three layers all the same."""
    said = Quantity(layer / 1e3, str(layer)) if layer is not None else None
    assert milling.layers_of(total / 1e3, said) == layers


def test_face_mills_are_straight_and_end_mills_have_the_usual_helix():
    assert milling.helix_of(read_cutter("face mill 50 mm", "mm")) == 0
    assert milling.helix_of(read_cutter("end mill 12 mm", "mm")) == pytest.approx(math.radians(30))
    assert milling.helix_of(read_cutter("end mill 12 mm, helix 45°", "mm")) == pytest.approx(math.radians(45))


@pytest.mark.parametrize(
    ("ask", "says"), [(milling.teeth_of, "number of teeth"), (milling.diameter_of, "with its diameter")]
)
def test_what_is_not_written_of_a_cutter_is_asked(ask, says):
    with pytest.raises(CalcError, match=says):
        ask(read_cutter("end mill", "mm"))
