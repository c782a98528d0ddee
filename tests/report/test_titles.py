"""The title block: the same part on every page, and a printed code that names no person and no address."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.model.job import Revision
from jobsheet.report.titles import PRINTED, printed_code_of, short_title, title

from .plans import plate
from .seen_from_above import plan_of


def cells(rows):
    return {cell.caption: cell.text for row in rows for cell in row}


def test_rows_share_their_width():
    for rows in (title(plan_of(plate()), "Page", "Cover"), short_title(plan_of(plate()), "Page", "Sheet 2")):
        for row in rows:
            assert abs(sum(cell.share for cell in row) - 1) < 0.011


def test_the_cover_has_workshop_and_stock_and_every_page_the_machine():
    plan = plan_of(plate())
    whole, short = cells(title(plan, "Page", "Cover")), cells(short_title(plan, "Page", "Sheet 2"))
    assert whole["Workshop"] == plate().workshop
    assert "Workshop" not in short
    assert plan.card.title in short["Machine, its card of"]
    assert (
        next(cell.text for row in title(plan, "Page", "Cover") for cell in row if cell.caption == "Page")
        == "Cover"
    )


def test_the_printed_code_says_part_revision_plan_and_check_code():
    job = replace(
        plate(), part=replace(plate().part, number="HM:100", revision="B"), revisions=(Revision(number=3),)
    )
    plan = plan_of(job)
    code = printed_code_of(plan)
    assert code.startswith("JS1:HM 100:B:3:")
    assert code.count(":") == 4
    long = replace(job, part=replace(job.part, number="x" * 100))
    assert "x" * PRINTED in printed_code_of(plan_of(long))
    assert "x" * (PRINTED + 1) not in printed_code_of(plan_of(long))
    assert plate().planned_by not in code
