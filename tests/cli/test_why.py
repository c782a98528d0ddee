"""`jobsheet why`: remarks, reminders, safety notes and choices of the trade, each with its source."""

from __future__ import annotations

import pytest

from jobsheet.__main__ import main
from jobsheet.catalog.trade.opinions import opinions
from jobsheet.storage.shop_file import NAME


def test_a_reminder_says_when_and_where_it_stands(capsys):
    assert main(["why", "cast-iron-dry"]) == 0
    said = capsys.readouterr().out.splitlines()
    assert said[:2] == ["Usually dry; dust drawn off", "A reminder."]
    assert "Stands: beside a step" in said
    assert "When: kind = milling and material.family = iron" in said
    assert any("Machinery's Handbook, 31st edition, page 1250" in line for line in said)


def test_a_stop_note_says_whose_initials_and_names_no_maker(capsys):
    assert main(["why", "beryllium-copper-dust"]) == 0
    said = capsys.readouterr().out
    assert "Initials of: person in charge" in said
    assert "a maker or seller" in said
    assert "ngk" not in said


def test_a_choice_shows_both_opinions_the_default_and_what_counts_here(own_home, capsys):
    one = next(row for row in opinions() if row.id == "climb-milling")
    assert main(["why", one.id]) == 0
    said = capsys.readouterr().out
    for words in (one.question, one.one, one.other, one.one_source, one.other_source, one.why):
        assert words in said
    assert "Until you choose: never\n" in said
    assert said.endswith("Here: never\n")
    (own_home / NAME).write_text("format: 1\nclimb milling: light finish\n", encoding="utf-8")
    assert main(["why", one.id]) == 0
    assert capsys.readouterr().out.endswith("Here: light finish\n")


@pytest.mark.parametrize(
    "words",
    [
        "spot before drilling",
        "Spot before drilling",
        "spot-before-drilling",
        "SPOT drilling",
        "spot  before   drilling",
    ],
)
def test_a_title_is_asked_as_it_is_said(words, capsys):
    assert main(["why", *words.split(" ")]) == 0
    said = capsys.readouterr().out.splitlines()
    assert said[0] == "Spot before drilling"
    assert [
        line.split(":")[0] for line in said if line.split(":")[0] in ("Because", "Not so", "So", "From")
    ] == [
        "Because",
        "Not so",
        "So",
        "From",
    ]


def test_words_of_several_name_them(capsys):
    assert main(["why", "before"]) == 2
    assert "could be any of these" in capsys.readouterr().err


def test_words_that_nothing_has_name_the_nearest(capsys):
    assert main(["why", "spot-angel"]) == 2
    assert "did you mean “" in capsys.readouterr().err
    assert main(["why", "zzzz"]) == 2
    assert "jobsheet why --list names them all" in capsys.readouterr().err
