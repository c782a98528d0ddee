"""The working: formula, numbers, result and source."""

from __future__ import annotations

from tests.report.plans import pages, plate

from .pages_read import text


def test_the_working_shows_formula_numbers_result_and_source():
    whole = text(pages(plate(), working=True), "working")
    assert "v_f = f_z z n" in whole
    assert "f_z = 0.05 mm" in whole
    # 0.05 x 4 x 560 = 112 mm/min
    assert "v_f = 112 mm/min" in whole
    # The source by its title; who makes tools is not named on a sheet.
    assert "Mitsubishi Materials, Formulas for milling and turning" in whole
