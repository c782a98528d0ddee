"""Tools for a mend: those of the workshop, from small to large, else a drill of that very size."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.catalog.tools.cutters import read_cutter
from jobsheet.errors import DocumentError
from jobsheet.review.mending import at_hand as module
from jobsheet.review.mending.at_hand import at_hand, drill_named, drill_near

from .views_read import sample

SHOP = "Harrowmoss Training Workshop (invented)"


def test_the_cabinet_s_drills_lie_between_the_bounds_and_rise():
    job = replace(sample(100), workshop=SHOP)
    found = at_hand(job, "drill", 4e-3, 7e-3)
    sizes = [size for size, _ in found]
    assert sizes
    assert sizes == sorted(sizes)
    assert all(4e-3 - 1e-6 <= size <= 7e-3 + 1e-6 for size in sizes)
    assert drill_near(job, 5.01e-3, 4e-3, 7e-3)[0] == min(sizes, key=lambda one: abs(one - 5.01e-3))


def test_without_a_cabinet_it_is_a_drill_of_that_very_size():
    job = replace(sample(100), workshop="Nobody's")
    assert at_hand(job, "drill", 4e-3, 7e-3) == ()
    assert drill_near(job, 5.1e-3, 4e-3, 7e-3) == (pytest.approx(5.1e-3), "drill 5.1 mm")


def test_what_is_lent_out_or_has_no_size_is_not_at_hand(monkeypatch):
    """A thing that is not here, one that is no cutter, another kind, one of no size; and both ends of the bounds."""

    def thing(line, *, here=True):
        return SimpleNamespace(
            line=line, cutter=read_cutter(line, "mm") if line != "vice" else None, here=here
        )

    things = [
        thing("drill 6"), thing("drill 4"), thing("drill 5", here=False), thing("vice"), thing("reamer 5"), thing("drill, carbide"),
        thing("drill 3.99"), thing("drill 6.01"),
    ]  # fmt: skip
    monkeypatch.setattr(module, "cabinet_for", lambda _name: SimpleNamespace(things=things))
    assert [line for _, line in at_hand(sample(100), "drill", 4e-3, 6e-3)] == ["drill 4", "drill 6"]


def test_a_cabinet_that_cannot_be_read_has_nothing(monkeypatch):
    def broken(_name):
        raise DocumentError("cabinet.yaml", [])

    monkeypatch.setattr(module, "cabinet_for", broken)
    assert at_hand(sample(100), "drill", 4e-3, 7e-3) == ()


@pytest.mark.parametrize(
    ("name", "units", "said"),
    [("6.8", "in", "6.8 mm"), ("5", "in", "5 mm"), ("6.8", "mm", "6.8"), ("#7", "in", "#7"), ("F", "in", "F"), ("1/4", "in", "1/4")],
)  # fmt: skip
def test_a_bare_number_gets_its_unit_where_it_would_mean_inches(name, units, said):
    assert drill_named(name, units) == said
