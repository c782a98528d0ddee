"""How far the table goes, with its run in and out."""

from __future__ import annotations

from types import SimpleNamespace

import pytest
from msgspec.structs import replace

from jobsheet.limits.each import travel
from jobsheet.model.quantity import Place, Quantity
from jobsheet.model.shop import Shop

from .one_cut import BELTS, around, deep, figures


def places(*points):
    return tuple(Place(Quantity(x / 1000, ""), Quantity(y / 1000, "")) for x, y in points)


class TestTravel:
    """B-1 goes 300 mm along x and 150 along y; 5 mm run in and out each (common practice)."""

    @pytest.mark.parametrize(
        ("values", "fields", "axis", "need"),
        [
            ({"path_length": 0.2}, {}, "x", 210), ({"path_length": 0.2}, {"along": "x"}, "x", 210),
            ({"path_length": 0.1}, {"along": "y"}, "y", 110), ({"path_length": 0.1}, {"along": ""}, "x", 110),
            ({"path_length": 0.2}, {"length": None}, "x", 210),
            ({}, {"at": places((10, 5), (110, 25), (60, 15))}, "x", 100),  # 100 of 300 before 20 of 150
            ({}, {"at": places((10, -20), (60, 25), (30, 0))}, "y", 45),  # 45 of 150 before 50 of 300
            ({}, {"at": places((0, 0), (100, 50))}, "y", 50),  # as near to the end both ways: the last by name
            ({"path_length": 0.2}, {"at": places((10, 5), (20, 6))}, "x", 10),  # places stand for themselves
            ({"path_length": 0.2}, {"at": (), "along": "x"}, "x", 210), ({"path_length": 0.2}, {"at": None}, "x", 210),
            ({}, {"at": places((10, 5))}, "y", 0),
        ],
    )  # fmt: skip
    def test_the_axis_that_is_nearest_to_its_end(self, values, fields, axis, need):
        found = travel.limit(figures(**values), around(), SimpleNamespace(**fields))
        whole = {"x": 300, "y": 150}[axis]
        assert found.shown == f"{need} of {whole} mm, {axis}"
        assert (found.demand, found.capacity) == (pytest.approx(need / 1000), pytest.approx(whole / 1000))
        assert (found.name, found.title, found.unit) == ("travel", "Travel", "m")

    @pytest.mark.parametrize(("length", "verdict"), [(0.29, "expected"), (0.2901, "beyond")])
    def test_run_in_and_run_out_are_part_of_it(self, length, verdict):
        found = travel.limit(figures(path_length=length), around(), SimpleNamespace())
        assert found.verdict == verdict
        words = "the table does not go that far along x: turn the work or move it in two holds"
        assert found.sentence == (words if verdict == "beyond" else "")

    def test_the_workshop_s_own_run(self):
        own = around(shop=Shop(run=0.02))
        assert travel.limit(figures(path_length=0.1), own, SimpleNamespace()).demand == pytest.approx(0.14)

    def test_what_is_as_near_both_ways_but_for_a_rounding_of_inches_is_as_near(self):
        near = places((0, 0), (100 * (1 + 1e-12), 50))
        assert travel.limit(figures(), around(), SimpleNamespace(at=near)).shown.endswith(", y")
        nearer = places((0, 0), (100 * (1 + 1e-5), 50))
        assert travel.limit(figures(), around(), SimpleNamespace(at=nearer)).shown.endswith(", x")

    def test_none_where_nothing_moves_or_the_card_has_no_travels(self):
        assert travel.limit(figures(), around(), SimpleNamespace()) is None
        # A length that is typed is that of the wall, along it: nobody knows which way it lies.
        assert travel.limit(figures(path_length=0.2), around(), SimpleNamespace(length=deep(0.2))) is None
        assert travel.limit(figures(path_length=0.2), around(replace(BELTS, travel=())), SimpleNamespace()) is None  # fmt: skip
        only_y = replace(BELTS, travel=(("y", 0.15),))
        assert travel.limit(figures(path_length=0.2), around(only_y), SimpleNamespace()) is None
        assert travel.limit(figures(), around(only_y), SimpleNamespace(at=places((0, 0), (200, 5)))).shown == "5 of 150 mm, y"  # fmt: skip
        stuck = replace(BELTS, travel=(("x", 0.0), ("y", 0.15)))
        assert travel.limit(figures(path_length=0.2), around(stuck), SimpleNamespace()) is None
