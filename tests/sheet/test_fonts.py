"""Letters and signs that are printed, and those that the font lacks."""

from __future__ import annotations

import pytest

from jobsheet.sheet.fonts import missing_characters, printable
from tests.report.plans import bench, job

from .pdf_read import pdf, squeezed, text


@pytest.mark.parametrize("letters", ["⌀ ° µ ½ ± × ≥", "ΑΒΓ αβγ", "Плита фрезерная", "é ü ß ø"])
def test_signs_greek_and_cyrillic_are_printed(letters):
    assert missing_characters(letters) == []
    assert squeezed(letters) in squeezed(text(pdf(job([bench(10)], name=letters))))


def test_marks_that_turn_the_writing_round_are_not_obeyed():
    assert printable("a\u202eb\u200dc") == "a[U+202E]b[U+200D]c"
    assert printable("a\tb\u00a0c\nd") == "a b c\nd"
