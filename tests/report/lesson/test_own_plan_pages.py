"""Plan it yourself: the drawing in words, the speeds of the machine and blank rows;
its key is one plan that is right.
"""

from __future__ import annotations

import pytest

from jobsheet.lessons.slips import step_words
from jobsheet.machine.spindle import steps
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Table, words_of
from jobsheet.report.lesson.own_plan_pages import BROAD, ROWS, own_plan_groups, own_plan_key, own_plan_name
from jobsheet.storage.card_files import find_card
from jobsheet.storage.job_file import read_job


@pytest.fixture
def pivot(samples):
    return Reckoner().reckon(read_job(samples / "hm-103-pivot-block.yaml"))


def test_the_worksheet_has_the_machine_and_no_step_of_the_plan(pivot):
    said = " ".join(words_of(tuple(own_plan_groups(pivot))))
    card = find_card(pivot.job.machine)
    assert own_plan_name(pivot.job) == "HM-103, plan it yourself"
    assert pivot.job.material in said
    assert card.title in said
    assert all(one.marked in said for one in steps(card))
    steps_said = [words for words in step_words(pivot).values() if len(words) > 12]
    assert not any(words in said for words in steps_said)


def test_there_is_room_to_write_as_many_steps(pivot):
    table = own_plan_groups(pivot)[-1][-1]
    assert isinstance(table, Table)
    assert len(table.rows) == ROWS
    assert not any(cell.text for row in table.rows for cell in row)
    broad = [column.caption for column in table.columns if column.ruled]
    assert [len(words) for words in broad] == [BROAD] * 3


def test_the_key_is_the_plan_set_up_by_set_up(pivot):
    groups = own_plan_key(pivot)
    assert len(groups) == 1 + len(pivot.job.set_ups) + 1
    said = " ".join(words_of(tuple(groups)))
    assert "This is one of them." in said
    assert all(words in said for words in step_words(pivot).values())
