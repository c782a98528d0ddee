"""Along which faces a feature runs: edges, two points, the side of a step, edges of a chamfer."""

from __future__ import annotations

import pytest

from jobsheet.errors import QuantityError
from jobsheet.finished.runs import run, sides, whole_edges
from jobsheet.finished.scanned import Scanned

from .lines_typed import DATUMS


def read(clause, text, **more):
    line, said = Scanned(text, "mm", DATUMS), {"what": "slot", **more}
    return clause(line, said), said, line


@pytest.mark.parametrize(
    ("text", "opens"),
    [
        ("from left edge", ("left",)),
        ("left to right", ("left", "right")),
        ("from B edge", ("front",)),
        ("open at the rear", ("rear",)),
    ],
)
def test_a_slot_is_open_where_it_says(text, opens):
    taken, said, line = read(run, text)
    assert taken
    assert said["opens"] == opens
    assert line.done()


def test_a_slot_between_two_points_has_both_of_them():
    _, said, _ = read(run, "from 25, 30 to 75, 30")
    assert [one.text for one in said["places"]] == ["25, 30", "75, 30"]


def test_a_step_lies_on_a_side_and_no_side_is_said_twice():
    taken, said, _ = read(sides, "right end")
    assert taken
    assert said["opens"] == ("right",)
    with pytest.raises(QuantityError, match="said twice"):
        read(sides, "right end", opens=("right",))
    assert not read(sides, "20 deep")[0]


@pytest.mark.parametrize(
    ("text", "edges"),
    [
        ("all edges", ("all",)),
        ("all round the top", ("top",)),
        ("top edges", ("top",)),
        ("on the front edge", ("front",)),
    ],
)
def test_a_chamfer_goes_round_edges(text, edges):
    taken, said, line = read(whole_edges, text)
    assert taken
    assert said["edges"] == edges
    assert line.done()
