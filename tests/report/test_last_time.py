"""What happened opens with last time's line, where a record lies beside the job;
it never makes a page of its own.
"""

import pytest

from jobsheet.model.what_ran import Entry
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.reckoning.run_words import last_times
from jobsheet.report.blocks import words_of
from jobsheet.report.job_sheet import job_sheet
from jobsheet.review.engine import review
from jobsheet.review.notes.notes import notes_for
from jobsheet.sheet.pages import fits_on
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job
from jobsheet.storage.records.run_log import path_beside, record, take_back


def entry(**said):
    return Entry(
        job="HM-103", plan="x", revision=1, machine="knee-mill-k-2", **{"date": "2026-11-28", **said}
    )


def beside(path, *entries):
    return record(path, entries)


@pytest.fixture
def path(samples, tmp_path):
    found = tmp_path / "pivot.yaml"
    found.write_bytes((samples / "hm-103-pivot-block.yaml").read_bytes())
    return found


def pages(job, lines, paper="a4"):
    found = Reckoner().reckon(job)
    return job_sheet(
        job, found, notes_for(job, found), review(job, found), find_card(job.machine), fits=fits_on(paper), last_times=lines
    ).pages  # fmt: skip


def lines_on(page):
    return [words for words in words_of(page.blocks) if words.startswith("Last time: ")]


def test_the_line_says_day_minutes_trouble_sizes_and_what_one_would_change(path):
    beside(
        path,
        entry(about="step", key="end-right", number=60, outcome="clean", date="2026-11-20"),
        entry(about="step", key="end-right", number=60, outcome="clean"),
        entry(about="step", key="step", number=70, outcome="noisy", depth=0.004, layer=2),
        entry(about="size", key="step", number=70, size="60 ±0.1", found=0.03998),
        entry(about="minutes", set_up=5, setting_up=1800.0, cutting=900.0),
        entry(about="change", set_up=5, change="lighter", note="it rang"),
    )
    assert last_times(read_job(path), path) == {
        "set-up-5": "28 Nov; 45 min; step 70 noisy at 4 mm, layer 2; found 39.98; would change: lighter: it rang"
    }


def test_what_was_taken_back_is_not_said_and_without_a_record_there_is_no_line(path):
    job = read_job(path)
    assert last_times(job, path) == {}
    assert last_times(job, None) == {}
    (one,) = beside(path, entry(about="step", key="step", number=70, outcome="clean"))
    assert last_times(job, path) == {"set-up-5": "28 Nov; step 70 clean"}
    take_back(path, one.id, "2026-11-29")
    assert last_times(job, path) == {}


def test_a_record_that_cannot_be_read_prints_the_sheet_without_it(path):
    path_beside(path).mkdir()
    assert last_times(read_job(path), path) == {}


def test_it_stands_on_the_page_of_its_set_up_and_makes_no_page(path):
    job = read_job(path)
    lines = {"set-up-5": "28 Nov; 45 min; step 70 noisy at 4 mm; found 39.98"}
    before, after = pages(job, {}), pages(job, lines)
    assert len(after) == len(before)
    assert [page.about for page in after if lines_on(page)] == ["set-up-5"]
    assert [lines_on(page) for page in after if lines_on(page)] == [[f"Last time: {lines['set-up-5']}"]]


@pytest.mark.parametrize("paper", ["a4", "letter"])
@pytest.mark.parametrize(
    "name", ["hm-100-drilled-plate-k2", "hm-101-setting-block", "hm-102-slide-plate", "hm-104-cover-plate"]
)
def test_a_long_line_on_every_set_up_makes_no_page_of_any_sample(samples, name, paper):
    """But for the page of texts in full, where the whole of a line stands that was cut."""
    job = read_job(samples / f"{name}.yaml")
    lines = {
        one.key: f"28 Nov; {'step 70 noisy at 4 mm; ' * 4}found 39.98; would change: lighter"
        for one in job.set_ups
    }

    def kinds(told):
        return [page.kind for page in pages(job, told, paper) if page.kind != "long"]

    assert kinds(lines) == kinds({})
