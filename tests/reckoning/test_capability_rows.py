"""A row says what it is about in few words; a card says what to try next of what its rows rest on."""

from __future__ import annotations

import pytest

from jobsheet.reckoning.answers.capability_rows import Card, Row
from jobsheet.reckoning.answers.what_next import Shown
from jobsheet.storage.card_files import find_card


def row(what, low="1 mm", high="4 mm", **shown):
    return Row(
        what=what, cutter="end mill 12 mm", plan="1 mm", plan_size=1e-3, verdict="expected", low=low, middle="2 mm", high=high,
        stops="", words="planned limit", shown=Shown(**{"process": "slot", "cutter_kind": "end mill", "ratio": 4.0, **shown}),
    )  # fmt: skip


def card(*rows):
    machine = find_card("bench-mill-b-1")
    return Card(machine=machine, material="S235", title="structural steel", held="", rows=rows)


@pytest.mark.parametrize(
    ("what", "name"),
    [
        ("deepest slot", "slot"),
        ("deepest side cut 6 mm wide", "side cut 6 mm wide"),
        ("largest tap, under power", "tap"),
        ("facing", "facing"),
    ],
)
def test_a_row_in_few_words(what, name):
    assert row(what).name == name


def test_a_card_asks_for_what_was_never_tried_and_for_nothing_where_all_is_narrow():
    (said,) = card(row("deepest slot")).next
    assert said == "Slot: never tried, nine in ten between 1 mm and 4 mm. A ladder begins at about 1 mm."
    assert (
        card(row("deepest slot", low="2 mm", high="2.1 mm", cuts=9, newest="2026-11-12", ratio=1.05)).next
        == ()
    )
