"""Pairs of faces: rough before finish, and a face before what is cut into it."""

from __future__ import annotations

from jobsheet.edit.several_steps import DeleteSteps
from jobsheet.lessons.face_pairs import face_pairs

from .pairs_of import looked_at


def keys(job):
    return {(one.first, one.then): one.rule for one in face_pairs(*looked_at(job))}


def test_the_plate_is_roughed_before_it_is_finished(hm100):
    found = keys(hm100)
    assert ("face-rough", "face-finish") in found
    assert ("face-finish", "face-rough") not in found


def test_holes_come_after_the_face_that_they_are_cut_into(hm100):
    found = keys(hm100)
    assert {first for first, then in found if then == "drill"} & {"face-rough", "face-finish"}


def test_without_a_face_nothing_hangs_on_one(hm100):
    assert keys(DeleteSteps(("face-rough", "face-finish")).apply(hm100)) == {}
