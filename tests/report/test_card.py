"""What a card means: torque at its speeds, paces and pushes, and what is only guessed."""

from __future__ import annotations

import pytest

from jobsheet.machine.spindle import steps
from jobsheet.report.card import card_facts
from jobsheet.storage.card_files import card_path, find_card
from jobsheet.storage.card_layout import LAYOUT
from jobsheet.storage.paper_file import paper_from_text

NAMES = ("bench-mill-b-1", "bench-mill-b-2", "knee-mill-k-2")


def facts(name, machine=True):
    paper = paper_from_text(card_path(name).read_text(encoding="utf-8"), name)
    return card_facts(find_card(name) if machine else None, paper, LAYOUT)


@pytest.mark.parametrize("name", NAMES)
def test_a_card_that_can_be_used_says_all_that_it_means(name):
    found = facts(name)
    assert len(found) == 4 if find_card(name).lever is not None else 3
    assert all(len(row) == len(one.heads) for one in found if one.heads for row in one.rows)


def test_every_step_of_the_drive_has_its_torque():
    torque = facts("bench-mill-b-1")[0]
    assert len(torque.rows) >= len(steps(find_card("bench-mill-b-1")))


def test_of_one_that_cannot_be_used_only_what_is_guessed_is_said():
    assert facts("bench-mill-b-1", machine=False) == facts("bench-mill-b-1")[-1:]
