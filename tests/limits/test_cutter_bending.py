"""When a cutter breaks at its shank (cutting-data 1.7)."""

from __future__ import annotations

from types import SimpleNamespace

import pytest

from jobsheet.limits.each import cutter_bending

from .one_cut import around, figures, step


class TestBending:
    """3000 MPa break high speed steel, 2000 carbide; a third of it, tight from six tenths of that on."""

    @pytest.mark.parametrize(
        ("material", "allowed"), [("HSS", 1000), ("cobalt", 1000), ("carbide", 2000 / 3)]
    )
    @pytest.mark.parametrize(
        ("share", "verdict", "sentence"),
        [
            (0.59, "expected", ""), (0.61, "tight", "near to what a cutter is planned for: shorter out, or a lighter cut"),
            (1.01, "beyond", "more than a third of what breaks it: shorter out, a thicker cutter, or a lighter cut"),
        ],
    )  # fmt: skip
    def test_what_is_said(self, material, allowed, share, verdict, sentence):
        stress = share * allowed * 1e6
        found = cutter_bending.limit(
            figures(bending_stress=stress), around(), step(f"end mill 12 mm, {material}")
        )
        assert (found.verdict, found.sentence) == (verdict, sentence)
        assert (found.name, found.title, found.unit) == ("cutter-bending", "Cutter bending", "Pa")
        assert (found.demand, found.capacity) == (stress, pytest.approx(allowed * 1e6))
        assert found.shown == f"{share * allowed:.0f} of {allowed:.0f} MPa"
        assert found.working == f"a third of {allowed * 3:.0f} MPa; tight from six tenths of that on"

    def test_none_where_it_is_not_known(self):
        assert cutter_bending.limit(figures(), around(), step("end mill 12 mm")) is None
        for fields in (SimpleNamespace(), SimpleNamespace(cutter=None)):
            assert cutter_bending.limit(figures(bending_stress=1e8), around(), fields) is None
