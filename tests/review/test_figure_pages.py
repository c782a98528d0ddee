"""Pages for figures and formulas: one each, with what is put in and by whose word."""

from __future__ import annotations

from jobsheet.cutting.formula import all_formulas
from jobsheet.operations.names import FIGURES
from jobsheet.review.pages.figure_pages import figure_pages, formula_pages


def test_one_for_each_figure():
    pages = figure_pages()
    assert [page.id for page in pages] == [f"figure:{name}" for name in FIGURES]
    assert all(page.title and page.lines for page in pages)


def test_one_for_each_formula_with_its_source_last():
    pages = formula_pages()
    assert len(pages) == len(all_formulas())
    assert len({page.id for page in pages}) == len(pages)
    for page in pages:
        assert page.lines[-1][0] == "Source"
        assert page.lines[-1][1]
