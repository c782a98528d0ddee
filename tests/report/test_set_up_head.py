"""The head of a set-up: letters short enough for a picture, and the same facts however small it is."""

from __future__ import annotations

from msgspec.structs import replace

from jobsheet.report.blocks import words_of
from jobsheet.report.plan import letters_of
from jobsheet.report.set_up_head import head

from .plans import plate
from .seen_from_above import plan_of


def words(job, **more):
    plan = plan_of(job)
    return list(words_of(head(plan, plan.courses[0], **{"small": False, **more})))


def test_holding_and_zero_stand_there_in_words():
    said = " ".join(words(plate()))
    assert "80 mm" in said
    assert "A and B" in said


def test_a_small_one_says_less_and_still_how_it_is_held():
    small = " ".join(words(plate(), small=True))
    assert len(small) <= len(" ".join(words(plate())))
    assert "80 mm" in small


def test_letters_are_as_long_as_a_picture_has_room_for():
    plan = plan_of(replace(plate(), datums=(("A", "front"), ("Reference", "left"))))
    letters = letters_of(plan)
    assert letters[0] == ("A", "front")
    assert len(letters[1][0]) <= 5
    assert letters[1][1] == "left"
