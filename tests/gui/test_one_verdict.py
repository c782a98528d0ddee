"""A verdict is the same in the closed row, the open row, the sheet and the JSON:
word, chance, and where to begin.
"""

from __future__ import annotations

import pytest

from jobsheet.cli.verbs.figures import limit_data
from jobsheet.edit.commands import SetField
from jobsheet.gui.column.views import row_view
from jobsheet.gui.ink.spoken import verdict_word
from jobsheet.gui.ink.tokens import VERDICTS
from jobsheet.gui.margin.limit_row import spoken
from jobsheet.model.figure import VERDICTS as WORDS
from jobsheet.operations.kind import Aim
from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import Steps
from jobsheet.storage.job_file import read_job
from tests.report.pages_read import all_of
from tests.report.plans import pages

#: Sample, what is typed, and the word that must come of it somewhere.
PLANS = (
    ("hm-103-pivot-block", (), "not tried"),
    ("hm-103-pivot-block", (("step", "feed", "300 mm/min"),), "tight"),
    ("hm-101-setting-block", (("face-1-rough", "spindle", "900 rpm"),), "beyond"),
)


@pytest.mark.parametrize(("sample", "edits", "word"), PLANS)
def test_window_sheet_and_json_say_the_same(samples, sample, edits, word):
    job = read_job(samples / f"{sample}.yaml")
    for edit in edits:
        job = SetField(*edit).apply(job)
    found = Reckoner().reckon(job)
    printed = {row.number: row for steps in all_of(pages(job), Steps) for row in steps.rows if row.verdict}
    seen = set()
    for _, operation in job.operations():
        outcome = found.operations[operation.key]
        if outcome.governing is None:
            continue
        governing, row = outcome.governing, printed[str(operation.number)]
        seen |= {one.verdict for one in outcome.limits}
        closed = row_view(operation, outcome, (), Aim(), stale=False)
        assert closed.verdict == row.verdict == limit_data(governing)["verdict"]
        assert (row.odds, row.governs) == (governing.odds, governing.title.lower())
        for one in outcome.limits:
            data, said = limit_data(one), spoken(one)
            assert verdict_word(one.verdict) in said
            assert one.odds in said
            assert (data["chance"], data["odds"], data["reason"]) == (one.chance, one.odds, one.sentence)
            if one.verdict == "not tried":
                assert data["begin at"] in one.sentence
                # Whether it governs or stands behind another: it is said, on the screen and on the paper.
                assert data["begin at"] in f"{closed.share} {closed.untried}"
                assert one.begin.split(" ")[0] in f"{row.odds} {row.untried}"
    assert word in seen


def test_every_word_has_its_sign():
    assert set(WORDS) == set(VERDICTS)
    assert len({icon for icon, _, _ in VERDICTS.values()}) == len(WORDS)
