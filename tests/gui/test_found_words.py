"""A row of the shelf in words: of what was made how it went, of what never was
what its plan is said to be (look-2).
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from jobsheet.gui.places.shelf.found_words import how_words, made_words, twins_words
from jobsheet.shelf.shelf_questions import Hit
from jobsheet.shelf.worked_kept import Worked

HIT = Hit(path="a.yaml", number="A", name="", revision="", machine="", material="", plan=0, steps=1, made="", times=0, went="", how="", planned_on="2026-11-24", content="c")  # fmt: skip


@pytest.mark.parametrize(
    ("how", "went", "verdict", "words"),
    [
        ("cut before", "clean", "beyond", ("cut before", "every step clean")),
        ("tight", "trouble at 70: noisy", "expected", ("tight", "trouble at 70: noisy")),
        ("beyond", "stopped at 40: stalled", "", ("beyond", "stopped at 40: stalled")),
        ("no record", "", "", ("no record", "nothing written down")),
        ("", "", "", ("not yet worked", "")),
        ("", "", "expected", ("expected", "never made")),
        ("", "", "tight", ("tight", "planned, step 40")),
        ("", "", "broken", ("broken", "step 40")),
        ("old sheet", "", "", ("old sheet", "Enter shows it")),
    ],
)
def test_how_it_went(how, went, verdict, words):
    worked = Worked(content="c", verdict=verdict, at="step 40") if verdict else None
    assert how_words(replace(HIT, how=how, went=went), worked) == words


def test_when_it_was_made_or_planned():
    assert made_words(HIT) == ("not made yet", "planned 2026-11-24")
    assert made_words(replace(HIT, made="2026-11-25", times=1)) == ("2026-11-25", "")
    assert made_words(replace(HIT, made="2026-11-25", times=12)) == ("2026-11-25", "12 times")


def test_a_second_file_of_the_plan():
    assert twins_words(HIT) == ""
    assert twins_words(replace(HIT, twins=("b.yaml", "c.yaml"))) == "the same plan as b.yaml, c.yaml"
