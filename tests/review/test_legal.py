"""Figures of law and advice: only where a country is chosen, only with their
note, always with place and date.
"""

from __future__ import annotations

import json
from datetime import date

import pytest

from jobsheet.__main__ import main
from jobsheet.edit.commands import SetField
from jobsheet.model.shop import Shop
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.job_sheet import job_sheet
from jobsheet.review.notes.legal import CHECK, DEFERRED, OLD, by_law, figures
from jobsheet.review.notes.notes import notes_for, rows
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job
from jobsheet.storage.shop_file import NAME, PLACE

READ = date(2026, 11, 25)


def called(job, country):
    notes = notes_for(job, Reckoner(Shop(country=country)).reckon(job))
    return by_law(notes, country)


@pytest.fixture
def k2(samples):
    return read_job(samples / "hm-100-drilled-plate-k2.yaml")


def test_every_figure_has_its_place_its_note_and_its_sources():
    from jobsheet.catalog.reading.data import shipped

    sources = shipped("legal.yaml")["sources"]
    choices = next(entry.choices for entry in PLACE if entry.name == "country")
    for row in figures():
        assert row.country in choices
        assert set(row.notes) <= {note.id for note in rows()}
        assert set(row.source.split("; ")) <= set(sources)
        assert row.place
        assert row.law
        assert row.figure or row.see


def test_no_country_no_figure(k2):
    """A knee mill of 82 dB(A) and a vice of 32 kg: two limits that differ by country."""
    found = called(k2, "none")
    assert found.figures == ()
    assert found.lines(READ) == (f"Noise, lifting: {DEFERRED}",)


def test_a_state_has_the_figures_of_its_country_too(k2):
    whole = {row.id for row in called(k2, "us").figures}
    assert whole == {"guarding-us-law", "lifting-us-advice"}
    state = {row.id for row in called(k2, "us michigan").figures}
    assert state == whole | {"milling-us-michigan", "drilling-us-michigan"}


def test_a_figure_stands_only_with_its_note(k2):
    assert [row.id for row in called(k2, "gb").figures] == ["noise-gb-law"]
    wet = SetField("job", "fluid", "mist").apply(k2)
    assert [row.id for row in called(wet, "gb").figures] == ["noise-gb-law", "dust-gb-law"]


def test_place_and_dates_stand_beside_the_figure_and_advice_says_so(k2):
    lifting = next(row for row in called(k2, "us").figures if row.id == "lifting-us-advice")
    said = lifting.words(READ)
    assert said.startswith("Lifting: Advice: 23 kg (51 lb) ")
    assert said.endswith(
        "US, NIOSH 94-110, 1994, revised Sept 2021, title read; figure second-hand, 25 Nov 2026. " + CHECK
    )


@pytest.mark.parametrize(
    ("today", "old"), [(READ, False), (date(2028, 11, 25), False), (date(2028, 11, 26), True)]
)
def test_what_was_read_over_two_years_ago_says_to_ask(today, old):
    row = next(one for one in figures() if one.id == "air-us-law")
    assert row.words(today).endswith(OLD) is old


def test_what_was_read_nobody_knows_when_says_to_ask():
    assert all(row.words(READ).endswith(OLD) for row in figures() if not row.read_on)


def test_no_figure_on_file_says_where_to_look():
    said = next(one for one in figures() if one.id == "dust-gb-law").words(READ)
    assert said.startswith(f"Dust: {DEFERRED} See EH40/2005, fourth edition 2020, or its successor.")


def test_they_are_printed_on_the_page_of_safety_notes_only(k2):
    reckoned = Reckoner(Shop(country="us")).reckon(k2)
    document = job_sheet(k2, reckoned, notes_for(k2, reckoned), (), find_card(k2.machine))
    having = {
        page.kind for page in document.pages if any("29 CFR" in words for words in words_of(page.blocks))
    }
    assert having == {"safety"}


def test_check_lists_them(samples, own_home, capsys):
    path = str(samples / "hm-100-drilled-plate-k2.yaml")
    assert main(["check", path]) == 0
    assert "law and advice" not in capsys.readouterr().out
    (own_home / NAME).write_text("format: 1\ncountry: us\n", encoding="utf-8")
    assert main(["check", path]) == 0
    assert "law and advice: Guarding against point of operation" in capsys.readouterr().out
    assert main(["check", path, "--json"]) == 0
    listed = json.loads(capsys.readouterr().out)["law and advice"]
    assert [one["id"] for one in listed] == ["guarding-us-law", "lifting-us-advice"]
