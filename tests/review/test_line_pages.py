"""Pages for the lines of the finished part: every form as it is typed, with what is understood by it."""

from __future__ import annotations

from jobsheet.finished.feature_line import read_feature
from jobsheet.finished.forms_of_line import FEATURES
from jobsheet.review.pages.line_pages import line_pages


def test_datums_sizes_and_features_have_a_page_each():
    pages = line_pages()
    assert len(pages) == len({page.id for page in pages}) == 3


def test_every_form_stands_there_and_can_be_read():
    text = line_pages()[2].text
    datums = (("A", "bottom"), ("B", "front"), ("C", "left"))
    for form in FEATURES:
        line, (start, end) = form.marked("mm")
        assert line in text
        assert start < end
        read_feature(line, "mm", datums)
