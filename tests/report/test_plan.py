"""Long texts that are cut on their step stand in full at the end."""

from __future__ import annotations

from jobsheet.report.blocks import Steps, words_of
from tests.report.plans import bench, job, pages, plate

from .pages_read import all_of


def test_a_long_text_is_cut_on_the_step_and_stands_in_full_at_the_end():
    whole = " ".join(f"word{n}" for n in range(300))
    document = pages(job([bench(10, "Clamp", whole[:1900])]))
    assert document.pages[-1].kind == "long"
    last = " ".join(words_of(document.pages[-1].blocks))
    assert whole[:1900] in last
    row = all_of(document, Steps)[0].rows[0]
    # A footnote's sign: a text never ends in dots that tell nobody where the rest is.
    assert row.note.endswith("*")
    assert len(row.note) < 1000
    assert "* Step 10, note" in last


def test_short_texts_need_no_page_of_their_own():
    assert "long" not in [page.kind for page in pages(plate()).pages]
