"""Only possible layings: what is chosen leaves only faces that fit, and a file that says what
cannot be is refused with its line.
"""

from __future__ import annotations

import itertools

import pytest
from msgspec.structs import replace

from jobsheet.edit.commands import SetField, entry_of
from jobsheet.errors import DocumentError, QuantityError
from jobsheet.model.lying import OPPOSITE, beside, lying, stock_box
from jobsheet.model.stock import FACES
from jobsheet.storage.job_file import blank_job, job_from_text
from jobsheet.storage.job_writing import write_job

B1 = "bench-mill-b-1"


@pytest.mark.parametrize(("up", "operator", "jaw"), list(itertools.product(FACES, repeat=3)))
def test_each_of_all_layings_is_possible_or_refused(up, operator, jaw):
    """A block has six faces: four of them are beside the one that is up,
    whatever else is said (plain geometry).
    """
    job = blank_job(B1)
    job = replace(job, set_ups=(replace(job.set_ups[0], up=up, operator=operator, fixed_jaw=jaw),))
    text = write_job(job)
    flat = {up, OPPOSITE[up]}
    if operator in flat or jaw in flat:
        with pytest.raises(DocumentError) as told:
            job_from_text(text, "x")
        lines = [problem.line for problem in told.value.problems]
        wrong = [name for name, face in (("operator", operator), ("fixed jaw", jaw)) if face in flat]
        assert [text.splitlines()[line - 1].split(":")[0].strip() for line in lines] == wrong
        assert "cannot be" in str(told.value)
    else:
        again = job_from_text(text, "x")
        assert again == job
        lie = lying(again.set_ups[0], stock_box(again))
        assert (lie.up, lie.near) == (up, operator)
        assert lie.side(jaw) in ("near", "far", "left", "right")


@pytest.mark.parametrize("up", FACES)
def test_turning_the_work_over_leaves_only_faces_that_fit(up):
    job = SetField("setup:set-up-1", "up", up).apply(blank_job(B1))
    set_up = job.set_ups[0]
    assert set_up.operator in beside(up)
    assert set_up.fixed_jaw in beside(up)
    assert set(entry_of(job, "setup:set-up-1", "operator").choices) == set(beside(up))
    with pytest.raises(QuantityError):
        SetField("setup:set-up-1", "operator", OPPOSITE[up]).apply(job)
    assert job_from_text(write_job(job), "x") == job


def test_a_face_that_nobody_names_follows_the_one_that_is_up():
    text = write_job(blank_job(B1)).replace(
        "    up: top\n    operator: front\n    fixed jaw: rear\n", "    up: front\n"
    )
    set_up = job_from_text(text, "x").set_ups[0]
    assert set_up.operator in beside("front")
    assert set_up.fixed_jaw in beside("front")


def test_an_old_file_that_says_what_cannot_be_is_read_and_keeps_its_words():
    text = (
        write_job(blank_job(B1))
        .replace("format: 2", "format: 1")
        .replace("fixed jaw: rear", "fixed jaw: top")
    )
    text = text.replace("      kind: vice\n      vice: 80 mm vice\n", "      device: 80 mm vice\n")
    set_up = job_from_text(text, "x").set_ups[0]
    assert set_up.fixed_jaw == "rear"
    assert "fixed jaw: top" in set_up.note
