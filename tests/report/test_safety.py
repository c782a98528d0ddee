"""Safety notes once each: none that stops or cautions is dropped, the rest is counted."""

from __future__ import annotations

import re

import pytest

from jobsheet.reckoning.reckoner import Reckoner
from jobsheet.report.blocks import words_of
from jobsheet.report.heed.safety import first_sentence
from jobsheet.review.notes.notes import notes_for
from tests.report.plans import drill, job, pages, plate

from .pages_read import FOUR


def every_note(plan) -> set[str]:
    notes = notes_for(plan, Reckoner().reckon(plan))
    whole = [
        *notes.sheet,
        *notes.stops,
        *(note for some in (*notes.set_ups.values(), *notes.steps.values()) for note in some),
    ]
    return {note.text.replace("*", "") for note in whole}


@pytest.mark.parametrize("fits", [lambda _page: True, lambda page: len(page.blocks) < 3])
def test_no_stop_and_no_caution_of_a_step_is_dropped_and_what_is_left_out_is_counted(fits):
    """At most 24 lines beside those at their steps: more are no longer read. The
    rest stay in the window and in `why`.
    """
    for plan in (plate(), job([drill(10, FOUR)], trainee=True, stock=("80", "50", "4"))):
        document = pages(plan, fits=fits)
        whole = "\n".join(words_of(tuple((page.band, page.blocks) for page in document.pages)))
        notes = notes_for(plan, Reckoner().reckon(plan))
        beside = [*notes.stops, *(note for some in notes.steps.values() for note in some)]
        assert [note.id for note in beside if first_sentence(note.text.replace("*", "")) not in whole] == []
        left = [note for note in every_note(plan) if note not in whole]
        said = re.search(r"(\d+) more of a general kind", whole)
        assert len(left) <= int(said[1]) if said else not left
