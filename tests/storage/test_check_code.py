"""The code that paper and file have in common, against worked examples and the promise of its scheme."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from jobsheet.storage.check_code import SIGNS, check_code, check_of, typed_code


def test_worked_codes():
    """SHA-256 of these bytes, worked outside the program (reference on the shelf, section 9, example 9)."""
    assert check_code(b"HM-103\n") == "D495-6QV9-7Y6"
    assert check_code(b"") == "WERC-8GMR-ZG4"


def test_the_scheme_against_the_standard_s_own_examples():
    """ISO/IEC 7064: 0794 under MOD 11,10 is checked by 5; A12425GABC1234002 under MOD 37,36 by M."""
    assert check_of([0, 7, 9, 4], 10) == 5
    letters = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"
    assert letters[check_of([letters.index(one) for one in "A12425GABC1234002"], 36)] == "M"


@given(st.binary(max_size=40))
def test_every_code_is_read_back_however_it_is_typed(data):
    code = check_code(data)
    assert typed_code(code) == code
    assert typed_code(code.lower().replace("-", " ").replace("1", "l").replace("0", "o")) == code


@pytest.mark.parametrize("code", ["D495-6QV9-7Y6", "WERC-8GMR-ZG4"])
def test_every_single_slip_is_found(code):
    signs = code.replace("-", "")
    for place, right in enumerate(signs):
        for wrong in SIGNS:
            if wrong != right:
                assert typed_code(signs[:place] + wrong + signs[place + 1 :]) is None


@pytest.mark.parametrize("text", ["", "D495", "D495-6QV9-7Y66", "D495-6QV9-7YU"])
def test_what_is_no_code(text):
    assert typed_code(text) is None


def test_revisions_and_photographs_are_kept_in_the_file():
    from msgspec.structs import replace

    from jobsheet.model.job import Photograph, Revision
    from jobsheet.storage.job_file import blank_job, job_from_text
    from jobsheet.storage.job_writing import write_job

    job = replace(
        blank_job("bench-mill-b-1"),
        revisions=(
            Revision(number=1, changed="first", who="Trainer", when="2026-11-25"),
            Revision(number=2, changed="slot 2 deep", who="B", when="2026-11-29"),
        ),
        photographs=(Photograph(content="ab" * 32, shows="the straps", about="set-up-1"),),
    )
    text = write_job(job)
    assert job_from_text(text, "x") == job
    assert write_job(job_from_text(text, "x")) == text
