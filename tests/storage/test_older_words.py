"""Words that were spelled otherwise once are read for ever and never written."""

from __future__ import annotations

from jobsheet.storage.job_file import job_from_text
from jobsheet.storage.job_writing import write_job
from jobsheet.storage.older_words import FIELDS, RULES, SLIPPED, spelled_now
from jobsheet.storage.paper_file import paper_from_text
from jobsheet.storage.paper_text import paper_text


def test_fields_of_a_card_take_their_name_of_today_and_keep_what_they_say():
    paper = paper_from_text("format: 1\nvise: the vise\nvises:\n  - name: own\n", "card.yaml")
    text = paper_text(spelled_now(paper))
    assert "vice: the vise" in text
    assert "vices:" in text


def test_a_card_of_today_is_left_as_it_is():
    paper = paper_from_text("format: 1\nvice: own\n", "card.yaml")
    assert spelled_now(paper) is paper


def test_no_word_of_today_is_one_of_another_day():
    for words in (FIELDS, RULES, SLIPPED):
        assert not set(words) & set(words.values())


def test_rules_of_today_are_there():
    from jobsheet.review.engine import rules

    assert set(RULES.values()) <= {one.id for one in rules()}


def test_a_step_measured_with_a_caliper_is_written_with_a_calliper(samples):
    text = (samples / "hm-104-cover-plate.yaml").read_text(encoding="utf-8")
    assert text.count("instrument: calliper") == 1
    older = text.replace("instrument: calliper", "instrument: caliper")
    assert write_job(job_from_text(older, "hm-104.yaml")) == text
