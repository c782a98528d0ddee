"""Pages for one use, by what somebody at the machine would look for on them."""

from __future__ import annotations

import io
import re

import pytest
from pypdf import PdfReader

from jobsheet.errors import CommandError
from jobsheet.model.prints import PRINTS, prints
from jobsheet.paths import sample_jobs
from jobsheet.report.blocks import words_of
from jobsheet.report.for_use.chosen_pages import NO_POINTS
from jobsheet.report.wording import STAMP
from jobsheet.sheet.pages import fits_on
from jobsheet.sheet.pdf import make_pdf
from jobsheet.storage.job_file import read_job
from tests.report.plans import bench, drill, job, pages, plate

SAMPLES = sorted(sample_jobs().glob("*.yaml"))


def printed(plan, *names, paper="a4", steps=(), **options):
    document = pages(plan, fits=fits_on(paper), wanted=prints(names, steps), **options)
    return document, PdfReader(io.BytesIO(make_pdf((document,), paper)))


def words(reader) -> str:
    return re.sub(r"\s+", " ", "\n".join(page.extract_text() for page in reader.pages))


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("path", SAMPLES, ids=lambda path: path.stem)
def test_the_route_list_is_one_page_with_every_set_up_and_step_in_order(path, paper):
    plan = read_job(path)
    document, reader = printed(plan, "route", paper=paper)
    (page,) = reader.pages
    text = page.extract_text()
    at = 0
    for set_up in plan.set_ups:
        at = text.index(f"Set-up {set_up.number}", at)
        for operation in set_up.operations:
            at = text.index(f"\n{operation.number} ", at)
    assert plan.part.number in text
    assert len(document.pages) == 1


def test_the_route_list_says_cutter_and_place():
    """HM-100: the drill lies in drawer 3."""
    assert "drill 5.0, drawer 3" in words(printed(plate(), "route")[1])


def test_a_route_of_sixty_steps_stays_on_one_page_and_one_of_three_hundred_goes_on():
    many = job(*([bench(10 * number) for number in range(first, first + 10)] for first in range(1, 61, 10)))
    assert len(printed(many, "route")[1].pages) == 1
    more = job([bench(10 * number) for number in range(1, 301)])
    _, reader = printed(more, "route")
    assert len(reader.pages) > 1
    text = "\n".join(page.extract_text() for page in reader.pages)
    assert [number for number in range(10, 3001, 10) if f"\n{number} " not in text] == []
    assert "continued" in text


def test_a_card_for_one_step_is_half_a_page_with_its_readings_and_nothing_of_other_steps():
    """HM-100, step 60: 900 rpm on belts 4; point 1 at X 14 = 5 turns of 2.5 and
    75 lines of 0.02 (done in one's head).
    """
    document, reader = printed(plate(), "step", steps=(60,))
    (page,) = document.pages
    assert page.half
    (sheet,) = reader.pages
    text = words(reader)
    for promised in (
        "60 · set-up 1 of 1",
        "900",
        "belts 4",
        "5 + 75",
        "Ease off",
        "Planning aid only",
        "1 of 1",
    ):
        assert promised in text
    assert "Face" not in text
    # Everything stands in the upper half of the paper.
    heights = []
    sheet.extract_text(
        visitor_text=lambda said, cm, tm, _f, _s: heights.append(cm[5] + tm[5]) if said.strip() else None
    )
    assert min(heights) > float(sheet.mediabox.height) / 2


def test_two_cards_share_a_page_and_each_is_whole_in_itself():
    document, reader = printed(plate(), "step")
    assert len(document.pages) == len(list(plate().operations()))
    assert len(reader.pages) == len(document.sheets) < len(document.pages)
    for page in document.pages:
        said = "\n".join(words_of((page.title, page.blocks, page.foot)))
        assert "HM-100" in said
        assert "Planning aid only" in said
    numbers = [(page.number, page.total) for page in document.pages]
    assert numbers == [(at, len(numbers)) for at in range(1, len(numbers) + 1)]


def test_a_card_has_the_stop_notes_of_its_step():
    trained = job([bench(10), drill(20, [(14, 12)])], trainee=True)
    document, reader = printed(trained, "step", steps=(20,))
    assert STAMP in words(reader)
    assert document.pages[0].band.causes
    assert "See the cover" not in words(reader)


def test_every_page_for_one_use_says_not_acknowledged_where_that_is_so_and_names_no_cover_that_is_not_there():
    trained = job([bench(10), drill(20, [(14, 12)])], trainee=True)
    for name in ("route", "positions", "step"):
        for page in printed(trained, name)[1].pages:
            assert STAMP in page.extract_text()
            assert "See the cover" not in page.extract_text()


def test_positions_have_a_card_also_where_they_stand_on_the_sheet():
    """Two points of the plate at X 14 and 66: 5 + 75 and 26 + 50 on a dial of 2.5 mm with lines of 0.02."""
    document, reader = printed(plate(), "positions")
    assert [page.kind for page in document.pages] == ["positions"]
    assert "5 + 75" in words(reader)
    assert "26 + 50" in words(reader)


def test_a_card_that_the_whole_sheet_has_is_not_printed_twice():
    many = job([drill(10, [(8 + 6 * at, 12) for at in range(8)])])
    kinds = [page.kind for page in printed(many, "whole", "positions")[0].pages]
    assert kinds.count("positions") == 1


def test_a_job_without_points_says_so():
    with pytest.raises(CommandError, match="goes to a point"):
        printed(job([bench(10)]), "positions")
    assert printed(job([bench(10)]), "route", "positions")[0].left_out == (NO_POINTS,)


def test_a_step_that_is_not_there_is_named_with_those_that_are():
    with pytest.raises(CommandError, match=r"no step 45 in this job; its steps are 10, 20\."):
        printed(job([bench(10), bench(20)]), "step", steps=(45,))


def test_nothing_chosen_is_refused():
    with pytest.raises(CommandError, match="No page is chosen"):
        printed(plate())


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize("card", ["b1", "b2", "k2"])
def test_the_blank_form_has_the_speeds_and_dials_of_its_machine_and_lines_to_fill(card, paper):
    plan = read_job(sample_jobs() / f"hm-100-drilled-plate-{card}.yaml")
    document, reader = printed(plan, "blank", paper=paper)
    assert len(reader.pages) == 1
    text = words(reader)
    assert "HM-100" not in text
    for promised in (
        "held in",
        "What happened",
        "What happened",
        "X turns + line",
        "you stand here",
        "Planning aid only",
    ):
        assert promised in text
    speeds = {
        "b1": ("180", "belts 1", "2300", "2.5 mm a turn"),
        "k2": ("75", "back gear 1", "2000", "0.200 in a turn"),
    }
    for promised in speeds.get(card, ()):
        assert promised in text
    assert len(document.pages) == 1


def test_all_kinds_go_into_one_file_in_their_order_and_carry_the_job():
    document, reader = printed(plate(), *PRINTS)
    kinds = list(dict.fromkeys(page.kind for page in document.pages))
    assert kinds == ["cover", "set-up", "route", "positions", "step card", "blank"]
    assert "job.yaml" in reader.attachments
    full = [page for page in document.pages if page.kind != "step card"]
    assert [(page.number, page.total) for page in full] == [(at, len(full)) for at in range(1, len(full) + 1)]


def test_a_text_as_long_as_anybody_writes_leaves_the_card_whole():
    long = job([bench(10, "Break the edges " * 15, note="x " * 400)], name="n" * 200, title="t" * 90)
    for name in ("step", "route"):
        document, _ = printed(long, name)
        assert all(fits_on("a4")(page) for page in document.pages)
