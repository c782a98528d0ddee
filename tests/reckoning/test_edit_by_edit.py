"""A job that is reckoned after each edit comes to the same as one that is reckoned at the end, alone."""

from __future__ import annotations

import pytest

from jobsheet.errors import JobsheetError
from jobsheet.reckoning.reckoner import Reckoner
from tests.reckoning.kept_readings import questions, start
from tests.review.test_rules import edit

#: Kept questions with so many edits, each job and order of edits once.
EDITED = {
    f"{asked['job']} {asked['edits']}": (asked["job"], tuple(map(tuple, asked["edits"])))
    for asked in questions()
    if asked["ask"] in ("step", "job", "ran") and len(asked.get("edits", ())) > 1
}
CASES = list(EDITED.values())
TOGETHER = 12


def as_it_is(found):
    """All that is said of every step, and what each sees."""
    return [(key, found.operations[key], found.settings[key]) for key in found.operations]


@pytest.mark.parametrize("first", range(0, len(CASES), TOGETHER))
def test_what_was_reckoned_before_the_edits_changes_nothing(first):
    for name, edits in CASES[first : first + TOGETHER]:
        job, living = start(name), Reckoner()
        as_it_is(living.reckon(job))
        for owner, field, text in edits:
            job = edit(job, owner, field, text).apply(job)
            try:
                found = as_it_is(living.reckon(job))
            except JobsheetError:  # a machine or a metal that is not there
                found = None
        if found is not None:
            alone = Reckoner()
            assert found == as_it_is(alone.reckon(job)), (name, edits)


@pytest.mark.parametrize("first", range(0, len(CASES), TOGETHER))
def test_an_edit_that_is_taken_back_leaves_what_was(first):
    for name, edits in CASES[first : first + TOGETHER]:
        job, living = start(name), Reckoner()
        before = as_it_is(living.reckon(job))
        owner, field, text = edits[-1]
        living.reckon(edit(job, owner, field, text).apply(job))
        assert as_it_is(living.reckon(job)) == before, (name, edits)
