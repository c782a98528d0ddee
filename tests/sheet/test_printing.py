"""From a job to its bytes in one call."""

from __future__ import annotations

from jobsheet.sheet.pdf import make_pdf
from jobsheet.sheet.printing import document_for, lacking
from tests.report.plans import bench, job, plate

from .pdf_read import pdf, text


def test_a_character_that_the_font_lacks_is_named_with_its_field_and_printed_as_its_code():
    plan = job([bench(10, "Clamp", "用 gently")], workshop="⌴ shop")
    assert [(one.character, one.code, one.where) for one in lacking(plan)] == [
        ("⌴", "U+2334", "job, workshop"),
        ("用", "U+7528", "step 10, note"),
    ]
    whole = text(pdf(plan))
    assert "[U+7528] gently" in whole
    assert "[U+2334] shop" in whole


def test_one_call_makes_the_pages_for_a_paper():
    from jobsheet.reckoning.reckoner import Reckoner
    from jobsheet.review.engine import review
    from jobsheet.review.notes.notes import notes_for

    plan = plate()
    found = Reckoner().reckon(plan)
    document = document_for(
        plan, found, notes_for(plan, found), review(plan, found), paper="letter", name="x"
    )
    assert document.name == "x"
    assert make_pdf((document,), "letter").startswith(b"%PDF")
