"""What can be asked why, each in words of its own."""

from __future__ import annotations

from collections import Counter

import pytest

from jobsheet.__main__ import main
from jobsheet.errors import NoSuchEntry
from jobsheet.review.pages.explained import KINDS, Topic, called, topics


def test_ids_are_unique_over_all_kinds():
    """Sequencing rules, head: ids are unique over the rules and the safety notes."""
    assert [name for name, count in Counter(one.id for one in topics()).items() if count > 1] == []


@pytest.mark.parametrize("topic", topics(), ids=lambda topic: topic.id)
def test_everything_explains_itself(topic, capsys):
    assert main(["why", topic.id]) == 0
    said = capsys.readouterr().out
    assert said.splitlines()[0] == topic.title
    assert topic.id not in said.split() or "-" not in topic.id
    assert {KINDS[0]: "From: ", KINDS[3]: "The other: "}.get(topic.kind, "Source: ") in said


@pytest.mark.parametrize("arguments", [["why"], ["why", "--list"]])
def test_the_list_has_four_headings(arguments, capsys):
    assert main(arguments) == 0
    lines = capsys.readouterr().out.splitlines()
    assert [line.removesuffix(":") for line in lines if not line.startswith(" ")] == list(KINDS)
    assert len(lines) == len(topics()) + len(KINDS)


#: What nobody finds again: places where people talk, private pages, sheets that nobody signed.
NOT_A_SOURCE = (
    "discussion", "blog", "forum", "opinions", "secondary", "unsigned", "hobby", "home-shop", "wiki", ".com", ".org", ".net",
    ".blogspot", "luthier", "notes on", "a machinist's", "question-and-answer", "an article", "a trade article",
)  # fmt: skip


def test_what_is_named_as_a_source_can_be_looked_up():
    said = [
        (topic.id, line)
        for topic in topics()
        for line in topic.lines
        if line.startswith(("From: ", "Source: ", "One opinion: ", "The other: "))
    ]
    for about, line in said:
        source = line.rpartition(" (")[2] if line.startswith(("One", "The")) else line
        assert [word for word in NOT_A_SOURCE if word in source.casefold()] == [], about


def test_one_is_called_by_its_title_its_id_or_words_that_only_it_has():
    """However it is written: small letters, hyphens, the other spelling of a vice."""
    for words in (
        "Deburr after the last cut",
        "deburr after the LAST cut",
        "deburr-after-last-cut",
        "deburr after last cut",
    ):
        assert called(words).id == "deburr-after-last-cut"
    assert called("keyways drawn").id == "keyway-of-a-shaft"
    assert called("wider than the vise opens") == called("wider than the vice opens")


def test_what_could_be_several_is_asked_back_and_what_is_none_names_the_nearest():
    with pytest.raises(NoSuchEntry, match="“zero” could be any of these, say more of one: “") as several:
        called("zero")
    assert 1 <= str(several.value).count("; ") <= 4
    with pytest.raises(
        NoSuchEntry,
        match="choice called “deburr aftr the last cut”; did you mean “Deburr after the last cut”",
    ):
        called("deburr aftr the last cut")
    with pytest.raises(
        NoSuchEntry, match="choice called “xxxxxxxxxxxxxxxxx”; jobsheet why --list names them all"
    ):
        called("xxxxxxxxxxxxxxxxx")


@pytest.mark.parametrize(
    ("kind", "line"),
    [
        ("Remarks", "A remark: scrap."),
        ("Reminders", "A reminder."),
        ("Safety notes", "A safety note."),
        ("Choices of the trade", "A choice of the trade."),
    ],
)
def test_a_topic_is_printed_under_its_title_and_what_it_is(kind, line):
    assert (
        Topic(id="x", kind=kind, word="scrap", title="Title", lines=("One.", "Two.")).text
        == f"Title\n{line}\n\nOne.\nTwo."
    )
